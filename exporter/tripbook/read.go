package tripbook

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// reading is one workbook on its way into a trip.
type reading struct {
	scope    *scope
	trip     *trip.Trip
	grids    []*grid // one for each of our sheets; nil: not there
	problems []Problem
	faulty   map[origin]bool
	origins  map[string]origin // which row a part of the trip came from
}

// origin is a row of a sheet.
type origin struct {
	grid *grid
	row  int
}

// Read reads a workbook that Write or WriteTemplate wrote, filled in or
// changed by hand in any spreadsheet: sheets and columns in any order, US or
// metric headings, numbers and dates as numbers or as text. The trip is nil
// when a problem is more than a note; it has then passed trip.Validate. An
// error means that it could not be read at all: no workbook, damaged, locked,
// too large, or a failure of r.
func Read(r io.Reader) (made *trip.Trip, problems []Problem, err error) {
	defer func() {
		// The library under us has been made to panic by damaged files.
		if broken := recover(); broken != nil {
			made, problems, err = nil, nil, damaged(prose.Errorf("%v", broken))
		}
	}()
	file, err := open(r)
	if err != nil {
		return nil, nil, err
	}
	defer func() { err = errors.Join(err, file.Close()) }()
	reading := &reading{scope: newScope(), trip: &trip.Trip{}, faulty: map[origin]bool{}, origins: map[string]origin{}}
	if err := reading.take(file); err != nil {
		return nil, nil, err
	}
	if !Faulty(reading.problems) {
		reading.validate()
	}
	reading.sort()
	if Faulty(reading.problems) {
		return nil, reading.problems, nil
	}
	return reading.trip, reading.problems, nil
}

// take reads all sheets: first where everything stands, then what things are
// called, then the rest, which may refer to them.
func (r *reading) take(file *excelize.File) error {
	if properties, err := file.GetWorkbookProps(); err == nil && properties.Date1904 != nil {
		r.scope.from1904 = *properties.Date1904
	}
	ours := sheets()
	if err := r.collect(file, ours); err != nil {
		return err
	}
	for i, s := range ours {
		if r.grids[i] != nil && s.register() != nil {
			r.register(r.grids[i], s.register()(r.scope))
		}
	}
	if g := r.grids[0]; g != nil {
		r.scope.currency, _ = currencyCode(g.rows[0].cells[g.field("currency")])
	}
	for i, s := range ours {
		if r.grids[i] != nil {
			s.read(r.grids[i], r)
		}
	}
	return nil
}

// collect finds our sheets among those of the workbook.
func (r *reading) collect(file *excelize.File, ours []sheet) error {
	r.grids = make([]*grid, len(ours))
	found := 0
	for _, name := range file.GetSheetList() {
		i := slices.IndexFunc(ours, func(s sheet) bool { return wordKey(s.title()) == wordKey(name) })
		if i < 0 || r.grids[i] != nil {
			if key := wordKey(name); key != wordKey(sheetReadMe) && key != wordKey(sheetLists) {
				r.report(Problem{Sheet: name, Wrong: "is no sheet of a trip: it is left aside", Note: true})
			}
			continue
		}
		raw, err := r.rawSheet(file, name)
		if err != nil {
			return err
		}
		found++
		if ours[i].downwards() {
			r.grids[i] = r.down(ours[i], name, i, raw)
		} else {
			r.grids[i] = r.across(ours[i], name, i, raw)
		}
	}
	if found == 0 {
		return prose.Errorf("this workbook has none of the sheets of a trip: begin with an empty one that this program writes")
	}
	for i, s := range ours {
		if r.grids[i] == nil && slices.Contains(essential, s.title()) {
			r.report(Problem{Sheet: s.title(), Wrong: "is missing", Allowed: "a workbook with this sheet"})
		}
	}
	return nil
}

// register notes the names and IDs of a sheet and gives IDs to new things.
func (r *reading) register(g *grid, n *names) {
	name, id := g.field("name"), g.field("id")
	largest := int64(0)
	rowOf := map[int64]int{}
	for i := range g.rows {
		number, wrong := parseID(g.rows[i].cells[id])
		if wrong != "" {
			continue // blank, or a fault that reading the row will tell
		}
		if above, taken := rowOf[number]; taken {
			r.fault(g, i, id, fmt.Sprintf("is the ID of row %d already", g.rows[above].number), "an ID that no other row has, or nothing")
		}
		rowOf[number] = i
		largest = max(largest, number)
	}
	if g.columns[id].place < 0 {
		g.columns[id].place = maxColumns
	}
	first := map[string]int{}
	for i := range g.rows {
		if isBlank(g.rows[i].cells[id]) {
			largest++
			g.rows[i].cells[id] = strconv.FormatInt(largest, 10)
		}
		key := nameKey(g.rows[i].cells[name])
		if above, taken := first[key]; taken && key != "" {
			r.fault(g, i, name, fmt.Sprintf("is the name of row %d already", g.rows[above].number), "a name that no other row has")
			continue
		}
		first[key] = i
		if number, wrong := parseID(g.rows[i].cells[id]); wrong == "" && key != "" {
			n.add(number, strings.TrimSpace(g.rows[i].cells[name]))
		}
	}
}

func parseID(text string) (int64, string) {
	const wrong = "is not a whole number from 1"
	decimal, bad := plainDecimal(text)
	if bad != "" {
		return 0, wrong
	}
	decimal = strings.TrimSuffix(decimal, ".0")
	id, err := strconv.ParseInt(decimal, 10, 64)
	if err != nil || id < 1 || id > 1<<62 {
		return 0, wrong
	}
	return id, ""
}

func (r *reading) report(p Problem) {
	if len(r.problems) < maxProblems {
		r.problems = append(r.problems, p)
	}
}

// fault reports a cell.
func (r *reading) fault(g *grid, row, column int, wrong, allowed string) {
	r.faulty[origin{g, row}] = true
	text := g.rows[row].cells[column]
	if isBlank(text) {
		text = ""
	}
	r.report(Problem{Sheet: g.sheet, Cell: g.address(row, column), Found: shown(text), Wrong: wrong, Allowed: allowed})
}

func (r *reading) isFaulty(g *grid, row int) bool { return r.faulty[origin{g, row}] }

// sort puts problems in the order of the sheets and down their rows.
func (r *reading) sort() {
	order := map[string]int{}
	for _, g := range r.grids {
		if g != nil {
			order[g.sheet] = g.order + 1
		}
	}
	slices.SortStableFunc(r.problems, func(a, b Problem) int {
		columnA, rowA, _ := excelize.CellNameToCoordinates(a.Cell)
		columnB, rowB, _ := excelize.CellNameToCoordinates(b.Cell)
		return cmp.Or(cmp.Compare(order[a.Sheet], order[b.Sheet]), cmp.Compare(rowA, rowB), cmp.Compare(columnA, columnB))
	})
}
