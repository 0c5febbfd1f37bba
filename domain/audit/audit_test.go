package audit_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"sumpter/domain/audit"
	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/plan"
	"sumpter/domain/shopping"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// sound gives a plan whose check finds nothing, as the check sees it.
func sound(t *testing.T) audit.Work {
	t.Helper()
	on := triptest.Large(6, 9, 4)
	on.Settings.FillOpenSlots = true
	p, err := plan.Make(context.Background(), on, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	w := audit.Work{
		Trip: p.Trip, Legs: p.Legs, Needs: p.Needs, Menu: p.Menu, Portions: p.Portions, Spoilage: p.Spoilage,
		Cooking: p.Cooking, Bags: p.Bags, Resupply: p.Resupply, Carry: p.Carry, Shopping: p.Shopping, Findings: p.Findings,
	}
	if faults := audit.Check(w); len(faults) > 0 {
		t.Fatalf("the plan is not sound to begin with: %s", faults[0].What)
	}
	if len(p.Legs) < 2 || len(p.Resupply.Boxes) == 0 || len(p.Cooking.Fuel) == 0 {
		t.Fatal("the trip has no box or no fuel to break")
	}
	return w
}

// silent takes every finding away that could excuse a breach.
func silent(w *audit.Work) { w.Findings = nil }

// Each row breaks one invariant; the check must name that very rule.
func TestEveryBreachIsFound(t *testing.T) {
	cases := []struct {
		rule  string
		spoil func(w *audit.Work)
	}{
		{"everybody carries their own drink to a dry camp", func(w *audit.Work) { w.Carry.Members[0].Days[0].Water += units.Gram }},
		{"the water of a dry camp is carried there", func(w *audit.Work) {
			w.Carry.Members[0].Days[0].Water += units.Gram
			w.Carry.Members[0].Days[0].ToCook += units.Gram
		}},
		{"the water of a dry camp is carried there", func(w *audit.Work) {
			day := slices.IndexFunc(w.Trip.Days, func(d trip.Day) bool { return !d.DryCamp })
			w.Trip.Days[day].DryCamp, w.Trip.Days[day].SnowWater = true, false
		}},
		{"no load passes a hard limit in silence", func(w *audit.Work) {
			load := w.Carry.Members[0].Days[0]
			w.Carry.Members[0].Days[0].Water = units.Kilogram
			w.Trip.Member(w.Carry.Members[0].Member).LoadLimit = optional.Of(load.Load)
		}},
		{"portions add up to the batch", func(w *audit.Work) { w.Portions.Batches[0].Totals[0].Mass += units.Gram }},
		{"portions add up to the batch", func(w *audit.Work) { w.Portions.Batches[0].Portions[0].Amounts[0].Mass += units.Milligram }},
		{"portions keep the bounds of the recipe", func(w *audit.Work) { w.Portions.Batches[0].Portions[0].Scale = 9 }},
		{"only who is there eats", func(w *audit.Work) { w.Trip.Crew[0].FirstDay, w.Trip.Crew[0].LastDay = 1, 1 }},
		{"portions hold what the recipe asks for", func(w *audit.Work) { w.Portions.Batches[0].Portions[0].Amounts[0].Food = 9999 }},
		{"nobody goes without a meal in silence", func(w *audit.Work) { w.Portions.Batches = w.Portions.Batches[1:]; silent(w) }},
		{"nobody is served what their allergy or diet forbids", func(w *audit.Work) {
			b := w.Portions.Batches[0]
			w.Trip.Member(b.Portions[0].Member).Allergies = []trip.Allergy{{Allergen: "moonlight"}}
		}},
		{"nobody is served what their allergy or diet forbids", func(w *audit.Work) {
			b := w.Portions.Batches[0]
			w.Trip.Member(b.Portions[0].Member).Diets = []trip.Diet{"only moonlight"}
		}},
		{"the day's intake is the sum of its portions", func(w *audit.Work) { w.Portions.Intakes[0].Days[0].Kcal += 5 }},
		{"bags hold what is cooked, to the gram", func(w *audit.Work) {
			w.Bags.Bags[0].Contents[0].Mass += units.Milligram
			w.Bags.Bags[0].Uses[0].Contents[0].Mass += units.Milligram
			w.Bags.Bags[0].Food += units.Milligram
		}},
		{"a bag is eaten up", func(w *audit.Work) { w.Bags.Bags[0].Uses[0].Contents[0].Mass += units.Milligram }},
		{"a bag tells its days", func(w *audit.Work) { w.Bags.Bags[0].LastDay++ }},
		{"shares add up to what is shared", func(w *audit.Work) {
			i := slices.IndexFunc(w.Bags.Bags, func(b bags.Bag) bool { return len(b.Uses[0].Shares) > 0 })
			w.Bags.Bags[i].Uses[0].Shares[0].Mass += units.Milligram
		}},
		{"a share is somebody's", func(w *audit.Work) {
			i := slices.IndexFunc(w.Bags.Bags, func(b bags.Bag) bool { return b.Member != 0 })
			w.Bags.Bags[i].Uses[0].Shares[0].Member++
		}},
		{"a bag weighs what it holds", func(w *audit.Work) { w.Bags.Bags[0].Food += units.Gram }},
		{"each bag has a name of its own", func(w *audit.Work) { w.Bags.Bags[1].Code = w.Bags.Bags[0].Code }},
		{"a bag travels with its leg", func(w *audit.Work) { w.Bags.Bags[0].Leg = 1 }},
		{"the label tells every allergen", func(w *audit.Work) {
			i := slices.IndexFunc(w.Bags.Bags, func(b bags.Bag) bool { return len(b.Allergens) > 0 })
			w.Bags.Bags[i].Allergens = w.Bags.Bags[i].Allergens[1:]
		}},
		{"a bag waits in one box or is carried from the start", func(w *audit.Work) {
			w.Resupply.Boxes[0].Bags = w.Resupply.Boxes[0].Bags[1:]
		}},
		{"a box weighs what it holds", func(w *audit.Work) { w.Resupply.Boxes[0].Mass += units.Gram }},
		{"a box is posted before it is picked up", func(w *audit.Work) {
			w.Resupply.Boxes[0].Posted = true
			w.Resupply.Boxes[0].PostBy = w.Resupply.Boxes[0].PickUp + 1
		}},
		{"each bag is in one pack", func(w *audit.Work) {
			items := &w.Carry.Stages[0].Items
			i := slices.IndexFunc(*items, func(i carry.Item) bool { return i.Kind == carry.BagItem })
			*items = slices.Delete(slices.Clone(*items), i, i+1)
		}},
		{"a carrier is there all the stage", func(w *audit.Work) { w.Carry.Stages[0].Items[0].Carrier = 9999 }},
		{"nobody carries what they are allergic to", func(w *audit.Work) {
			item := w.Carry.Stages[0].Items[slices.IndexFunc(w.Carry.Stages[0].Items, func(i carry.Item) bool { return i.Kind == carry.BagItem })]
			w.Trip.Member(item.Carrier).Allergies = []trip.Allergy{{Allergen: "moonlight", Severe: true}}
			silent(w)
		}},
		{"a load is the sum of its items", func(w *audit.Work) { w.Carry.Members[0].Days[0].Food += units.Gram }},
		{"a load is the sum of its items", func(w *audit.Work) { w.Carry.Members[0].Days[0].Load -= units.Gram }},
		{"a share is load by capability", func(w *audit.Work) { w.Carry.Members[0].Days[0].Share *= 1.1 }},
		{"the heaviest share is the largest of the shares", func(w *audit.Work) { w.Carry.Stages[0].Worst *= 0.9; w.Carry.Stages[0].WorstBound = 0 }},
		{"no split is below its bound", func(w *audit.Work) { w.Carry.Stages[0].WorstBound = w.Carry.Stages[0].Worst * 1.1 }},
		{"wrappings are carried out", func(w *audit.Work) {
			last := &w.Carry.Stages[len(w.Carry.Stages)-1]
			last.Items = append(slices.Clone(last.Items), carry.Item{Kind: carry.WasteItem, Key: "more", Mass: units.Gram, Carrier: last.Items[0].Carrier})
		}},
		{"no load passes a hard limit in silence", func(w *audit.Work) { w.Trip.Crew[0].PackRoom = 0; silent(w) }},
		{"bought less leftover is what is needed", func(w *audit.Work) { w.Shopping.Lines[0].Leftover += units.Gram }},
		{"packages add up to what is bought", func(w *audit.Work) {
			i := slices.IndexFunc(w.Shopping.Lines, func(l shopping.Line) bool { return len(l.Buys) > 0 })
			w.Shopping.Lines[i].Buys[0].Count++
		}},
		{"what is packed is bought", func(w *audit.Work) {
			w.Shopping.Lines = w.Shopping.Lines[1:]
			silent(w)
		}},
		{"food that is not safe is never without a finding", func(w *audit.Work) { w.Spoilage.Fates[0].Verdict = spoilage.NotSafe; silent(w) }},
		{"perishable food does not last a day in a warm pack", func(w *audit.Work) {
			i := slices.IndexFunc(w.Spoilage.Fates, func(f spoilage.Fate) bool { return f.Day == 2 && f.Verdict == spoilage.Safe })
			w.Trip.Food(w.Spoilage.Fates[i].Food).Storage.TCS = trip.TCSUnknown
			w.Trip.Days[0].Low = 15
		}},
		{"every ingredient has a fate", func(w *audit.Work) { w.Spoilage.Fates = w.Spoilage.Fates[1:] }},
		{"the fuel carried is the fuel needed", func(w *audit.Work) {
			i := slices.IndexFunc(w.Cooking.Fuel, func(f cooking.LegFuel) bool { return f.Needed > 0 })
			w.Cooking.Fuel[i].Containers = nil
			silent(w)
		}},
	}
	for i, c := range cases {
		w := sound(t)
		c.spoil(&w)
		faults := audit.Check(w)
		if !slices.ContainsFunc(faults, func(f findings.Finding) bool { return strings.Contains(f.Why.String(), c.rule) }) {
			t.Errorf("case %d: the breach of %q is not found; found %d others", i, c.rule, len(faults))
		}
	}
}

func TestFaultsSpeakOfTheProgramAndAreBounded(t *testing.T) {
	w := sound(t)
	for i := range w.Bags.Bags {
		w.Bags.Bags[i].Food += units.Gram
	}
	faults := audit.Check(w)
	if len(faults) == 0 || len(faults) > 200 {
		t.Errorf("%d faults", len(faults))
	}
	for _, fault := range faults {
		if fault.Stage != findings.Check || fault.Severity != findings.MustFix || fault.Remedy.IsZero() {
			t.Errorf("a fault is %+v", fault)
		}
	}
}
