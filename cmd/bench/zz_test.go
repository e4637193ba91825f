package main
import "testing"
import "os"
func TestZZ(t *testing.T) { os.Chdir("../.."); fs, err := searching(); for _, f := range fs { print(f.judged()) }; if err != nil { t.Fatal(err) } }
