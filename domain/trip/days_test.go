package trip_test

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// fiveDays is a trip in which everything that can name a day names one.
func fiveDays() *trip.Trip {
	t := &trip.Trip{
		Crew: []trip.Member{
			{ID: 1, Name: "whole trip"}, {ID: 2, Name: "joins", FirstDay: 3}, {ID: 3, Name: "leaves", LastDay: 3},
			{ID: 4, Name: "by number", FirstDay: 1, LastDay: 5}, {ID: 5, Name: "guest", FirstDay: 2, LastDay: 2},
		},
		Points: []trip.ResupplyPoint{{ID: 1, AfterDay: 1}, {ID: 2, AfterDay: 3}},
		Pins:   []trip.Pin{{Bag: "d3 dinner g1 r1 b1 pot 1", Member: 1}, {Gear: 4, Member: 1}},
		Progress: trip.Progress{
			Packed:      []trip.PackedBag{{Bag: "d2 lunch g1 r1 b1 pot 1"}, {Bag: "d3 lunch g1 r1 b1 pot 1"}},
			CrewChanges: []trip.CrewChange{{Member: 1, Day: 3}, {Member: 2, Day: 5, There: true}},
			Replans: []trip.Replan{
				{Day: 3, Moves: []trip.DishMove{{Dish: "d4 dinner g1 r1 b1", Day: 3, Meal: trip.Dinner, Group: 1}, {Dish: "d2 dinner g1 r1 b1"}}, HandOvers: []trip.HandOver{{Bag: "d4 dinner g1 r1 b1 pot 1", To: 1}}},
				{Day: 5, HandOvers: []trip.HandOver{{Gear: 4, To: 2}}},
			},
			Ends: []trip.BagEnd{{Bag: "d2 snack g1 r1 b1 m1 bowl 1", End: trip.Eaten, Day: 3}, {Bag: "d4 snack g1 r1 b1 m1 bowl 1", End: trip.Lost, Day: 4}},
		},
	}
	for day := 1; day <= 5; day++ {
		t.Days = append(t.Days, trip.Day{Name: fmt.Sprint("day ", day)})
		t.Menu = append(t.Menu, trip.Cell{Day: day, Meal: trip.Dinner, Group: trip.GroupID(day)})
	}
	return t
}

// story writes what names a day, so that a test can be read.
func story(t *trip.Trip) string {
	var words []string
	say := func(format string, args ...any) { words = append(words, fmt.Sprintf(format, args...)) }
	for _, d := range t.Days {
		say("%s", strings.TrimPrefix(d.Name, "day "))
	}
	for _, m := range t.Crew {
		say("%d-%d", m.FirstDay, m.LastDay)
	}
	for _, p := range t.Points {
		say("after %d", p.AfterDay)
	}
	for _, c := range t.Menu {
		say("%d=%d", c.Day, c.Group)
	}
	for _, p := range t.Pins {
		say("pin %s", day(p.Bag))
	}
	for _, b := range t.Progress.Packed {
		say("packed %s", day(b.Bag))
	}
	for _, e := range t.Progress.Ends {
		say("end %s on %d", day(e.Bag), e.Day)
	}
	for _, c := range t.Progress.CrewChanges {
		say("member %d %v from %d", c.Member, c.There, c.Day)
	}
	for _, r := range t.Progress.Replans {
		for _, m := range r.Moves {
			say("dish %s to %d", day(m.Dish), m.Day)
		}
		for _, h := range r.HandOvers {
			say("over %s on %d", day(h.Bag), r.Day)
		}
	}
	return strings.Join(words, " ")
}

func day(key string) string { first, _, _ := strings.Cut(key, " "); return first }

func TestDaysChangeAndWhatNamesThemFollows(t *testing.T) {
	insert := func(at int) func(*trip.Trip) error {
		return func(t *trip.Trip) error { return t.InsertDay(at, trip.Day{Name: "new"}) }
	}
	remove := func(day int) func(*trip.Trip) error { return func(t *trip.Trip) error { return t.RemoveDay(day) } }
	move := func(from, to int) func(*trip.Trip) error {
		return func(t *trip.Trip) error { return t.MoveDay(from, to) }
	}
	for _, c := range []struct {
		name   string
		change func(*trip.Trip) error
		want   string
	}{
		{"before the first", insert(1), "new 1 2 3 4 5 0-0 4-0 0-4 1-6 3-3 after 2 after 4 2=1 3=2 4=3 5=4 6=5 pin d4 pin  packed d3 packed d4 end d3 on 4 end d5 on 5 member 1 false from 4 member 2 true from 6 dish d5 to 4 dish d3 to 0 over d5 on 4 over  on 6"},
		{"where a box waits the evening before", insert(4), "1 2 3 new 4 5 0-0 3-0 0-3 1-6 2-2 after 1 after 3 1=1 2=2 3=3 5=4 6=5 pin d3 pin  packed d2 packed d3 end d2 on 3 end d5 on 5 member 1 false from 3 member 2 true from 6 dish d5 to 3 dish d2 to 0 over d5 on 3 over  on 6"},
		{"where a member joins", insert(3), "1 2 new 3 4 5 0-0 4-0 0-4 1-6 2-2 after 1 after 4 1=1 2=2 4=3 5=4 6=5 pin d4 pin  packed d2 packed d4 end d2 on 4 end d5 on 5 member 1 false from 4 member 2 true from 6 dish d5 to 4 dish d2 to 0 over d5 on 4 over  on 6"},
		{"after the last", insert(6), "1 2 3 4 5 new 0-0 3-0 0-3 1-6 2-2 after 1 after 3 1=1 2=2 3=3 4=4 5=5 pin d3 pin  packed d2 packed d3 end d2 on 3 end d4 on 4 member 1 false from 3 member 2 true from 5 dish d4 to 3 dish d2 to 0 over d4 on 3 over  on 5"},
		{"the first gone", remove(1), "2 3 4 5 0-0 2-0 0-2 1-4 1-1 after 1 after 2 1=2 2=3 3=4 4=5 pin d2 pin  packed d1 packed d2 end d1 on 2 end d3 on 3 member 1 false from 2 member 2 true from 4 dish d3 to 2 dish d1 to 0 over d3 on 2 over  on 4"},
		{"the middle gone", remove(3), "1 2 4 5 0-0 3-0 0-2 1-4 2-2 after 1 after 2 1=1 2=2 3=4 4=5 pin  packed d2 end d2 on 2 end d3 on 3 member 1 false from 3 member 2 true from 4 dish d3 to 0 dish d2 to 0 over d3 on 3 over  on 4"},
		{"the last gone", remove(5), "1 2 3 4 0-0 3-0 0-3 1-4 2-2 after 1 after 3 1=1 2=2 3=3 4=4 pin d3 pin  packed d2 packed d3 end d2 on 3 end d4 on 4 member 1 false from 3 dish d4 to 3 dish d2 to 0 over d4 on 3 over  on 4"},
		{"later", move(2, 4), "1 3 4 2 5 0-0 3-0 0-3 1-5 2-2 after 1 after 2 1=1 4=2 2=3 3=4 5=5 pin d2 pin  packed d4 packed d2 end d4 on 2 end d3 on 3 member 1 false from 3 member 2 true from 5 dish d3 to 2 dish d4 to 0 over d3 on 3 over  on 5"},
		{"earlier", move(4, 1), "4 1 2 3 5 0-0 3-0 0-3 1-5 2-2 after 2 after 4 2=1 3=2 4=3 1=4 5=5 pin d4 pin  packed d3 packed d4 end d3 on 4 end d1 on 1 member 1 false from 3 member 2 true from 5 dish d1 to 4 dish d3 to 0 over d1 on 3 over  on 5"},
	} {
		made := fiveDays()
		if err := c.change(made); err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if have := story(made); have != c.want {
			t.Errorf("%s:\nhave %s\nwant %s", c.name, have, c.want)
		}
	}
}

func TestDaysThatCannotChange(t *testing.T) {
	for name, change := range map[string]func(*trip.Trip) error{
		"insert before 1":      func(t *trip.Trip) error { return t.InsertDay(0, trip.Day{}) },
		"insert far behind":    func(t *trip.Trip) error { return t.InsertDay(7, trip.Day{}) },
		"remove none":          func(t *trip.Trip) error { return t.RemoveDay(6) },
		"the guest's only day": func(t *trip.Trip) error { return t.RemoveDay(2) },
		"move from nowhere":    func(t *trip.Trip) error { return t.MoveDay(0, 1) },
		"move to nowhere":      func(t *trip.Trip) error { return t.MoveDay(1, 6) },
		"too many": func(t *trip.Trip) error {
			t.Days = make([]trip.Day, trip.MaxDays)
			err := t.InsertDay(1, trip.Day{})
			t.Days = fiveDays().Days
			return err
		},
	} {
		made := fiveDays()
		if change(made) == nil {
			t.Errorf("%s: no error", name)
		}
		if !reflect.DeepEqual(made, fiveDays()) {
			t.Errorf("%s: the trip was changed all the same", name)
		}
	}
	single := &trip.Trip{Days: make([]trip.Day, 1)}
	if single.RemoveDay(1) == nil {
		t.Error("the only day could be removed")
	}
}

// A day put in and taken out again leaves the trip as it was, and whatever is
// done to the days, the trip keeps its meaning.
func TestDaysComeAndGoWithoutTrace(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		before := triptest.Trip().Draw(rt, "trip")
		made := before.Clone()
		at := rapid.IntRange(1, len(made.Days)+1).Draw(rt, "at")
		if err := made.InsertDay(at, trip.NewDay()); err != nil {
			rt.Fatal(err)
		}
		if problems := trip.Validate(made); len(problems) > 0 {
			rt.Fatalf("with a day more: %v", problems)
		}
		if err := made.RemoveDay(at); err != nil {
			rt.Fatal(err)
		}
		if !trip.Equal(made, before) {
			rt.Fatalf("day %d put in and taken out:\nhave %+v\nwant %+v", at, made, before)
		}
		from, to := rapid.IntRange(1, len(made.Days)).Draw(rt, "from"), rapid.IntRange(1, len(made.Days)).Draw(rt, "to")
		if err := made.MoveDay(from, to); err != nil {
			rt.Fatal(err)
		}
		if problems := trip.Validate(made); len(problems) > 0 {
			rt.Fatalf("day %d moved to %d: %v", from, to, problems)
		}
		if err := made.MoveDay(to, from); err != nil {
			rt.Fatal(err)
		}
		if !trip.Equal(made, before) {
			rt.Fatalf("moved there and back: have %+v\nwant %+v", made, before)
		}
	})
}

// Removing any day keeps the order of the rest and every cell with its day.
func TestRemovedDaysLeaveTheRestInOrder(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip")
		for i := range made.Days {
			made.Days[i].Name = fmt.Sprint("day ", i+1)
		}
		before := made.Clone()
		gone := rapid.IntRange(1, len(made.Days)).Draw(rt, "gone")
		if err := made.RemoveDay(gone); err != nil {
			if !trip.Equal(made, before) {
				rt.Fatal("refused, yet changed")
			}
			return
		}
		if problems := trip.Validate(made); len(problems) > 0 {
			rt.Fatalf("without day %d: %v", gone, problems)
		}
		if want := slices.Delete(slices.Clone(before.Days), gone-1, gone); !reflect.DeepEqual(made.Days, want) {
			rt.Fatalf("have %v, want %v", made.Days, want)
		}
		for _, cell := range made.Menu {
			name := made.Days[cell.Day-1].Name
			var was int
			if _, err := fmt.Sscanf(name, "day %d", &was); err != nil {
				rt.Fatal(err)
			}
			if old := before.Cell(was, cell.Meal, cell.Group); old == nil || !reflect.DeepEqual(old.Dishes, cell.Dishes) {
				rt.Fatalf("the cell %+v is not that of %s", cell, name)
			}
		}
	})
}

// Packing night and shopping move along, over a year's end and a leap day.
func TestStartOnMovesWhatLiesBefore(t *testing.T) {
	date := func(text string) units.Date {
		d, err := units.ParseDate(text)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	tr := &trip.Trip{Start: date("2027-08-25")}
	tr.Settings.PackingNight = date("2027-08-20")
	tr.StartOn(date("2028-03-01"))
	if tr.Start != date("2028-03-01") || tr.Settings.PackingNight != date("2028-02-25") || tr.Settings.ShoppingDay.IsSet() {
		t.Errorf("%s, packed %s, shopping %s", tr.Start, tr.Settings.PackingNight, tr.Settings.ShoppingDay)
	}
	tr.StartOn(date("2027-01-03"))
	if tr.Settings.PackingNight != date("2026-12-29") {
		t.Errorf("packed %s", tr.Settings.PackingNight)
	}
	tr.Start = 0
	tr.StartOn(date("2027-06-01"))
	if tr.Start != date("2027-06-01") || tr.Settings.PackingNight != date("2026-12-29") {
		t.Errorf("a first start moves packing night to %s", tr.Settings.PackingNight)
	}
}
