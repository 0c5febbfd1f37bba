package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"sumpter/domain/plan"
	"sumpter/exporter/calendar"
	"sumpter/exporter/tables"
	"sumpter/exporter/workbook"
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

// paper is one file of an export.
type paper struct {
	name  string // with slashes, below the folder
	what  string
	write func(io.Writer) error
}

// papers lists what an export writes. The stamp is when the trip was last
// saved: a calendar tells by it which of two copies is newer.
func papers(ctx context.Context, p *plan.Plan, stamp time.Time) []paper {
	list := []paper{
		{"workbook.xlsx", "everything to print, tick off and take along", func(w io.Writer) error { return workbook.Write(ctx, w, p) }},
		{"calendar.ics", "buying, packing night, posting windows and pick-ups for a calendar", func(w io.Writer) error { return calendar.Write(w, p, stamp) }},
		{"plan.json", "the whole plan for other programs", func(w io.Writer) error { return writePlanJSON(w, p) }},
	}
	for _, table := range tables.From(p).List() {
		list = append(list, paper{"tables/" + table.Name + ".csv", "table: " + table.Title, func(w io.Writer) error { return tables.WriteCSV(w, table) }})
	}
	return list
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
	info, err := os.Stat(path)
	if err != nil {
		return err
	}
	list := papers(ctx, p, info.ModTime().UTC())
	places := make([]string, len(list))
	for i := range list {
		places[i] = filepath.Join(folder, filepath.FromSlash(list[i].name))
	}
	if err := refuseExisting(force, places...); err != nil {
		return err
	}
	made, err := makePapers(ctx, c, list)
	if err != nil {
		return err
	}
	for i, place := range places {
		if err := os.MkdirAll(filepath.Dir(place), 0o755); err != nil {
			return err
		}
		err := produceFrom(place, force, func(w io.Writer) error {
			_, err := w.Write(made[i])
			return err
		})
		if err != nil {
			return err
		}
	}
	return tellPapers(c.out, list, places, p)
}

func makePapers(ctx context.Context, c console, list []paper) ([][]byte, error) {
	watch := progress{c.err, c.live}
	defer watch.done()
	made := make([][]byte, len(list))
	for i, paper := range list {
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		watch.say("writing " + paper.name)
		var buffer bytes.Buffer
		if err := paper.write(&buffer); err != nil {
			return nil, fmt.Errorf("%s: %w", paper.name, err)
		}
		made[i] = buffer.Bytes()
	}
	return made, nil
}

func tellPapers(w io.Writer, list []paper, places []string, p *plan.Plan) error {
	out := &lineWriter{w: w}
	for i := range list {
		out.line("%-44s %s", places[i], list[i].what)
	}
	if n := serious(p); n > 0 {
		out.line("Before you use them: %s must be fixed; see the sheet Findings or sumpter check.", counted(n, "finding", "findings"))
	}
	return out.err
}
