package packing

import (
	"cmp"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/bags"
	"sumpter/domain/trip"
)

// stow is a pack or a box, with the bags that belong in it, in the order of
// their codes.
type stow struct {
	box  trip.PointID
	pack trip.MemberID
	bags []*bags.Bag
	in   int // of them, so many lie in it
}

// findStows makes the boxes, in the order of the way, then the packs of the
// crew, then what nobody carries.
func (w *work) findStows() {
	at := map[[2]int64]int{}
	place := func(box trip.PointID, pack trip.MemberID) *stow {
		key := [2]int64{int64(box), int64(pack)}
		i, known := at[key]
		if !known {
			i = len(w.stows)
			at[key] = i
			w.stows = append(w.stows, stow{box: box, pack: pack})
		}
		return &w.stows[i]
	}
	for i := range w.plan.Resupply.Boxes {
		place(w.plan.Resupply.Boxes[i].Point, 0)
	}
	for i := range w.trip.Crew {
		place(0, w.trip.Crew[i].ID)
	}
	for i := range w.plan.Bags.Bags {
		bag := &w.plan.Bags.Bags[i]
		if _, packed := w.round[bag.Key]; !packed {
			continue // bought on the way
		}
		s := place(w.stowOf(bag))
		s.bags = append(s.bags, bag)
		if w.stowed(bag) {
			s.in++
		}
	}
	w.stows = slices.DeleteFunc(w.stows, func(s stow) bool { return len(s.bags) == 0 })
	for i := range w.stows {
		slices.SortStableFunc(w.stows[i].bags, func(a, b *bags.Bag) int { return cmp.Compare(a.Code, b.Code) })
	}
}

// stowOf says into which box or pack a bag belongs; neither: nobody carries it.
func (w *work) stowOf(bag *bags.Bag) (trip.PointID, trip.MemberID) {
	if box := w.box[bag.Key]; box != nil {
		return box.Point, 0
	}
	return 0, w.carrier[bag.Key]
}

// lies says where a bag was checked into; neither: it was not checked.
func (w *work) lies(bag *bags.Bag) (trip.PointID, trip.MemberID) {
	if noted := w.packed[bag.Key]; noted != nil {
		return noted.InBox, noted.InPack
	}
	return 0, 0
}

// stowed tells whether a bag lies where it belongs.
func (w *work) stowed(bag *bags.Bag) bool {
	box, pack := w.stowOf(bag)
	inBox, inPack := w.lies(bag)
	return box == inBox && pack == inPack && (box != 0 || pack != 0)
}

// stowWords names a box or a pack.
func (w *work) stowWords(box trip.PointID, pack trip.MemberID) string {
	for i := range w.plan.Resupply.Boxes {
		if b := &w.plan.Resupply.Boxes[i]; box != 0 && b.Point == box {
			return boxWords(w.trip, b)
		}
	}
	if point := w.trip.Point(box); point != nil {
		return lang.X("packing-box", "Box for {{.Place}}", data{"Place": point.Name})
	}
	return packWords(w.trip, pack)
}

// stowRows lists boxes and packs with their bags.
func (w *work) stowRows(onlyLeft bool) []row {
	var list []row
	for i := range w.stows {
		s := &w.stows[i]
		if onlyLeft && s.in == len(s.bags) {
			continue
		}
		list = append(list, row{kind: stowRow, stow: i})
		for _, bag := range s.bags {
			if !onlyLeft || !w.stowed(bag) {
				list = append(list, row{kind: stowedRow, stow: i, bag: bag, round: w.round[bag.Key]})
			}
		}
	}
	return list
}

// checked counts the bags that lie where they belong, of all.
func (w *work) checked() (in, all int) {
	for i := range w.stows {
		in += w.stows[i].in
		all += len(w.stows[i].bags)
	}
	return in, all
}

func (w *work) drawStow(r row) rowLook {
	s := &w.stows[r.stow]
	left := lang.X("check-left", "bags still to check in: {{.Left}} of {{.Count}}", data{"Left": len(s.bags) - s.in, "Count": len(s.bags)})
	if s.in == len(s.bags) {
		left = lang.X("check-all", "every bag is in it: {{.Count}}", data{"Count": s.in})
	}
	name, date := w.stowWords(s.box, s.pack), ""
	for i := range w.plan.Resupply.Boxes {
		if box := &w.plan.Resupply.Boxes[i]; s.box != 0 && box.Point == s.box && box.Posted && box.PostBy.IsSet() {
			name, date = boxName(w.trip, box), lang.X("packing-post-by", "post by {{.Date}}", data{"Date": bench.DateWords(box.PostBy)})
		}
	}
	return rowLook{kind: r.kind, main: name, note: joinWords(date, left)}
}

func (w *work) drawStowed(r row) rowLook {
	bag := r.bag
	l := rowLook{
		kind: r.kind, code: bag.Code, main: w.dishName(bag), tickable: true, ticked: w.stowed(bag),
		note: joinWords(w.eaterWords(bag), partWords(bag), w.slotWords(bag)), figure: w.mass(bag.Mass()),
	}
	if !w.isDone(bag) {
		l.aside = lang.L("not packed yet")
	} else if more := w.difference(bag); more != 0 {
		l.aside = lang.X("packing-differs", "{{.Difference}} on the scale", data{"Difference": w.signed(more)})
	}
	if box, pack := w.lies(bag); !l.ticked && (box != 0 || pack != 0) {
		l.note, l.noteTone = lang.X("check-elsewhere", "It lies elsewhere: {{.Place}}", data{"Place": w.stowWords(box, pack)}), look.Ochre
	}
	return l
}

// tickStowed checks a bag into where it belongs, or takes it out again.
func (s *Screen) tickStowed(bag *bags.Bag) error {
	box, pack := s.work.stowOf(bag)
	words := data{"Code": bag.Code, "Place": s.work.stowWords(box, pack)}
	if s.work.stowed(bag) {
		return s.bench.Edit(lang.X("uncheck-bag", "take bag {{.Code}} out again: {{.Place}}", words), func(t *trip.Trip) error {
			record := noted(t, bag.Key)
			record.InBox, record.InPack = 0, 0
			tidy(t)
			return nil
		})
	}
	return s.bench.Edit(lang.X("check-bag", "check in bag {{.Code}}: {{.Place}}", words), func(t *trip.Trip) error {
		record := noted(t, bag.Key)
		record.InBox, record.InPack = box, pack
		tidy(t)
		return nil
	})
}

// scan takes a whole code that was typed or called out while a pack or box is
// being filled: it checks the bag in, or says where else it belongs.
func (s *Screen) scan(bag *bags.Bag) {
	at, ok := s.list.selected()
	if !ok || at.kind != stowedRow {
		return
	}
	target := &s.work.stows[at.stow]
	box, pack := s.work.stowOf(bag)
	place := s.work.stowWords(target.box, target.pack)
	switch {
	case box != target.box || pack != target.pack:
		s.judge(look.Brick, lang.X("check-wrong", "{{.Code}} is wrong here. It belongs elsewhere: {{.Place}}", data{"Code": bag.Code, "Place": s.work.stowWords(box, pack)}))
		return
	case s.work.stowed(bag):
		s.judge(look.Ochre, lang.X("check-again", "{{.Code}} was checked in already: are there two?", data{"Code": bag.Code}))
		return
	}
	if s.tickStowed(bag) != nil {
		return
	}
	s.list.selectKey(row{kind: stowedRow, bag: bag}.key())
	if !s.work.isDone(bag) {
		s.judge(look.Ochre, lang.X("check-not-packed", "{{.Code}} is in, but was never ticked off as packed: look into it. {{.Place}}", data{"Code": bag.Code, "Place": place}))
		return
	}
	for i := range s.work.stows {
		if now := &s.work.stows[i]; now.box == box && now.pack == pack {
			if now.in == len(now.bags) {
				s.judge(look.Spruce, lang.X("check-complete", "{{.Code}} is in, and with it every bag that belongs there: {{.Place}}", data{"Code": bag.Code, "Place": place}))
				return
			}
			s.judge(look.Spruce, lang.X("check-in", "{{.Code}} is in, {{.Left}} to go: {{.Place}}", data{"Code": bag.Code, "Left": len(now.bags) - now.in, "Place": place}))
		}
	}
}

// judge says aloud, so to speak, what came of a code.
func (s *Screen) judge(tone fyne.ThemeColorName, text string) {
	s.verdict.SetTone(tone)
	s.verdict.SetContent(text)
	s.verdict.Show()
	s.bench.Say("")
}

// goToOpen puts the cursor on the first bag that is not checked in.
func (s *Screen) goToOpen() {
	for i, r := range s.list.rows {
		if r.kind == stowedRow && !s.work.stowed(r.bag) {
			s.list.moveTo(i)
			return
		}
	}
}
