package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// result is what one call of the command did.
type result struct {
	code     exitCode
	out, err string
}

func call(t testing.TB, args ...string) result {
	t.Helper()
	return callWith(context.Background(), args...)
}

func callWith(ctx context.Context, args ...string) result {
	var out, err bytes.Buffer
	code := run(ctx, args, console{out: &out, err: &err})
	return result{exitCode(code), out.String(), err.String()}
}

// lines gives the lines of a text that ends with a new line.
func lines(text string) []string {
	if text == "" {
		return nil
	}
	return strings.Split(strings.TrimSuffix(text, "\n"), "\n")
}

func TestWrongUse(t *testing.T) {
	folder := t.TempDir()
	for name, args := range map[string][]string{
		"no such command":  {"cook"},
		"no file":          {"demo"},
		"too many":         {"plan", "a.trip", "b.trip"},
		"no such flag":     {"plan", "a.trip", "--xml"},
		"words for schema": {"schema", "trip"},
		"one of two":       {"export", "a.trip"},
		"out is a folder":  {"demo", folder},
		"out of import":    {"import", "in.xlsx"},
	} {
		t.Run(name, func(t *testing.T) {
			r := call(t, args...)
			if r.code != wrongUse || r.out != "" || len(lines(r.err)) != 1 || !strings.HasPrefix(r.err, "sumpter: ") {
				t.Errorf("%v: %+v, want exit 2 and one line on stderr", args, r)
			}
		})
	}
	if left, _ := os.ReadDir(folder); len(left) != 0 {
		t.Errorf("wrong use left %v", left)
	}
}

func TestHelpTellsEveryExitCode(t *testing.T) {
	for _, args := range [][]string{{"--help"}, {"help", "check"}, {"demo", "--help"}, {"import", "-h"}, {"plan", "-h"}, {"export", "-h"}, {"template", "-h"}, {"schema", "-h"}} {
		r := call(t, args...)
		if r.code != fine || r.err != "" {
			t.Errorf("%v: %+v", args, r)
		}
		for _, row := range exitTable {
			if !strings.Contains(r.out, fmt.Sprintf("%3d  %s", row.code, row.meaning)) {
				t.Errorf("%v does not tell of exit %d", args, row.code)
			}
		}
	}
}

func TestWithoutACommandItSaysThatThereIsNoWindowAndHelps(t *testing.T) {
	r := call(t)
	if r.code != fine || !strings.Contains(r.out+r.err, "window") || !strings.Contains(r.out, "sumpter demo club.trip") {
		t.Errorf("%+v", r)
	}
}

func TestSchemasAreJSON(t *testing.T) {
	for _, args := range [][]string{{"schema"}, {"schema", "--plan"}} {
		r := call(t, args...)
		var schema map[string]any
		if err := json.Unmarshal([]byte(r.out), &schema); err != nil || r.code != fine || schema["$schema"] == nil {
			t.Errorf("%v: exit %d, %v", args, r.code, err)
		}
	}
	if call(t, "schema").out == call(t, "schema", "--plan").out {
		t.Error("trip and plan have the same schema")
	}
}

func TestReport(t *testing.T) {
	for name, c := range map[string]struct {
		err  error
		code exitCode
		text string
	}{
		"nothing":     {nil, fine, ""},
		"any error":   {errors.New("disk\nfull"), failed, "sumpter: disk full\n"},
		"interrupted": {fmt.Errorf("planning: %w", context.Canceled), interrupted, "sumpter: interrupted\n"},
		"each fault a line": {inputFault("a.xlsx", "Crew B3: too\r\nold", "Days A1: empty"), badInput,
			"sumpter: a.xlsx: Crew B3: too old\nsumpter: a.xlsx: Days A1: empty\n"},
		"wrapped fault": {fmt.Errorf("more: %w", usageFault("no %q", "x")), wrongUse, "sumpter: no \"x\"\n"},
	} {
		var text bytes.Buffer
		if code := report(&text, c.err); code != c.code || text.String() != c.text {
			t.Errorf("%s: exit %d, %q; want %d, %q", name, code, text.String(), c.code, c.text)
		}
	}
}

func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func read(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func names(t *testing.T, folder string) string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, entry := range entries {
		list = append(list, entry.Name())
	}
	return strings.Join(list, " ")
}

func TestProduceMakesAFileWholeOrNotAtAll(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "a")
	broken := errors.New("broken")
	half := func(w io.Writer) error {
		io.WriteString(w, "half")
		return broken
	}
	whole := func(w io.Writer) error {
		_, err := io.WriteString(w, "whole")
		return err
	}
	if err := produceFrom(path, false, half); !errors.Is(err, broken) || names(t, folder) != "" {
		t.Errorf("a broken write gave %v and left %q", err, names(t, folder))
	}
	if err := produceFrom(path, false, whole); err != nil || read(t, path) != "whole" || names(t, folder) != "a" {
		t.Errorf("a good write gave %v and %q", err, names(t, folder))
	}
	write(t, path, "mine")
	if err := produceFrom(path, false, whole); err == nil || read(t, path) != "mine" {
		t.Errorf("an existing file was replaced without force (%v)", err)
	}
	if err := produceFrom(path, true, half); !errors.Is(err, broken) || read(t, path) != "mine" || names(t, folder) != "a" {
		t.Errorf("a broken forced write gave %v, %q and %q", err, read(t, path), names(t, folder))
	}
	if err := produceFrom(path, true, whole); err != nil || read(t, path) != "whole" {
		t.Errorf("force did not replace: %v", err)
	}
}

// A file that appears while another is being made is not replaced either.
func TestProduceLosesARaceWithoutForce(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a")
	err := produceFrom(path, false, func(w io.Writer) error {
		write(t, path, "theirs")
		_, err := io.WriteString(w, "ours")
		return err
	})
	if err == nil || read(t, path) != "theirs" {
		t.Errorf("error %v, the file holds %q", err, read(t, path))
	}
}

func TestProduceIntoAMissingFolder(t *testing.T) {
	if err := produceFrom(filepath.Join(t.TempDir(), "no", "a"), false, func(io.Writer) error { return nil }); err == nil {
		t.Error("no error")
	}
}

func TestProgressIsSilentUnlessSomebodyWatches(t *testing.T) {
	var text bytes.Buffer
	progress{&text, false}.say("planning")
	progress{&text, false}.done()
	if text.Len() != 0 {
		t.Errorf("wrote %q", text.String())
	}
	progress{&text, true}.say("planning")
	if !strings.HasSuffix(text.String(), "planning") {
		t.Errorf("wrote %q", text.String())
	}
}

func TestCut(t *testing.T) {
	for text, want := range map[string]string{"Ana": "Ana", "a b\nc": "a b c", "abcdefgh": "abcd…", "美咲美咲美咲": "美咲美咲…"} {
		if got := cut(text, 5); got != want {
			t.Errorf("%q became %q, want %q", text, got, want)
		}
	}
}
