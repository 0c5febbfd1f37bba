package loads

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// gearTab is the shared gear and the sizes in which fuel is carried.
type gearTab struct {
	bench   *bench.Bench
	table   *grid.Grid[trip.GearID]
	fuels   *grid.Grid[int] // by place in the list
	hint    *look.Paragraph // while there is no gear
	none    *fyne.Container // while a cook group lacks a stove or a pot
	content fyne.CanvasObject
}

func newGearTab(b *bench.Bench) *gearTab {
	g := &gearTab{bench: b}
	g.table = grid.New(g.columns(), grid.Options[trip.GearID]{
		Key: gearKey, OnAdd: g.addGear, OnDelete: g.removeGear, OnPaste: g.pasteGear,
		Together: b.Together, OnProblem: b.Say, Sticky: 1, Clipboard: b.Clipboard,
	})
	g.fuels = grid.New(g.fuelColumns(), grid.Options[int]{
		Key: fuelKey, OnAdd: g.addContainer, OnDelete: g.removeContainer, OnPaste: g.pasteFuel,
		Together: b.Together, OnProblem: b.Say, Clipboard: b.Clipboard,
	})
	kitchen := widget.NewButton(lang.L("Give each cook group a stove and a pot"), g.addKitchens)
	kitchen.Importance = widget.HighImportance
	g.hint = look.NewParagraph(lang.L("Shared gear comes here: stoves, pots, shelters, what keeps food from animals. Without a stove and a pot there is no time and no fuel for hot meals."), look.Body, look.Ink)
	g.none = container.NewVBox(g.hint, container.NewHBox(kitchen))
	add := widget.NewButton(lang.L("Add gear"), g.table.Add)
	add.Importance = widget.HighImportance
	top := container.NewBorder(container.NewVBox(container.NewBorder(nil, nil, look.NewHeading(lang.L("Shared gear, carried by someone")),
		container.NewHBox(widget.NewButton(lang.L("Remove"), g.table.Delete), add)), g.none), nil, nil, nil, g.table)
	bottom := container.NewBorder(container.NewBorder(nil, nil, look.NewHeading(lang.L("Sizes in which fuel is sold or carried")),
		container.NewHBox(widget.NewButton(lang.L("Remove"), g.fuels.Delete), widget.NewButton(lang.L("Add a size"), g.fuels.Add))), nil, nil, nil, g.fuels)
	split := container.NewVSplit(top, bottom)
	split.Offset = 0.64
	g.content = split
	return g
}

func gearKey(id trip.GearID) string { return bench.IDText(int64(id)) }

func (g *gearTab) refresh() {
	t := g.bench.Trip()
	rows := make([]trip.GearID, len(t.Gear))
	for i := range t.Gear {
		rows[i] = t.Gear[i].ID
	}
	g.table.SetRows(rows)
	sizes := make([]int, len(t.Fuels))
	for i := range sizes {
		sizes[i] = i
	}
	g.fuels.SetRows(sizes)
	show(g.hint, len(rows) == 0)
	show(g.none, len(missingKitchens(t)) > 0)
}

func show(object fyne.CanvasObject, on bool) {
	if on {
		object.Show()
	} else {
		object.Hide()
	}
}

func (g *gearTab) commit() bool { return g.table.Commit() && g.fuels.Commit() }
func (g *gearTab) add()         { g.table.Add() }
func (g *gearTab) remove()      { g.table.Delete() }
func (g *gearTab) addFuel()     { g.fuels.Add() }
func (g *gearTab) removeFuel()  { g.fuels.Delete() }

// freeGearName gives a name that no gear has yet.
func freeGearName(t *trip.Trip, base string) string {
	name := base
	for n := 2; slices.ContainsFunc(t.Gear, func(g trip.Gear) bool { return g.Name == name }); n++ {
		name = fmt.Sprintf("%s %d", base, n)
	}
	return name
}

func nextGear(t *trip.Trip) trip.GearID {
	return trip.NextID(t.Gear, func(g *trip.Gear) trip.GearID { return g.ID })
}

func (g *gearTab) addGear() (string, error) {
	id := nextGear(g.bench.Trip())
	err := g.bench.Edit(lang.L("add a piece of gear"), func(t *trip.Trip) error {
		t.Gear = append(t.Gear, trip.NewGear(id, freeGearName(t, lang.L("New gear")), trip.OtherGear, 0))
		return nil
	})
	g.refresh()
	return gearKey(id), err
}

// missingKitchens gives the stoves and pots that cook groups lack: they have none
// of their own, and none is everybody's.
func missingKitchens(t *trip.Trip) []trip.Gear {
	var list []trip.Gear
	for _, group := range t.Groups {
		for _, kind := range []trip.GearKind{trip.Stove, trip.Pot} {
			if !slices.ContainsFunc(t.Gear, func(x trip.Gear) bool { return x.Kind == kind && (x.Group == group.ID || x.Group == 0) }) {
				item := trip.NewGear(0, group.Name+" "+kindWord(kind), kind, group.ID)
				if kind == trip.Pot {
					item.HoldMealsFor(eatersOf(t, group.ID))
				}
				list = append(list, item)
			}
		}
	}
	return list
}

// eatersOf counts who eats from a group's pot.
func eatersOf(t *trip.Trip, group trip.GroupID) int {
	count := 0
	for i := range t.Crew {
		if t.Crew[i].Group == group {
			count++
		}
	}
	return count
}

// addKitchens gives each cook group the stove and pot it lacks.
func (g *gearTab) addKitchens() {
	_ = g.bench.Edit(lang.L("give each cook group a stove and a pot"), func(t *trip.Trip) error {
		for _, item := range missingKitchens(t) {
			item.ID, item.Name = nextGear(t), freeGearName(t, item.Name)
			t.Gear = append(t.Gear, item)
		}
		return nil
	})
	g.refresh()
}

// removeGear takes a piece of gear out of the trip, and its pins.
func (g *gearTab) removeGear(id trip.GearID) error {
	item := g.bench.Trip().GearItem(id)
	if item == nil {
		return errors.New(lang.L("The gear is gone."))
	}
	err := g.bench.Edit(lang.X("remove-gear", "remove {{.Name}}", data{"Name": item.Name}), func(t *trip.Trip) error {
		t.Gear = slices.DeleteFunc(t.Gear, func(x trip.Gear) bool { return x.ID == id })
		t.Pins = slices.DeleteFunc(t.Pins, func(p trip.Pin) bool { return p.Gear == id })
		return nil
	})
	g.refresh()
	return err
}

// change edits one piece of gear in a step of its own.
func (g *gearTab) change(id trip.GearID, what string, set func(t *trip.Trip, item *trip.Gear) error) error {
	name := ""
	if item := g.bench.Trip().GearItem(id); item != nil {
		name = item.Name
	}
	return g.bench.Edit(lang.X("edit-gear", "change {{.What}} of {{.Name}}", data{"What": what, "Name": name}), func(t *trip.Trip) error {
		item := t.GearItem(id)
		if item == nil {
			return errors.New(lang.L("The gear is gone."))
		}
		return set(t, item)
	})
}

func (g *gearTab) pasteGear(cells []grid.Pasted[trip.GearID]) error {
	fields := g.fields()
	// The kind stands left of what only some kinds have.
	slices.SortStableFunc(cells, func(a, b grid.Pasted[trip.GearID]) int { return cmp.Compare(a.Column, b.Column) })
	return g.bench.Edit(lang.L("paste into the gear"), func(t *trip.Trip) error {
		for _, cell := range cells {
			item := t.GearItem(cell.Row)
			if fields[cell.Column].set == nil {
				continue
			}
			if err := fields[cell.Column].set(t, item, cell.Text); err != nil {
				return prose.Errorf("%s, %s: %s", item.Name, fields[cell.Column].title, err)
			}
		}
		return nil
	})
}
