package tripbook

import (
	"regexp"
	"slices"
	"strings"

	"sumpter/domain/trip"
)

// validate judges the trip as a whole and finds the cell of each problem.
func (r *reading) validate() {
	for _, p := range trip.Validate(r.trip) {
		at := r.locate(p.Where)
		at.Wrong, at.Allowed = p.What.String(), p.Allowed.String()
		if at.Cell == "" && p.Where.Name != "" {
			at.Wrong = p.Where.String() + ": " + p.What.String()
		}
		r.report(at)
	}
}

var step = regexp.MustCompile(`\[(\d+)\]`)

// locate finds where a place of the trip stands in the workbook: the cell, or
// at least the row or the sheet.
func (r *reading) locate(where trip.Where) Problem {
	path := where.Path()
	if where.List == "trip" || where.List == "settings" {
		path = "trip." + path
	}
	for head := path; head != ""; head = parent(head) {
		if from, ok := r.origins[head]; ok {
			return from.problem(lastList(head), strings.TrimPrefix(strings.TrimPrefix(path, head), "."))
		}
	}
	return Problem{Sheet: r.sheetOf(where.List)}
}

// parent cuts the last step off a path: "foods[1].packages[0]" is below "foods[1]".
func parent(path string) string {
	cut := strings.LastIndexAny(path, ".[")
	if cut < 0 {
		return ""
	}
	return path[:cut]
}

// lastList gives the list a path ends in: "swaps" of "recipes[0].swaps[1]".
func lastList(path string) string {
	path = step.ReplaceAllString(path, "")
	return path[strings.LastIndex(path, ".")+1:]
}

// problem points at the column of a field in the row, or at its first cell.
// The columns of a part that shares the row with its whole have the list's
// name before their own.
func (o origin) problem(list, field string) Problem {
	g := o.grid
	field = step.ReplaceAllString(field, "")
	column := g.field(list + "." + field)
	for ; column < 0 && field != ""; field = parent(field) {
		column = slices.IndexFunc(g.heads, func(h *head) bool { return h.field == field || strings.HasPrefix(h.field, field+".") })
	}
	if column < 0 || g.columns[column].place < 0 || g.columns[column].place >= maxColumns {
		column = 0
	}
	if g.columns[column].place < 0 {
		return Problem{Sheet: g.sheet}
	}
	text := g.rows[o.row].cells[column]
	if isBlank(text) {
		text = ""
	}
	return Problem{Sheet: g.sheet, Cell: g.address(o.row, column), Found: shown(text)}
}

// sheetOf gives the sheet of a list, as the workbook calls it.
func (r *reading) sheetOf(list string) string {
	for i, s := range sheets() {
		if s.listName() == list {
			if r.grids[i] != nil {
				return r.grids[i].sheet
			}
			return s.title()
		}
	}
	return sheetTrip
}
