package main

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/jeandeaual/go-locale"
	"github.com/spf13/cobra"

	"sumpter/app/window/translation"
	"sumpter/domain/plan"
	"sumpter/exporter/papers"
	"sumpter/exporter/print/labels"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/prints"
)

func exportCommand(c console) *cobra.Command {
	command := &cobra.Command{
		Use:   "export TRIP DIR",
		Short: "Plan a trip and write everything to print and to hand on",
		Long: withExits("Plan a trip and write into a folder, made if it is not there: everything to print as\n" +
			"PDF, the workbook to tick off, every table as CSV, the calendar of buying, packing,\n" +
			"posting and pick-ups, and the whole plan as JSON. The same trip file gives the same\n" +
			"files. What is printed speaks the language of the system or the one given (" + strings.Join(translation.Languages(), ", ") + ");\n" +
			"workbook, tables and calendar are in English. Label sheets: " + strings.Join(sheetKeys(), ", ") + "."),
		Args: exactly("a trip file", "a folder for the papers"),
	}
	force := forceFlag(command)
	wanted := printFlags(command)
	command.RunE = func(command *cobra.Command, args []string) error {
		options, err := wanted.options()
		if err != nil {
			return err
		}
		return runExport(command.Context(), c, args[0], args[1], options, *force)
	}
	return command
}

// printing is how the user wants the papers printed.
type printing struct {
	paper, sheet, language string
	first                  int
	black                  bool
}

func printFlags(command *cobra.Command) *printing {
	p := &printing{}
	command.Flags().StringVar(&p.paper, "paper", "a4", "paper to print on: a4 or letter")
	command.Flags().BoolVar(&p.black, "black", false, "print with black ink alone")
	command.Flags().StringVar(&p.language, "language", "", "language of what is printed; that of the system if not given")
	command.Flags().StringVar(&p.sheet, "labels", "", "label sheet; plain paper to cut if not given")
	command.Flags().IntVar(&p.first, "first-label", 1, "first label of the sheet that is free")
	return p
}

func (p *printing) options() (prints.Options, error) {
	options := prints.Options{SystemFonts: true, Black: p.black, Start: p.first}
	language, err := p.spoken()
	if err != nil {
		return options, err
	}
	options.Language, options.Reader = language, translation.Reader(language)
	switch strings.ToLower(p.paper) {
	case "a4":
		options.Paper = press.A4
	case "letter":
		options.Paper = press.Letter
	default:
		return options, usageFault("there is no paper %q: give a4 or letter", p.paper)
	}
	grid := labels.Usual(options.Paper).Grid
	if p.sheet != "" {
		at := slices.Index(sheetKeys(), strings.ToLower(p.sheet))
		if at < 0 {
			return options, usageFault("there is no label sheet %q: give one of %s", p.sheet, strings.Join(sheetKeys(), ", "))
		}
		grid = labels.Sheets()[at].Grid
	}
	options.Grid = grid
	if p.first < 1 || p.first > grid.Count() {
		return options, usageFault("that sheet has labels 1 to %d: --first-label cannot be %d", grid.Count(), p.first)
	}
	return options, nil
}

// spoken is the language of what is printed. One that was asked for and is not
// spoken is a fault; a system that speaks another is printed for in English,
// as the window does.
func (p *printing) spoken() (string, error) {
	if p.language == "" {
		if system, err := locale.GetLocale(); err == nil {
			if language, ok := translation.Spoken(system); ok {
				return language, nil
			}
		}
		return translation.English, nil
	}
	language, ok := translation.Spoken(p.language)
	if !ok {
		return "", usageFault("nothing is printed in %q: give one of %s", p.language, strings.Join(translation.Languages(), ", "))
	}
	return language, nil
}

func sheetKeys() []string {
	var keys []string
	for _, sheet := range labels.Sheets() {
		keys = append(keys, sheet.Key)
	}
	return keys
}

// runExport plans a trip file and writes its papers. All papers are made
// before the first is written, so that a failure leaves the folder alone.
func runExport(ctx context.Context, c console, path, folder string, options prints.Options, force bool) error {
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
	if err := refuseExisting(force, places(folder, p, stamp, options)...); err != nil {
		return err
	}
	watch := progress{c.err, c.live}
	made, err := papers.Make(ctx, papers.List(p, stamp, options), func(paper papers.Paper) { watch.say("writing " + paper.Name) })
	watch.done()
	if err != nil {
		return err
	}
	for i, place := range places(folder, p, stamp, options) {
		if err := produceIn(place, force, made[i].Content); err != nil {
			return err
		}
	}
	return tellPapers(c.out, folder, made, p)
}

// places lists where the papers go.
func places(folder string, p *plan.Plan, stamp time.Time, options prints.Options) []string {
	var list []string
	for _, paper := range papers.List(p, stamp, options) {
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
	noted := map[string]bool{}
	for _, paper := range made {
		out.line("  %-28s %s", paper.Name, paper.What)
	}
	for _, paper := range made {
		if note := paper.Note.String(); note != "" && !noted[note] {
			noted[note] = true
			out.line("%s", note)
		}
	}
	if n := serious(p); n > 0 {
		out.line("Before you use them: %s must be fixed; see the sheet Findings or sumpter check.", counted(n, "finding", "findings"))
	}
	return out.err
}
