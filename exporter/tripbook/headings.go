package tripbook

import (
	"strings"
)

var brackets = strings.NewReplacer("[", "(", "]", ")", "\n", " ")

// headingParts takes a heading apart: "Body mass (kg)" is "body mass" in kg.
func headingParts(text string) (key, unit string) {
	text = brackets.Replace(strings.TrimSpace(text))
	if open := strings.LastIndex(text, "("); open > 0 && strings.HasSuffix(text, ")") {
		return wordKey(text[:open]), strings.TrimSpace(text[open+1 : len(text)-1])
	}
	return wordKey(text), ""
}

// across sorts the cells of a sheet with a heading row into our columns.
func (r *reading) across(s sheet, name string, order int, raw []gridRow) *grid {
	g := r.emptyGrid(s, name, order)
	titles := map[string]bool{}
	for _, h := range g.heads {
		titles[wordKey(h.title)] = true
	}
	at := headingRow(raw, func(text string) bool { key, _ := headingParts(text); return titles[key] })
	if at < 0 {
		if len(raw) > 0 {
			r.report(Problem{Sheet: name, Cell: cellName(0, raw[0].number), Wrong: "no known heading stands in the first rows", Allowed: "headings such as " + g.heads[0].title})
		}
		return g
	}
	heading := raw[at]
	for column, text := range heading.cells {
		if !isBlank(text) {
			key, symbol := headingParts(text)
			r.heading(g, cellName(column, heading.number), text, key, symbol, column, under(column, raw[at+1:]))
		}
	}
	below := raw[at+1:]
	if len(below) > 0 {
		r.missing(g, cellName(0, heading.number))
	}
	for _, row := range below {
		cells := make([]string, len(g.heads))
		filled := false
		for j, c := range g.columns {
			if c.place >= 0 && c.place < len(row.cells) {
				cells[j] = row.cells[c.place]
				filled = filled || !isBlank(cells[j])
			}
		}
		if filled {
			g.rows = append(g.rows, gridRow{row.number, cells})
		}
	}
	return g
}

// down sorts a sheet whose settings stand one below the other: name, value,
// unit, meaning.
func (r *reading) down(s sheet, name string, order int, raw []gridRow) *grid {
	g := r.emptyGrid(s, name, order)
	g.rows = []gridRow{{number: 1, cells: make([]string, len(g.heads))}}
	for _, row := range raw {
		if isBlank(row.cells[0]) || row.number == 1 && wordKey(row.cells[0]) == wordKey(settingHead[0]) {
			continue
		}
		key, symbol := headingParts(row.cells[0])
		if len(row.cells) > 2 && !isBlank(row.cells[2]) {
			symbol = row.cells[2]
		}
		if j := r.heading(g, cellName(0, row.number), row.cells[0], key, symbol, row.number-1, nil); j >= 0 && len(row.cells) > 1 {
			g.rows[0].cells[j] = row.cells[1]
		}
	}
	r.missing(g, "A1")
	return g
}

func (r *reading) emptyGrid(s sheet, name string, order int) *grid {
	g := &grid{sheet: name, order: order, heads: s.heads(), single: s.downwards()}
	for range g.heads {
		g.columns = append(g.columns, gridColumn{place: -1})
	}
	return g
}

// headingRow finds the row with the most known headings.
func headingRow(raw []gridRow, known func(text string) bool) int {
	best, most := -1, 0
	for i := range min(headingRows, len(raw)) {
		found := 0
		for _, text := range raw[i].cells {
			if known(text) {
				found++
			}
		}
		if found > most {
			best, most = i, found
		}
	}
	return best
}

// heading takes one heading: finds its column and unit, or tells what is wrong
// with it. It may leave the unit to the cells below, if each tells its own. It
// gives the place among our columns, or -1.
func (r *reading) heading(g *grid, cell, text, key, symbol string, place int, below []string) int {
	for j, h := range g.heads {
		if wordKey(h.title) != key {
			continue
		}
		if g.columns[j].place >= 0 {
			r.report(Problem{Sheet: g.sheet, Cell: cell, Found: shown(text), Wrong: "stands there twice", Allowed: "each heading once"})
			return -1
		}
		g.columns[j].place = place
		if h.quantity == nil {
			return j
		}
		u, ok := h.quantity.heading(symbol)
		if !ok && (symbol != "" || !h.quantity.eachTells(below)) {
			g.columns[j].spoilt = true
			r.report(Problem{Sheet: g.sheet, Cell: cell, Found: shown(text), Wrong: "does not tell its unit", Allowed: h.title + " with one of (" + h.quantity.symbols() + ") behind it"})
		}
		g.columns[j].unit = u
		return j
	}
	r.report(Problem{Sheet: g.sheet, Cell: cell, Found: shown(text), Wrong: "is no heading of this sheet: it is left aside", Note: true})
	return -1
}

// under gives the filled cells of a column.
func under(column int, rows []gridRow) []string {
	var cells []string
	for _, row := range rows {
		if column < len(row.cells) && !isBlank(row.cells[column]) {
			cells = append(cells, row.cells[column])
		}
	}
	return cells
}

// eachTells tells whether every cell has a unit of its own, and there is one.
func (q *quantity) eachTells(cells []string) bool {
	for _, text := range cells {
		parts := withUnit.FindStringSubmatch(strings.TrimSpace(text))
		if parts == nil {
			return false
		}
		if _, known := q.named(parts[2]); !known {
			return false
		}
	}
	return len(cells) > 0
}

// heading gives the unit of a heading. Without a symbol there must be but one.
func (q *quantity) heading(symbol string) (unit, bool) {
	if symbol == "" {
		first := q.units[0]
		return first, first.symbol == "" || q.symbols() == first.symbol
	}
	return q.named(symbol)
}

// missing reports columns without which no row can be read.
func (r *reading) missing(g *grid, cell string) {
	titles := absent(g)
	switch len(titles) {
	case 0:
	case 1:
		r.report(Problem{Sheet: g.sheet, Cell: cell, Wrong: "the heading " + titles[0] + " is missing", Allowed: "a row of headings with it"})
	default:
		r.report(Problem{Sheet: g.sheet, Cell: cell, Wrong: "these headings are missing: " + strings.Join(titles, ", "), Allowed: "a row of headings with them"})
	}
}

// absent gives the needed headings that a sheet lacks, with their units.
func absent(g *grid) []string {
	var titles []string
	for j, h := range g.heads {
		if !h.needed || g.columns[j].place >= 0 {
			continue
		}
		title := h.title
		if h.quantity != nil && h.quantity.symbols() != "" {
			title += " (" + h.quantity.symbols() + ")"
		}
		titles = append(titles, title)
	}
	return titles
}
