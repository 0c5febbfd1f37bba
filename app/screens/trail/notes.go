package trail

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// showPart says what is gone out of the bag, and takes how much more is.
func (p *sidePanel) showPart(bag trail.Bag) {
	s := p.screen
	u := s.bench.Units()
	for _, part := range s.bench.Trip().Progress.PartsGone {
		if part.Bag == bag.Key {
			back := widget.NewButton(lang.L("Still there"), func() { s.setPart(bag, trip.PartGone{Bag: bag.Key, Day: part.Day}) })
			p.chosen.Add(container.NewBorder(nil, nil, nil, back, paragraph(lang.X("part-gone", "{{.Mass}} {{.End}} on day {{.Day}}", map[string]any{
				"Mass": written.Quantity(part.Mass, u), "End": lang.L(string(part.End)), "Day": part.Day}))))
		}
	}
	if bag.End != "" {
		return
	}
	p.part = widget.NewEntry()
	p.part.SetPlaceHolder(lang.X("part-how-much", "Part of it gone: how many {{.Unit}}?", map[string]any{"Unit": typed.MassUnit(u, false)}))
	gone := func(end trip.End) func() { return func() { s.partGone(bag, p.part.Text, end) } }
	p.part.OnSubmitted = func(string) { gone(trip.ThrownAway)() }
	p.chosen.Add(container.NewBorder(nil, nil, nil, container.NewHBox(
		widget.NewButton(lang.L("Thrown away"), gone(trip.ThrownAway)), widget.NewButton(lang.L("Lost"), gone(trip.Lost))), p.part))
}

// partGone notes that so much of a bag is gone.
func (s *Screen) partGone(bag trail.Bag, text string, end trip.End) {
	mass, err := typed.Mass(text, s.bench.Units(), false)
	switch {
	case err != nil:
		s.bench.Say(written.Error(err))
		return
	case mass <= 0 || mass >= bag.Left(s.number):
		s.bench.Say(lang.X("part-too-much", "The bag holds {{.Mass}}: enter less, or mark all of it.", map[string]any{"Mass": written.Quantity(bag.Left(s.number), s.bench.Units())}))
		return
	}
	s.setPart(bag, trip.PartGone{Bag: bag.Key, Day: s.number, End: end, Mass: mass})
}

// setPart notes a part of a bag that is gone on a day; nothing takes it back.
func (s *Screen) setPart(bag trail.Bag, part trip.PartGone) {
	name := lang.X("note-part", "note that part of bag {{.Bag}} is gone", map[string]any{"Bag": bag.Code})
	if part.Mass == 0 {
		name = lang.X("unmark-bag", "note that bag {{.Bag}} is still there", map[string]any{"Bag": bag.Code})
	}
	_ = s.bench.Edit(name, func(t *trip.Trip) error {
		p := &t.Progress
		for _, had := range p.PartsGone {
			if had.Bag == part.Bag && had.Day == part.Day && part.Mass > 0 {
				part.Mass += had.Mass
			}
		}
		p.PartsGone = slices.DeleteFunc(p.PartsGone, func(g trip.PartGone) bool { return g.Bag == part.Bag && g.Day == part.Day })
		if part.Mass > 0 {
			p.PartsGone = append(p.PartsGone, part)
		}
		if len(p.PartsGone) == 0 {
			p.PartsGone = nil
		}
		return nil
	})
}

// tickAll notes that bags are filled and there.
func (s *Screen) tickAll(keys []string) {
	_ = s.bench.Edit(lang.L("note that all bags are here"), func(t *trip.Trip) error {
		for _, key := range keys {
			if bag := t.Progress.PackedBag(key); bag != nil {
				bag.Done = true
			} else {
				t.Progress.Packed = append(t.Progress.Packed, trip.PackedBag{Bag: key, Done: true})
			}
		}
		return nil
	})
}

// nonePacked notes that bags were left at home.
func (s *Screen) nonePacked(keys []string) {
	_ = s.bench.Edit(lang.L("note that bags were not packed"), func(t *trip.Trip) error {
		for _, key := range keys {
			setEnd(t, key, trip.NotPacked, 1, false)
		}
		return nil
	})
}

// showContainers lists what each container of fuel holds this morning, and
// takes what somebody found in it.
func (p *sidePanel) showContainers(fuel trail.Fuel) {
	s := p.screen
	u := s.bench.Units()
	for _, held := range fuel.Held {
		entry := widget.NewEntry()
		entry.SetPlaceHolder(lang.X("fuel-found", "found, {{.Unit}}", map[string]any{"Unit": typed.MassUnit(u, false)}))
		entry.OnSubmitted = func(text string) {
			left, err := typed.Mass(text, u, false)
			if err != nil || left < 0 {
				s.bench.Say(lang.L("Enter how much fuel is left in it."))
				return
			}
			s.setFuel(held.Key, held.Name, left)
		}
		empty := widget.NewButton(lang.L("Empty or lost"), func() { s.setFuel(held.Key, held.Name, 0) })
		p.all.Add(line(lang.X("container-left", "{{.Name}}: {{.Left}}", map[string]any{"Name": held.Name, "Left": written.Quantity(held.Left, u)}), look.Body))
		p.all.Add(container.NewBorder(nil, nil, nil, empty, entry))
	}
}

// setFuel notes what a container holds on the morning shown.
func (s *Screen) setFuel(key, called string, left units.Mass) {
	day := s.number
	name := lang.X("note-fuel", "note the fuel left in {{.Name}}", map[string]any{"Name": called})
	_ = s.bench.Edit(name, func(t *trip.Trip) error {
		p := &t.Progress
		p.FuelNotes = slices.DeleteFunc(p.FuelNotes, func(f trip.FuelNote) bool { return f.Container == key && f.Day == day })
		p.FuelNotes = append(p.FuelNotes, trip.FuelNote{Container: key, Day: day, Left: left})
		return nil
	})
}

// packedAfterAll takes back that a bag was left at home.
func (s *Screen) packedAfterAll(key string) {
	name := lang.X("unmark-bag", "note that bag {{.Bag}} is still there", map[string]any{"Bag": strings.Join(s.codes([]string{key}), "")})
	_ = s.bench.Edit(name, func(t *trip.Trip) error {
		setEnd(t, key, trip.NotPacked, 1, true)
		return nil
	})
}
