package main

import (
	"fmt"
	"io"

	"sumpter/exporter/summary"
)

// lineWriter writes lines and keeps the first error.
type lineWriter struct {
	w   io.Writer
	err error
}

func (l *lineWriter) line(format string, values ...any) {
	if l.err == nil {
		_, l.err = fmt.Fprintf(l.w, format+"\n", values...)
	}
}

// item writes one figure with what stands behind it below.
func (l *lineWriter) item(line summary.Line) {
	l.line("%-32s %s", line.What, line.Value)
	if line.More != "" {
		l.line("%-32s %s", "", line.More)
	}
}

// cut shortens a name to fit a column.
func cut(text string, most int) string {
	runes := []rune(oneLine(text))
	if len(runes) <= most {
		return string(runes)
	}
	return string(runes[:most-1]) + "…"
}

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
