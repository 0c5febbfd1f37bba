package main

import (
	"fmt"
	"io"
)

// progress shows on one line what is being done, where somebody watches.
type progress struct {
	w    io.Writer
	live bool
}

// say replaces the line.
func (p progress) say(text string) {
	if p.live {
		fmt.Fprintf(p.w, "\r\x1b[K%s", text)
	}
}

// done clears the line.
func (p progress) done() {
	if p.live {
		fmt.Fprint(p.w, "\r\x1b[K")
	}
}
