// Command loopbook is a notebook for cooling-loop diagnosis: a window (app/window), and
// commands that need no display (app/command).
package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"

	"loopbook/app/command"
	_ "loopbook/app/locale" // before the toolkit looks
	"loopbook/app/window"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(command.Run(ctx, os.Args[1:], command.Console{In: os.Stdin, Out: os.Stdout, Err: os.Stderr}, window.Open))
}
