// Package papers lists everything that leaves the program for one plan, so
// that the command and the window write the same files under the same names.
//
// Make makes them all and WriteFolder writes them; List names them one by one.
package papers

import (
	"bytes"
	"context"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/exporter/calendar"
	"sumpter/exporter/print/prints"
	"sumpter/exporter/tables"
	"sumpter/exporter/tripbook"
	"sumpter/exporter/tripjson"
	"sumpter/exporter/workbook"
)

// Paper is one file of an export.
type Paper struct {
	Name string // with slashes, below the folder
	What string // what it is for
	// Write writes it, and says what a person should know of it, or nothing.
	Write func(ctx context.Context, w io.Writer) (note prose.Text, err error)
}

// List names the papers of a plan. The stamp is when the trip was last saved:
// a calendar tells by it which of two copies is newer. The options are for
// what is printed. The same plan, stamp and options give the same bytes, on
// machines with the same fonts if the options want the system's.
func List(p *plan.Plan, stamp time.Time, options prints.Options) []Paper {
	list := printed(p, options)
	list = append(list, []Paper{
		{"workbook.xlsx", "everything to print, tick off and take along",
			func(ctx context.Context, w io.Writer) (prose.Text, error) {
				return prose.Text{}, workbook.Write(ctx, w, p)
			}},
		{"calendar.ics", "buying, packing night, posting windows and pick-ups for a calendar",
			func(_ context.Context, w io.Writer) (prose.Text, error) {
				return prose.Text{}, calendar.Write(w, p, stamp)
			}},
		{"plan.json", "the whole plan for other programs",
			func(_ context.Context, w io.Writer) (prose.Text, error) {
				return prose.Text{}, tripjson.WritePlan(w, p)
			}},
	}...)
	if p.Trip != nil {
		list = append(list,
			Paper{"trip.xlsx", "what was entered, to change in a spreadsheet and import again",
				func(_ context.Context, w io.Writer) (prose.Text, error) {
					return prose.Text{}, tripbook.Write(w, p.Trip, p.Trip.Units)
				}},
			Paper{"trip.json", "what was entered, for other programs",
				func(_ context.Context, w io.Writer) (prose.Text, error) {
					return prose.Text{}, tripjson.Write(w, p.Trip)
				}})
	}
	for _, table := range tables.From(p).List() {
		list = append(list, Paper{"tables/" + table.Name + ".csv", "table: " + table.Title,
			func(_ context.Context, w io.Writer) (prose.Text, error) {
				return prose.Text{}, tables.WriteCSV(w, table)
			}})
	}
	return list
}

// printed lists the PDFs. One of which the plan has nothing is left out.
func printed(p *plan.Plan, options prints.Options) []Paper {
	var list []Paper
	for _, kind := range prints.Kinds() {
		if !prints.Has(p, kind) {
			continue
		}
		list = append(list, Paper{"print/" + string(kind) + ".pdf", kind.About().String(), func(ctx context.Context, w io.Writer) (prose.Text, error) {
			made, err := prints.Draw(ctx, p, kind, options, nil)
			if err != nil {
				return prose.Text{}, err
			}
			return made.Note(), made.Write(ctx, w)
		}})
	}
	return list
}

// Made is a paper with its content.
type Made struct {
	Paper
	Content []byte
	Note    prose.Text // what a person should know of it
}

// Make makes papers in memory, so that a failure leaves no half of them on
// disk. Progress, if not nil, hears of each before it is made.
func Make(ctx context.Context, list []Paper, progress func(paper Paper)) ([]Made, error) {
	var made []Made
	for _, paper := range list {
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		if progress != nil {
			progress(paper)
		}
		var content bytes.Buffer
		note, err := paper.Write(ctx, &content)
		if err != nil {
			return nil, prose.Errorf("%s: %s", paper.Name, err)
		}
		made = append(made, Made{paper, content.Bytes(), note})
	}
	return made, nil
}

// WriteFolder makes a new folder with papers in it, whole or not at all:
// they are written under another name beside it. A folder that is there
// already is left alone.
func WriteFolder(ctx context.Context, folder string, made []Made) error {
	if _, err := os.Lstat(folder); err == nil {
		return &fs.PathError{Op: "create", Path: folder, Err: fs.ErrExist}
	}
	if err := os.MkdirAll(filepath.Dir(folder), 0o755); err != nil {
		return err
	}
	aside, err := os.MkdirTemp(filepath.Dir(folder), ".sumpter-*.tmp")
	if err != nil {
		return err
	}
	defer os.RemoveAll(aside)
	whole := filepath.Join(aside, "papers")
	for _, paper := range made {
		if err := ctx.Err(); err != nil {
			return err
		}
		path := filepath.Join(whole, filepath.FromSlash(paper.Name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(path, paper.Content, 0o644); err != nil {
			return err
		}
	}
	return os.Rename(whole, folder)
}
