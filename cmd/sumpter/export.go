package main

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"time"

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
	stamp := saved.ModTime().UTC()
	if err := refuseExisting(force, places(folder, p, stamp)...); err != nil {
		return err
	}
	watch := progress{c.err, c.live}
	made, err := papers.Make(ctx, p, stamp, func(name string) { watch.say("writing " + name) })
	watch.done()
	if err != nil {
		return err
	}
	for i, place := range places(folder, p, stamp) {
		if err := produceIn(place, force, made[i].Content); err != nil {
			return err
		}
	}
	return tellPapers(c.out, folder, made, p)
}

// places lists where the papers go.
func places(folder string, p *plan.Plan, stamp time.Time) []string {
	var list []string
	for _, paper := range papers.List(p, stamp) {
		list = append(list, filepath.Join(folder, filepath.FromSlash(paper.Name)))
	}
	return list
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

func tellPapers(w io.Writer, folder string, made []papers.Made, p *plan.Plan) error {
	out := &lineWriter{w: w}
	out.line("In %s:", folder)
	for _, paper := range made {
		out.line("  %-28s %s", paper.Name, paper.What)
	}
	if n := serious(p); n > 0 {
		out.line("Before you use them: %s must be fixed; see the sheet Findings or sumpter check.", counted(n, "finding", "findings"))
	}
	return out.err
}
