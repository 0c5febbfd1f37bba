// Command sumpter plans the food of a group on a multi-day trip on foot: from
// the crew and the route to needs, menus, portions, bags, boxes, loads and a
// shopping list.
package main

import (
	"context"
	"os"
	"os/signal"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	code := run(ctx, os.Args[1:], console{out: os.Stdout, err: os.Stderr, live: isTerminal(os.Stderr)})
	stop()
	os.Exit(code)
}

// isTerminal tells whether somebody is likely to read along.
func isTerminal(file *os.File) bool {
	info, err := file.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
