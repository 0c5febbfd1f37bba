package wayaudit_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/findings"
	"sumpter/domain/onward"
	"sumpter/domain/plan"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
	"sumpter/domain/wayaudit"
)

const from = 3

// rest gives a rest in which the check finds nothing.
func rest(t *testing.T, p *plan.Plan) wayaudit.Work {
	t.Helper()
	done := trip.Progress{CrewChanges: []trip.CrewChange{{Member: p.Trip.Crew[2].ID, Day: 4}}}
	r, err := onward.Make(context.Background(), p, &done, from)
	if err != nil {
		t.Fatal(err)
	}
	w := wayaudit.Work{Planned: p, Done: &done, From: from, Now: r.Plan, Servings: r.Servings, Findings: r.Findings}
	if faults := wayaudit.Check(w); len(faults) > 0 {
		t.Fatalf("the rest is not sound to begin with: %s %s", faults[0].What, faults[0].Why)
	}
	return w
}

func planned(t *testing.T) *plan.Plan {
	t.Helper()
	p, err := plan.Make(context.Background(), triptest.Large(6, 9, 4), plan.Options{})
	if err != nil || p.Refused() {
		t.Fatal(err, p.Refused())
	}
	return p
}

// Each row breaks one rule; the check must name that very rule.
func TestEveryBreachIsFound(t *testing.T) {
	bagItem := func(w *wayaudit.Work) (*carry.Stage, int) {
		stage := &w.Now.Carry.Stages[slices.IndexFunc(w.Now.Carry.Stages, func(s carry.Stage) bool { return s.LastDay >= from })]
		return stage, slices.IndexFunc(stage.Items, func(i carry.Item) bool {
			at := slices.IndexFunc(w.Planned.Bags.Bags, func(b bags.Bag) bool { return b.Key == i.Key })
			return i.Kind == carry.BagItem && at >= 0 && w.Planned.Bags.Bags[at].LastDay >= from && w.Planned.Bags.Bags[at].Member == 0
		})
	}
	forbid := func(w *wayaudit.Work, id trip.MemberID) {
		w.Planned.Trip.Member(id).Allergies = []trip.Allergy{{Allergen: "moonlight", Severe: true}}
		w.Planned.Portions.Batches, w.Findings = nil, nil
	}
	for _, c := range []struct {
		rule  string
		spoil func(w *wayaudit.Work)
	}{
		{"only who is there eats", func(w *wayaudit.Work) { w.Servings[0].Day = 1 }},
		{"only who is there eats", func(w *wayaudit.Work) {
			w.Done.CrewChanges = append(w.Done.CrewChanges, trip.CrewChange{Member: w.Servings[0].Member, Day: from})
		}},
		{"nobody is served what their allergy or diet forbids", func(w *wayaudit.Work) { forbid(w, w.Servings[0].Member) }},
		{"nobody is served less than nothing", func(w *wayaudit.Work) { w.Servings[0].Mass = -1 }},
		{"a pot is safe for all who eat from it", func(w *wayaudit.Work) {
			i := slices.IndexFunc(w.Servings, func(s trail.Serving) bool { return s.Place == trip.InPot })
			forbid(w, w.Servings[i].Member)
		}},
		{"nobody eats what is not in the bags", func(w *wayaudit.Work) { w.Servings[0].Mass += units.Gram }},
		{"nobody eats what is not in the bags", func(w *wayaudit.Work) {
			w.Done.Ends = []trip.BagEnd{{Bag: w.Servings[0].Bag, End: trip.NotPacked, Day: 1}}
		}},
		{"nobody eats what is not in the bags", func(w *wayaudit.Work) {
			w.Done.PartsGone = []trip.PartGone{{Bag: w.Servings[0].Bag, End: trip.Lost, Day: 1, Mass: 20 * units.Gram}}
		}},
		{"nobody eats what is not in the bags", func(w *wayaudit.Work) {
			w.Done.Packed = []trip.PackedBag{{Bag: w.Servings[0].Bag, Weighed: []trip.Weighing{{Food: w.Servings[0].Food, Mass: units.Gram}}}}
		}},
		{"only from bags that were packed is eaten", func(w *wayaudit.Work) { w.Servings[0].Bag = "dream" }},
		{"food past its safe time is never without a finding", func(w *wayaudit.Work) {
			w.Servings[0].Day = 9
			for i := range w.Planned.Spoilage.Fates {
				w.Planned.Spoilage.Fates[i].LatestDay = 3
			}
		}},
		{"a carrier is there", func(w *wayaudit.Work) { s, i := bagItem(w); s.Items[i].Carrier = 9999 }},
		{"each bag is in one pack", func(w *wayaudit.Work) { s, i := bagItem(w); s.Items = append(s.Items, s.Items[i]) }},
		{"each bag is in one pack", func(w *wayaudit.Work) { s, i := bagItem(w); s.Items = slices.Delete(s.Items, i, i+1) }},
		{"each bag is there once", func(w *wayaudit.Work) { w.Now.Bags.Bags = append(w.Now.Bags.Bags, w.Now.Bags.Bags[0]) }},
		{"what is not there is not carried", func(w *wayaudit.Work) {
			s, i := bagItem(w)
			w.Done.Ends = []trip.BagEnd{{Bag: s.Items[i].Key, End: trip.NotPacked, Day: 1}}
		}},
		{"nobody carries what they are allergic to", func(w *wayaudit.Work) {
			s, i := bagItem(w)
			w.Servings = nil
			forbid(w, s.Items[i].Carrier)
		}},
		{"a load is the sum of its items", func(w *wayaudit.Work) { w.Now.Carry.Members[0].Days[from].Food += units.Gram }},
		{"a load is the sum of its items", func(w *wayaudit.Work) { w.Now.Carry.Members[0].Days[from].Load -= units.Gram }},
		{"the water of a dry camp is carried there", func(w *wayaudit.Work) { w.Now.Carry.Members[0].Days[from].ToCook += units.Gram }},
		{"a load is the sum of its items", func(w *wayaudit.Work) {
			s, i := bagItem(w)
			w.Done.Ends = append(w.Done.Ends, trip.BagEnd{Bag: s.Items[i].Key, End: trip.Lost, Day: from - 1})
		}},
		{"who is there is reckoned with, and nobody else", func(w *wayaudit.Work) { w.Now.Carry.Members[1].Days[from].Present = false }},
		{"no load passes a hard limit in silence", func(w *wayaudit.Work) {
			w.Planned.Trip.Crew[0].PackRoom, w.Findings, w.Planned.Findings = 0, nil, nil
		}},
		{"the fuel there is is the fuel needed", func(w *wayaudit.Work) {
			w.Now.Cooking.Fuel, w.Findings, w.Planned.Findings = nil, nil, nil
		}},
	} {
		w := rest(t, planned(t))
		c.spoil(&w)
		faults := wayaudit.Check(w)
		if !slices.ContainsFunc(faults, func(f findings.Finding) bool { return strings.Contains(f.Why.String(), c.rule) }) {
			t.Errorf("the breach of %q is not found; found %d others", c.rule, len(faults))
		}
	}
}
