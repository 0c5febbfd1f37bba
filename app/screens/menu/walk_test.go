package menu

import (
	"testing"

	"fyne.io/fyne/v2"
	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// TestAnyWalkThroughTheMenu does what a hurried leader may: keys, taps, drags,
// transfers and undo in any order. The trip stays one that can be planned,
// locked slots stay as they are, each step has a name, and undo brings back
// every trip there was.
func TestAnyWalkThroughTheMenu(t *testing.T) {
	s := openTrip(t, triptest.Large(4, 3, 8))
	rapid.Check(t, func(t *rapid.T) {
		w := &walk{shown: s, t: t}
		w.follow()
		for range rapid.IntRange(1, 8).Draw(t, "steps") {
			w.step()
		}
		for s.Document.UndoName() != "" {
			if err := s.Document.Undo(); err != nil {
				t.Fatal(err)
			}
		}
		if !trip.Equal(s.Document.Trip(), w.trips[0]) {
			t.Fatal("undoing everything does not bring back the first trip")
		}
	})
}

// walk is one way through the menu with the trips it saw.
type walk struct {
	*shown
	t     *rapid.T
	trips []*trip.Trip
}

func (w *walk) follow() { w.trips = append(w.trips, w.Document.Trip()) }

func (w *walk) slot(name string) slot {
	return slot{
		day:   rapid.IntRange(1, len(w.Document.Trip().Days)).Draw(w.t, name+" day"),
		meal:  rapid.SampledFrom(trip.Meals()).Draw(w.t, name+" meal"),
		group: rapid.SampledFrom(w.Document.Trip().Groups).Draw(w.t, name+" group").ID,
	}
}

func (w *walk) step() {
	before, name := w.Document.Trip(), w.Document.UndoName()
	locked := map[slot]trip.Cell{}
	for i := range before.Menu {
		if before.Menu[i].Locked {
			locked[slotOfCell(&before.Menu[i])] = before.Menu[i]
		}
	}
	k := w.slot("at")
	at, _ := w.board.placeOf(k)
	w.board.moveTo(at, false)
	action := rapid.SampledFrom([]string{"erase", "lock", "swap", "move", "copy", "cut and paste", "serve", "fill", "keep", "arrows", "undo"}).Draw(w.t, "action")
	unlocking := action == "lock" && w.seen.locked(k)
	w.do(action, k)
	after := w.Document.Trip()
	if problems := trip.Validate(after); len(problems) > 0 {
		w.t.Fatalf("%s: %v", action, problems[0])
	}
	if after != before && action != "undo" && w.Document.UndoName() == "" {
		w.t.Fatalf("%s has no name to take it back by", action)
	}
	if after == before && w.Document.UndoName() != name {
		w.t.Fatalf("%s changed nothing and can be taken back", action)
	}
	for k, was := range locked {
		now := after.Cell(k.day, k.meal, k.group)
		if action != "undo" && !unlocking && (now == nil || !now.Locked || !sameServed(now, &was)) {
			w.t.Fatalf("%s changed %v, which is locked", action, k)
		}
	}
	w.checkNoEmptyCells(after)
	w.follow()
}

func (w *walk) do(action string, k slot) {
	switch action {
	case "erase":
		w.key(fyne.KeyDelete)
	case "lock":
		w.key(fyne.KeySpace)
	case "swap", "move", "copy":
		_ = w.transfer(k, w.slot("to"), transfer(action))
	case "cut and paste":
		w.board.sheet.TypedShortcut(&fyne.ShortcutCut{})
		to, _ := w.board.placeOf(w.slot("to"))
		w.board.moveTo(to, false)
		w.board.sheet.TypedShortcut(&fyne.ShortcutPaste{})
	case "serve":
		ways := w.seen.arrangements(k)
		recipe := rapid.SampledFrom(w.Document.Trip().Recipes[:12]).Draw(w.t, "recipe")
		_ = w.serve(k, recipe.ID, rapid.SampledFrom(ways).Draw(w.t, "way"))
	case "fill":
		w.filler.start(rapid.Bool().Draw(w.t, "anew"))
	case "keep":
		_ = w.keep(k)
	case "arrows":
		w.key(fyne.KeyRight, fyne.KeyDown, fyne.KeyEnd, fyne.KeyPageUp)
	case "undo":
		_ = w.Document.Undo()
	}
}

// A cell that decides nothing is not kept, so that an open slot is one thing.
func (w *walk) checkNoEmptyCells(t *trip.Trip) {
	for i := range t.Menu {
		if c := &t.Menu[i]; len(c.Dishes) == 0 && !c.Locked {
			w.t.Fatalf("%v is kept without dishes", slotOfCell(c))
		}
	}
}

// TestProposalsReadAsDecisionsServeTheSame: what the plan proposes, taken as
// the leader's own, is served to the same people.
func TestProposalsReadAsDecisionsServeTheSame(t *testing.T) {
	for seed := range uint64(3) {
		on := triptest.Large(8, 3, seed)
		on.Menu, on.Settings.FillOpenSlots = on.Menu[:2], true
		s := openTrip(t, on)
		before, kept := s.seen, []slot{}
		for _, served := range before.plan.Menu.Slots {
			if k := slotOfMenu(&served); before.proposal(k) != nil {
				kept = append(kept, k)
			}
		}
		if len(kept) < 5 {
			t.Fatalf("only %d proposals", len(kept))
		}
		s.edit(func(t *trip.Trip) {
			for _, k := range kept {
				cellFor(t, k).Dishes = cloneDishes(before.dishes(k))
			}
		})
		for _, k := range kept {
			was, is := before.slots[k], s.seen.slots[k]
			if is.Proposed || len(is.Dishes) != len(was.Dishes) {
				t.Fatalf("%v: %d dishes, %d proposed", k, len(is.Dishes), len(was.Dishes))
			}
			for i := range is.Dishes {
				if got, want := membersOf(&is.Dishes[i]), membersOf(&was.Dishes[i]); is.Dishes[i].Recipe != was.Dishes[i].Recipe || len(got) != len(want) {
					t.Errorf("%v serves %d to %v, proposed was %d to %v", k, is.Dishes[i].Recipe, got, was.Dishes[i].Recipe, want)
				}
			}
		}
	}
}
