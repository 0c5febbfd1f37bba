package prints

import (
	"context"
	"regexp"
	"slices"
	"strings"
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// changing is the plan of a trip on which one goes home and another comes. By
// hand who goes has a bag of a later day, and then who comes.
func changing(t *testing.T) *plan.Plan {
	t.Helper()
	on := triptest.Large(6, 5, 3)
	on.Settings.FillOpenSlots = true
	on.Crew[1].LastDay, on.Crew[4].FirstDay = 2, 3
	for i, name := range []string{"Ada", "Bela", "Cyril", "Dagny", "Ewa", "Finn"} {
		on.Crew[i].Name = name // each in one font, so in one piece
	}
	p, err := plan.Make(context.Background(), on, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	at := slices.IndexFunc(p.Bags.Bags, func(b bags.Bag) bool {
		return b.Member == 0 && b.Day > 3 && b.Leg == 0 && carry.BagObstacle(p.Trip, &b, &p.Trip.Crew[1], 1).Kind == "" &&
			carry.BagObstacle(p.Trip, &b, &p.Trip.Crew[4], 3).Kind == ""
	})
	if at < 0 {
		t.Fatal("there is no bag of a later day")
	}
	for _, place := range []int{1, 4} {
		on.Pins = append(on.Pins, trip.Pin{Bag: p.Bags.Bags[at].Key, Member: on.Crew[place].ID})
	}
	if p, err = plan.Make(context.Background(), on, plan.Options{}); err != nil {
		t.Fatal(err)
	}
	return p
}

// Giver and taker both read on their card what changes hands, and when.
func TestCardsTellEveryPlannedHandOver(t *testing.T) {
	p := changing(t)
	cards := map[trip.MemberID]string{}
	name := map[trip.MemberID]string{}
	for _, m := range p.Trip.Crew {
		name[m.ID] = m.Name
		text := spaced(texts(drawn(t, p, Cards, Options{Members: []trip.MemberID{m.ID}})))
		_, text, _ = strings.Cut(text, "What I carry")
		cards[m.ID], _, _ = strings.Cut(text, "Who has what")
	}
	told, left, missed := 0, 0, 0
	line := func(card, begins, code string) bool {
		return regexp.MustCompile(regexp.QuoteMeta(begins) + `[^:]*\b` + regexp.QuoteMeta(code)).MatchString(card)
	}
	for i := range p.Carry.Stages {
		for _, item := range p.Carry.Stages[i].HandedOver() {
			bag := bagOf(p, item)
			if bag == "" {
				continue
			}
			told++
			if item.From == p.Trip.Crew[1].ID {
				left++
			}
			gives, gets := "I give "+name[item.Carrier]+":", "I get from "+name[item.From]+":"
			if item.From == p.Trip.Crew[1].ID && item.Carrier == p.Trip.Crew[4].ID { // they do not meet
				gives, missed = "I leave for "+name[item.Carrier]+", who comes when I am gone, with somebody who stays:", missed+1
				gets = name[item.From] + " left this for me with somebody who stays, I ask who has it:"
			}
			if !line(cards[item.From], gives, bag) {
				t.Errorf("%s is not told to give %s to %s", name[item.From], bag, name[item.Carrier])
			}
			if !line(cards[item.Carrier], gets, bag) {
				t.Errorf("%s is not told to get %s from %s", name[item.Carrier], bag, name[item.From])
			}
		}
	}
	if told == 0 || left == 0 || missed == 0 {
		t.Fatalf("%d hand-overs, %d of who leaves, %d to who comes later: nothing was tested", told, left, missed)
	}
	if leaver := cards[p.Trip.Crew[1].ID]; !strings.Contains(leaver, "Before I leave, after day 2") {
		t.Errorf("who leaves is not told when to hand over: %s", leaver)
	}
}

func bagOf(p *plan.Plan, item carry.Item) string {
	for i := range p.Bags.Bags {
		if b := &p.Bags.Bags[i]; item.Kind == carry.BagItem && b.Key == item.Key {
			return b.Code
		}
	}
	return ""
}
