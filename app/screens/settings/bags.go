package settings

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// bagsTab is the kinds of bag that lie ready on packing night. They have no ID:
// a row is a place in the list.
type bagsTab struct {
	bench   *bench.Bench
	fields  []bagField
	table   *grid.Grid[int]
	content fyne.CanvasObject
}

func newBagsTab(b *bench.Bench) *bagsTab {
	g := &bagsTab{bench: b, fields: bagFields(b)}
	g.table = grid.New(g.columns(), grid.Options[int]{
		Key: strconv.Itoa, OnAdd: g.add, OnDelete: g.remove, OnPaste: g.paste, Together: b.Together, OnProblem: b.Say, Sticky: 1, Clipboard: b.Clipboard,
	})
	add := widget.NewButton(lang.L("Add a kind of bag"), g.table.Add)
	add.Importance = widget.HighImportance
	about := bench.SmallPrint(lang.L("The plan takes the smallest bag that holds what belongs together and still closes; liquids and spreads go into kinds marked for them. Weigh an empty one of yours: makers differ."))
	head := bench.Head(bench.Inset(look.NewHeading(lang.L("What lies ready on packing night?"))),
		widget.NewButton(lang.L("Add the usual kinds"), g.addUsual), widget.NewButton(lang.L("Remove"), g.table.Delete), add)
	g.content = bench.Headed(g.table, head, about)
	return g
}

func (g *bagsTab) columns() []grid.Column[int] {
	var columns []grid.Column[int]
	for i, f := range g.fields {
		column := grid.Column[int]{Title: f.title, Unit: f.unit, Width: f.width, Right: f.number != nil, Text: func(row int) string { return f.text(g.at(row)) }}
		if f.number != nil {
			column.Compare = func(a, b int) int { return cmp.Compare(f.number(g.at(a)), f.number(g.at(b))) }
		}
		if f.choices != nil {
			column.Choices = func(int) []string { return f.choices }
		}
		if f.set != nil {
			column.Set = func(row int, text string) error {
				name := lang.X("edit-bag-kind", "change {{.What}} of {{.Name}}", map[string]any{"What": f.title, "Name": g.at(row).Name})
				return g.bench.Edit(name, func(t *trip.Trip) error { return g.store(t, row, i, text) })
			}
		} else {
			column.Tone = func(int) fyne.ThemeColorName { return look.Quiet }
		}
		columns = append(columns, column)
	}
	return columns
}

// at gives the kind of bag at a place, an empty one where there is none.
func (g *bagsTab) at(row int) *trip.BagType {
	if list := g.bench.Trip().Bags; row >= 0 && row < len(list) {
		return &list[row]
	}
	return &trip.BagType{}
}

var errBagGone = prose.Errorf("this kind of bag is gone")

func (g *bagsTab) store(t *trip.Trip, row, field int, text string) error {
	if row < 0 || row >= len(t.Bags) {
		return errBagGone
	}
	if g.fields[field].set == nil {
		return nil
	}
	if err := g.fields[field].set(&t.Bags[row], strings.TrimSpace(text)); err != nil {
		return prose.Errorf("%s: %s", g.fields[field].title, err)
	}
	return nil
}

// paste stores many cells as one step of undo.
func (g *bagsTab) paste(cells []grid.Pasted[int]) error {
	return g.bench.Edit(lang.L("paste into the kinds of bag"), func(t *trip.Trip) error {
		for _, cell := range cells {
			if err := g.store(t, cell.Row, cell.Column, cell.Text); err != nil {
				return err
			}
		}
		return nil
	})
}

func hasBag(t *trip.Trip, name string) bool {
	return slices.ContainsFunc(t.Bags, func(b trip.BagType) bool { return strings.EqualFold(b.Name, name) })
}

// add begins a kind of bag with the figures of the usual bag of a litre or a
// quart.
func (g *bagsTab) add() (string, error) {
	place := len(g.bench.Trip().Bags)
	err := g.bench.Edit(lang.L("add a kind of bag"), func(t *trip.Trip) error {
		usual := trip.UsualBags(g.bench.Units())
		made := usual[slices.IndexFunc(usual, func(b trip.BagType) bool { return !b.Liquids && b.Nominal > 900*units.Millilitre })]
		made.Name = lang.L("New bag")
		for n := 2; hasBag(t, made.Name); n++ {
			made.Name = fmt.Sprintf("%s %d", lang.L("New bag"), n)
		}
		t.Bags = append(t.Bags, made)
		return nil
	})
	g.refresh()
	return strconv.Itoa(place), err
}

func (g *bagsTab) remove(row int) error {
	if len(g.bench.Trip().Bags) == 1 {
		return errors.New(lang.L("One kind of bag must stay: food has to be packed in something."))
	}
	err := g.bench.Edit(lang.X("remove-bag-kind", "remove {{.Name}}", map[string]any{"Name": g.at(row).Name}), func(t *trip.Trip) error {
		if row < 0 || row >= len(t.Bags) {
			return errBagGone
		}
		t.Bags = slices.Delete(t.Bags, row, row+1)
		return nil
	})
	g.refresh()
	return err
}

// addUsual adds the usual kinds whose names the trip does not have.
func (g *bagsTab) addUsual() {
	if !g.table.Commit() {
		return
	}
	missing := slices.DeleteFunc(trip.UsualBags(g.bench.Units()), func(b trip.BagType) bool { return hasBag(g.bench.Trip(), b.Name) })
	if len(missing) == 0 {
		g.bench.Say(lang.L("All the usual kinds of bag are there."))
		return
	}
	_ = g.bench.Edit(lang.L("add the usual kinds of bag"), func(t *trip.Trip) error { t.Bags = append(t.Bags, missing...); return nil })
	g.refresh()
}

func (g *bagsTab) refresh() {
	rows := make([]int, len(g.bench.Trip().Bags))
	for i := range rows {
		rows[i] = i
	}
	g.table.SetRows(rows)
}
