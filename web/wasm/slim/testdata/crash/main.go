// Command crash does what reads a program's tables: it recovers from a mistake, asks
// who called, lets the stack grow, collects garbage, and at last crashes.
package main

import (
	"fmt"
	"runtime"
	"strings"
)

var texts = strings.Fields("a few words that stand in the memory the program begins with")

func main() {
	fmt.Println(len(texts), texts, mistake(7))
	fmt.Println(deep(10_000), caller())
	var at []int
	fmt.Println(at[len(texts)])
}

func mistake(i int) (said any) {
	defer func() { said = recover() }()
	return texts[i+len(texts)]
}

func deep(n int) int {
	if n == 0 {
		runtime.GC()
		return 0
	}
	kept := make([]int, 3)
	return deep(n-1) + 1 + kept[n%3]
}

func caller() string {
	pc, file, line, ok := runtime.Caller(1)
	return fmt.Sprint(runtime.FuncForPC(pc).Name(), " ", file != "?", " ", line != 0, " ", ok)
}
