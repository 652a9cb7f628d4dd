// Command loopbook is a notebook for cooling-loop diagnosis: a window, and
// commands that need no display.
package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"

	_ "loopbook/app/locale" // before the toolkit looks
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(run(ctx, os.Args[1:], console{in: os.Stdin, out: os.Stdout, err: os.Stderr}, openWindow))
}
