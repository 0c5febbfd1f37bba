package audit

import (
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
)

// Every state of an allergen against both kinds of allergy: a severe one keeps
// all that is not plainly free out of the pack, another what contains it.
func TestWhoMustNotCarryWhat(t *testing.T) {
	for _, c := range []struct {
		state         trip.Presence
		severe, other bool
	}{
		{trip.Contains, true, true}, {trip.MayContain, true, false}, {trip.NotKnown, true, false}, {trip.Free, false, false},
	} {
		food := &trip.Food{Allergens: map[trip.Allergen]trip.Presence{trip.Milk: c.state}}
		for _, severe := range []bool{true, false} {
			member := &trip.Member{Allergies: []trip.Allergy{{Allergen: trip.Milk, Severe: severe}}}
			want := c.other
			if severe {
				want = c.severe
			}
			if have := mustNotCarry(member, food); have != want {
				t.Errorf("milk %s, severe %v: %v", c.state, severe, have)
			}
		}
		if mustNotCarry(&trip.Member{}, food) {
			t.Error("who is not allergic may carry anything")
		}
	}
}

// A bag in the wrong pack is owned up to by a finding of the carry stage about
// that bag or that stretch of days, and by no other.
func TestWhatOwnsUpToABag(t *testing.T) {
	bag, stage := &bags.Bag{Key: "d3 dinner"}, &carry.Stage{FirstDay: 3}
	cases := []struct {
		finding findings.Finding
		want    bool
	}{
		{findings.Finding{Stage: findings.Carry, Code: "allergen", Place: findings.Place{Bag: "d3 dinner"}}, true},
		{findings.Finding{Stage: findings.Carry, Code: "no-split", Place: findings.Place{Day: 3}}, true},
		{findings.Finding{Stage: findings.Carry, Code: "no-split", Place: findings.Place{Day: 1}}, false},
		{findings.Finding{Stage: findings.Carry, Code: "heavy-load", Place: findings.Place{Day: 3}}, false},
		{findings.Finding{Stage: findings.Carry, Code: "allergen", Place: findings.Place{Bag: "d3 lunch"}}, false},
		{findings.Finding{Stage: findings.Bags, Code: "no-split", Place: findings.Place{Day: 3}}, false},
	}
	for _, c := range cases {
		a := &auditor{}
		a.Findings = []findings.Finding{c.finding}
		if have := a.said(findings.Carry, saidOf(bag, stage)); have != c.want {
			t.Errorf("%+v: %v", c.finding, have)
		}
	}
}
