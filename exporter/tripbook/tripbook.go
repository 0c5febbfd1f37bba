// Package tripbook writes a trip as a workbook (xlsx) that a leader can read
// and fill in, and reads such a workbook back.
//
// WriteTemplate gives an empty one, Write a filled one, Read takes either.
// Reading and writing follow one table of sheets and columns (the sheets*.go
// files), so that they cannot part: what Write wrote in either system of
// units, Read gives back exactly, to the milligram. Sheets refer to each other
// by name, as people do; the last column holds the ID, empty for a new thing.
//
// Reading is all or nothing: every fault of the workbook is told at once, each
// with its sheet and cell, and only a workbook without faults gives a trip.
package tripbook

import (
	"fmt"
	"strings"

	"sumpter/domain/prose"
)

// Limits of what Read takes. The workbook of a trip of 60 people and 21 days
// has below 1 MB, 6 MB unpacked and 2,500 rows a sheet; what passes these is
// damaged or hostile.
const (
	MaxBytes    = 16 << 20
	maxUnpacked = 64 << 20 // of all parts together
	maxPart     = 24 << 20 // of one sheet held in memory
	maxRows     = 30_000   // of one sheet
	maxColumns  = 300
	maxProblems = 500 // enough for anybody to mend at once
)

// ErrTooLarge is returned for workbooks beyond the limits.
var ErrTooLarge = prose.Errorf("too large to be a trip workbook")

// Problem is one fault in a workbook, or one remark on it: where it is, what
// stands there, what is wrong with it and what may stand there.
type Problem struct {
	Sheet   string
	Cell    string // "D7"; "" where the whole sheet is meant
	Found   string // as it stands there, cut where long
	Wrong   string
	Allowed string
	Note    bool // the trip was read all the same
}

// String is the one line a reader sees.
func (p Problem) String() string {
	var where []string
	if p.Sheet != "" {
		where = append(where, "sheet "+p.Sheet)
	}
	if p.Cell != "" {
		where = append(where, "cell "+p.Cell)
	}
	line := strings.Join(where, ", ")
	if line != "" {
		line += ": "
	}
	if p.Found != "" {
		line += fmt.Sprintf("%q ", p.Found)
	}
	line += p.Wrong
	if p.Allowed != "" {
		line += "; allowed: " + p.Allowed
	}
	return line
}

// Faulty tells whether any of the problems is more than a note.
func Faulty(problems []Problem) bool {
	for _, p := range problems {
		if !p.Note {
			return true
		}
	}
	return false
}

const mostShown = 60

// shown cuts a text to what fits a line.
func shown(text string) string {
	if runes := []rune(text); len(runes) > mostShown {
		return string(runes[:mostShown]) + "…"
	}
	return text
}
