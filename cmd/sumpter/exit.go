package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
)

// exitCode is what the command tells the shell.
type exitCode int

// Exit codes. The help shows the same table.
const (
	fine            exitCode = 0
	failed          exitCode = 1
	wrongUse        exitCode = 2
	badInput        exitCode = 3
	seriousFindings exitCode = 4
	interrupted     exitCode = 130
)

var exitTable = []struct {
	code    exitCode
	meaning string
}{
	{fine, "all went well"},
	{failed, "something went wrong that is not in the input, such as a full disk"},
	{wrongUse, "the command was called the wrong way, or a file is already there"},
	{badInput, "the input cannot be read or planned; each fault is one line"},
	{seriousFindings, "check only: the plan has findings that must be fixed"},
	{interrupted, "interrupted from the keyboard"},
}

func exitHelp() string {
	var text strings.Builder
	text.WriteString("Exit status:\n")
	for _, row := range exitTable {
		fmt.Fprintf(&text, "  %3d  %s\n", row.code, row.meaning)
	}
	return text.String()
}

// fault is an error with its exit code and a line for each thing wrong.
type fault struct {
	code  exitCode
	lines []string
	cause error
}

func (f *fault) Error() string { return strings.Join(f.lines, "\n") }

func (f *fault) Unwrap() error { return f.cause }

// inputFault says what is wrong with a file, a line for each fault.
func inputFault(path string, lines ...string) error {
	f := &fault{code: badInput}
	for _, line := range lines {
		f.lines = append(f.lines, path+": "+oneLine(line))
	}
	return f
}

func usageFault(format string, values ...any) error {
	return &fault{code: wrongUse, lines: []string{oneLine(fmt.Sprintf(format, values...))}}
}

// oneLine keeps a fault on one line, whatever text it quotes.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// report writes an error and gives its exit code.
func report(w io.Writer, err error) exitCode {
	var f *fault
	switch {
	case err == nil:
		return fine
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(w, "sumpter: interrupted")
		return interrupted
	case errors.As(err, &f):
		for _, line := range f.lines {
			fmt.Fprintln(w, "sumpter: "+line)
		}
		return f.code
	default:
		fmt.Fprintln(w, "sumpter: "+oneLine(err.Error()))
		return failed
	}
}
