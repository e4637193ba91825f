package main

import (
	"context"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"
)

func main() {
	// A plan takes some ten megabytes for some milliseconds; collected as usual, a fourth of
	// that time went into garbage.
	debug.SetGCPercent(400)
	debug.SetMemoryLimit(1 << 30) // beyond which it is collected as it comes
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	context.AfterFunc(ctx, stop) // a second interrupt ends the program at once
	os.Exit(run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
