package prints

import (
	"context"
	"slices"
	"strings"
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/onward"
	"sumpter/domain/plan"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/exporter/print/printtest"
)

// underWay is a plan whose third member left on day 4, while a bag was lost and
// another given away.
func underWay(t *testing.T) (p *plan.Plan, lost, given *bags.Bag) {
	t.Helper()
	p = large(t, 6, 9)
	leaver := p.Trip.Crew[2].ID
	find := func(fits func(*bags.Bag) bool) *bags.Bag {
		i := slices.IndexFunc(p.Bags.Bags, func(b bags.Bag) bool { return fits(&b) })
		if i < 0 {
			t.Fatal("no such bag")
		}
		return &p.Bags.Bags[i]
	}
	lost = find(func(b *bags.Bag) bool { return b.Meal == trip.Dinner && b.Day > 4 && len(b.Uses) == 1 })
	given = find(func(b *bags.Bag) bool { return b.Member == leaver && b.LastDay > 5 && len(b.Uses) > 0 })
	p.Trip.Progress = trip.Progress{
		CrewChanges: []trip.CrewChange{{Member: leaver, Day: 4}},
		Ends:        []trip.BagEnd{{Bag: lost.Key, End: trip.Lost, Day: 3}},
		Replans:     []trip.Replan{{Day: 4, Given: []trip.GivenBag{{Bag: given.Key, To: p.Trip.Crew[0].ID}}}},
	}
	return p, lost, given
}

// The cards for the rest say who carries what from this morning on, as the rest
// is planned, who hands what to whom, and what is other than packed.
func TestCardsForTheRestOfTheWay(t *testing.T) {
	p, lost, given := underWay(t)
	rest, err := onward.Make(context.Background(), p, &p.Trip.Progress, 4)
	if err != nil {
		t.Fatal(err)
	}
	for i := range p.Trip.Crew {
		m := &p.Trip.Crew[i]
		made := drawn(t, p, RestCards, Options{Members: []trip.MemberID{m.ID}, Morning: 4})
		if i == 2 {
			if len(made.Pages) > 0 {
				t.Errorf("%s went home and has a card", m.Name)
			}
			continue
		}
		printtest.Clean(t, made.Pages)
		text := printtest.Words(t, written(t, made))
		var drawnTexts []string
		for at := range made.Pages {
			drawnTexts = append(drawnTexts, printtest.Texts(&made.Pages[at])...)
		}
		_, carried, _ := strings.Cut(strings.Join(drawnTexts, " "), "What I carry")
		carried, _, _ = strings.Cut(carried, "What we eat")
		for _, stage := range rest.Plan.Carry.Stages {
			for _, item := range stage.Items {
				at := slices.IndexFunc(p.Bags.Bags, func(b bags.Bag) bool { return b.Key == item.Key })
				if item.Kind != carry.BagItem || item.Key == lost.Key || stage.LastDay < 4 {
					continue
				}
				if code := p.Bags.Bags[at].Code; item.Carrier == m.ID && !strings.Contains(carried, code) {
					t.Errorf("%s carries %s from day %d, the card does not say so", m.Name, code, stage.FirstDay)
				}
			}
		}
		for _, want := range []string{"From the morning of day 4 on", "Other than packed", p.Trip.Crew[2].Name + " is not there from day 4 on."} {
			if !strings.Contains(text, want) {
				t.Errorf("the card of %s does not say %q", m.Name, want)
			}
		}
		if strings.Contains(carried, lost.Code) {
			t.Errorf("%s is to carry %s, which is lost", m.Name, lost.Code)
		}
		if same := m.Group == lost.Group; same != strings.Contains(text, "Bag "+lost.Code+": lost.") {
			t.Errorf("that %s is lost is told to %s: %v", lost.Code, m.Name, !same)
		}
		if !strings.Contains(text, "Bag "+given.Code+", packed for "+p.Trip.Crew[2].Name) {
			t.Errorf("%s is not told who has %s now", m.Name, given.Code)
		}
		gives := slices.ContainsFunc(rest.HandOvers, func(h trail.HandOver) bool { return h.From == m.ID })
		for _, stage := range rest.Plan.Carry.Stages {
			gives = gives || stage.FirstDay > 4 && slices.ContainsFunc(stage.HandedOver(), func(item carry.Item) bool { return item.From == m.ID })
		}
		if gives != strings.Contains(text, "I give") {
			t.Errorf("%s gives: %v, the card says otherwise", m.Name, gives)
		}
	}
}

// The booklet for the rest has the days that are ahead, in the pots there are.
func TestBookletForTheRestOfTheWay(t *testing.T) {
	p, lost, _ := underWay(t)
	made := drawn(t, p, RestBook, Options{Morning: 4})
	printtest.Clean(t, made.Pages)
	text := printtest.Words(t, written(t, made))
	if !strings.Contains(text, "as things stand on the morning of day 4") || strings.Contains(text, lost.Code) {
		t.Errorf("the booklet has %s or does not say of when it is", lost.Code)
	}
}

func TestThereIsNoRestBeforeTheTrip(t *testing.T) {
	p := large(t, 3, 3)
	for _, kind := range []Kind{RestCards, RestBook} {
		if made := drawn(t, p, kind, Options{}); len(made.Pages) > 0 || Has(p, kind) {
			t.Errorf("%s has %d pages before anything happened", kind, len(made.Pages))
		}
	}
}
