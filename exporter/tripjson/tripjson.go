// Package tripjson reads and writes a trip as JSON for other programs, prints
// its JSON Schema (draft 2020-12), and writes the plan as JSON.
//
// Use Write and Read for the trip, Schema for what Read accepts, WritePlan and
// PlanSchema for what was worked out. What Write wrote, Read gives back
// unchanged; the same trip always gives the same bytes. Reading is strict: a
// misspelt name or a missing field is a fault, never a silent zero, since a
// forgotten "severe" could hurt somebody.
package tripjson

import (
	"encoding/json"
	"fmt"
	"io"
	"reflect"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Version of both formats; it rises when a field changes its meaning.
const Version = 1

// Limits of what Read takes. A trip of 60 people and 21 days is below 1 MB
// and 20,000 entries; what passes these is damaged or hostile.
const (
	MaxBytes   = 32 << 20
	maxEntries = 200_000 // of all lists and maps together
)

// document is the outermost object: the trip's own fields and the version.
type document struct {
	FormatVersion int `json:"format_version"` // 1
	trip.Trip
}

// Write writes the trip, indented, lists in the order they have. Empty lists
// are written as [], unknown values left out. It fails on numbers that JSON
// cannot hold (NaN, infinities) and on what w returns.
func Write(w io.Writer, t *trip.Trip) error {
	return write(w, &document{FormatVersion: Version, Trip: *t}, prose.Reader{Units: t.Units})
}

// write writes a document; its texts are written for the reader.
func write(w io.Writer, doc any, reader prose.Reader) error {
	complete, err := completion{reader}.of(reflect.ValueOf(doc).Elem(), "")
	if err != nil {
		return err
	}
	encoder := json.NewEncoder(w)
	encoder.SetIndent("", "  ")
	encoder.SetEscapeHTML(false)
	if err := encoder.Encode(complete.Interface()); err != nil {
		return fmt.Errorf("write JSON: %w", err)
	}
	return nil
}
