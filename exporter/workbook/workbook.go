// Package workbook writes the trip's workbook: everything a leader prints,
// ticks off and carries along, as sheets that any spreadsheet opens.
//
// Start with Write. The same plan gives the same bytes.
package workbook

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"slices"

	"github.com/xuri/excelize/v2"

	"sumpter/domain/plan"
	"sumpter/domain/units"
	"sumpter/exporter/tables"
)

// documentTime stands in the file as its time of making, so that equal plans
// give equal bytes.
const documentTime = "2000-01-01T00:00:00Z"

// Write writes the plan's workbook. Figures are in the units of the trip;
// what a leader changes (packages, prices, weighed grams) carries formulas
// that agree with the plan. Text typed by anybody stays text. Errors are those
// of the writer, of the context, or of a plan too large for the file format.
func Write(ctx context.Context, w io.Writer, p *plan.Plan) error {
	b := newBook(p)
	defer b.file.Close()
	for _, s := range sheets(p) {
		s.breakPages()
		if err := b.emit(ctx, s); err != nil {
			return fmt.Errorf("workbook: %w", err)
		}
	}
	if err := b.finish(); err != nil {
		return fmt.Errorf("workbook: %w", err)
	}
	var file bytes.Buffer
	if _, err := b.file.WriteTo(&file); err != nil {
		return fmt.Errorf("workbook: %w", err)
	}
	if err := copySorted(w, file.Bytes()); err != nil {
		return fmt.Errorf("workbook: %w", err)
	}
	return nil
}

func newBook(p *plan.Plan) *book {
	file := excelize.NewFile()
	b := &book{file: file, styles: &styles{file: file, made: map[look]int{}}, title: "Trip"}
	if p.Trip != nil && p.Trip.Title != "" {
		b.title = p.Trip.Title
	}
	return b
}

// Names of the sheets that others point to.
const (
	overviewSheet = "Overview"
	findingsSheet = "Findings"
	shoppingSheet = "Shopping"
	fuelSheet     = "Fuel to buy"
	costsSheet    = "Costs"
	needsSheet    = "Needs"
	loadsSheet    = "Loads"
)

// sheets lays out the whole workbook, in the order of the leader's work: plan,
// buy, pack, send ahead, share out, cook, and what was decided on the way. What
// many trips have nothing of is left out where there is nothing.
func sheets(p *plan.Plan) []*sheet {
	t := tables.From(p)
	list := []*sheet{
		tableSheet(findingsSheet, &t.Findings, nil),
		cautionsSheet(p),
		tableSheet("Crew", &t.Crew, nil),
		tableSheet("Menu", &t.Menu, nil),
		tableSheet("Dishes", &t.Dishes, nil),
		needsWithChart(&t.Needs),
		tableSheet("Needs by day", &t.NeedsByDay, nil),
		shoppingList(&t.Shopping),
		fuelList(&t.Fuel),
		ifAny("Shops to go to", &t.Visits),
		ifAny("Choices of shops", &t.Errands),
		ifAny("Left over", &t.Leftovers),
		costs(p, t),
		ifAny("Parts", &t.Parts),
		ifAny("Who pays whom", &t.Payments),
		tableSheet("Packing stations", &t.Rounds, nil),
		weighing(&t.Weighing),
		tableSheet("Bagging list", &t.Bags, nil),
		ifAny("Boxes", &t.Boxes),
		ifAny("Box contents", &t.BoxBags),
		ifAny("If a box is missing", &t.Missing),
		ifAny("Choices of points", &t.Stops),
		loads(t),
		tableSheet("Loads in parts", &t.Loads, nil),
		tableSheet("Who carries what", &t.Carriers, nil),
		ifAny("Fair split", &t.Splits),
		ifAny("Few hand-overs or fair", &t.SplitChoices),
		ifAny("What changes packs", &t.PackChanges),
		ifAny("Planned hand-overs", &t.PassedOn),
		recipeCards(p),
		tableSheet("Cooking", &t.Cooking, nil),
		ifAny("Fuel by leg", &t.FuelByLeg),
		tableSheet("Water", &t.Water, nil),
		tableSheet("How food keeps", &t.Keeping, nil),
		ifAny("Hand-overs", &t.HandOvers),
		ifAny("Moved meals", &t.MovedDishes),
		ifAny("On the way", &t.Happened),
	}
	list = slices.DeleteFunc(list, func(s *sheet) bool { return s == nil })
	list = append([]*sheet{overview(p, t, list)}, list...)
	for _, s := range list {
		s.letter = p.Trip != nil && p.Trip.Units == units.US
	}
	return list
}

// ifAny is the sheet of a table that has rows, or nil.
func ifAny(name string, t *tables.Table) *sheet {
	if len(t.Rows) == 0 {
		return nil
	}
	return tableSheet(name, t, nil)
}

// finish names what formulas point to and fixes the times in the file.
func (b *book) finish() error {
	for _, name := range costNames {
		err := b.file.SetDefinedName(&excelize.DefinedName{
			Name: name.name, RefersTo: fmt.Sprintf("%s!$B$%d", quoted(costsSheet), name.row),
		})
		if err != nil {
			return err
		}
	}
	recalculate := true
	if err := b.file.SetCalcProps(&excelize.CalcPropsOptions{FullCalcOnLoad: &recalculate}); err != nil {
		return err
	}
	return b.file.SetDocProps(&excelize.DocProperties{
		Title: clean(b.title), Creator: "Sumpter", LastModifiedBy: "Sumpter",
		Created: documentTime, Modified: documentTime,
	})
}

// dateSerial gives a date as the file format counts it: days in the 1900
// system of ECMA-376 Part 1, 18.17.4.1 (right from 1 March 1900 on).
func dateSerial(date units.Date) int { return int(date) + 25569 }
