package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"sumpter/domain/plan"
	"sumpter/exporter/papers"
)

func exportCommand(c console) *cobra.Command {
	command := &cobra.Command{
		Use:   "export TRIP DIR",
		Short: "Plan a trip and write everything to print and to hand on",
		Long: withExits("Plan a trip and write into a folder, made if it is not there: the workbook to print\n" +
			"and tick off, every table as CSV, the calendar of buying, packing, posting and\n" +
			"pick-ups, and the whole plan as JSON. The same trip file gives the same files."),
		Args: exactly("a trip file", "a folder for the papers"),
	}
	force := forceFlag(command)
	command.RunE = func(command *cobra.Command, args []string) error {
		return runExport(command.Context(), c, args[0], args[1], *force)
	}
	return command
}

// runExport plans a trip file and writes its papers. All papers are made
// before the first is written, so that a failure leaves the folder alone.
func runExport(ctx context.Context, c console, path, folder string, force bool) error {
	if info, err := os.Stat(folder); err == nil && !info.IsDir() {
		return usageFault("%s is a file: name a folder", folder)
	}
	p, err := planFile(ctx, c, path)
	if err != nil {
		return err
	}
	saved, err := os.Stat(path)
	if err != nil {
		return err
	}
	list := papers.List(ctx, p, saved.ModTime().UTC())
	places := make([]string, len(list))
	for i := range list {
		places[i] = filepath.Join(folder, filepath.FromSlash(list[i].Name))
	}
	if err := refuseExisting(force, places...); err != nil {
		return err
	}
	made, err := makePapers(ctx, progress{c.err, c.live}, list)
	if err != nil {
		return err
	}
	for i, place := range places {
		if err := produceIn(place, force, made[i]); err != nil {
			return err
		}
	}
	return tellPapers(c.out, folder, list, p)
}

// makePapers makes all papers in memory.
func makePapers(ctx context.Context, watch progress, list []papers.Paper) ([][]byte, error) {
	defer watch.done()
	made := make([][]byte, len(list))
	for i, paper := range list {
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		watch.say("writing " + paper.Name)
		var content bytes.Buffer
		if err := paper.Write(&content); err != nil {
			return nil, fmt.Errorf("%s: %w", paper.Name, err)
		}
		made[i] = content.Bytes()
	}
	return made, nil
}

func produceIn(path string, force bool, content []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return produceFrom(path, force, func(w io.Writer) error {
		_, err := w.Write(content)
		return err
	})
}

func tellPapers(w io.Writer, folder string, list []papers.Paper, p *plan.Plan) error {
	out := &lineWriter{w: w}
	out.line("In %s:", folder)
	for _, paper := range list {
		out.line("  %-28s %s", paper.Name, paper.What)
	}
	if n := serious(p); n > 0 {
		out.line("Before you use them: %s must be fixed; see the sheet Findings or sumpter check.", counted(n, "finding", "findings"))
	}
	return out.err
}
