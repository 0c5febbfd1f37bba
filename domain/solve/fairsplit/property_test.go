package fairsplit

import (
	"context"
	"math/big"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// drawnCrew is an invented crew of middling size with a few wishes on top.
func drawnCrew(t *rapid.T) Problem {
	members := rapid.IntRange(2, 7).Draw(t, "members")
	days := rapid.IntRange(1, 5).Draw(t, "days")
	tight := binding{rapid.Bool().Draw(t, "mass"), rapid.Bool().Draw(t, "volume"), rapid.Bool().Draw(t, "class")}
	p := inventCrew(rapid.Uint64Range(0, 1000).Draw(t, "seed"), members, days, tight)
	for range rapid.IntRange(0, 3).Draw(t, "pins") {
		j := rapid.IntRange(0, len(p.Items)-1).Draw(t, "pinned item")
		p.Items[j].Allowed = []int{rapid.IntRange(0, members-1).Draw(t, "carrier")}
	}
	return p
}

func solveDrawn(t *rapid.T, p Problem, o Options) Result {
	o.Steps = 300_000
	r, err := Solve(context.Background(), p, o)
	if err != nil {
		t.Fatal(err)
	}
	checkResult(t, p, r)
	return r
}

// TestEveryLimitHoldsOrIsNamed: checkResult works out loads, volumes, classes and
// carriers anew, so a feasible result that breaks a limit fails, and so does an
// infeasible one that names no reason or hides an overrun.
func TestEveryLimitHoldsOrIsNamed(t *testing.T) {
	feasible, not := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		if r := solveDrawn(t, drawnCrew(t), Options{}); r.Feasible {
			feasible++
		} else {
			not++
		}
	})
	if feasible == 0 || not == 0 {
		t.Errorf("%d crews fitted and %d did not: the draw must give both", feasible, not)
	}
}

// TestChangesNamedLiftTheReason: where raising limits is offered for a split that
// breaks them, that split is within the raised limits.
func TestChangesNamedLiftTheReason(t *testing.T) {
	named := 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawnCrew(t)
		r := solveDrawn(t, p, Options{})
		if r.Feasible || !slices.Contains([]Rule{NotFound, RuledOut, LimitsTogether}, r.Reasons[0].Rule) {
			return
		}
		named++
		for _, c := range r.Reasons[0].Change {
			apply(&p, c)
		}
		if over := plainSums(p, r.Carrier).overruns; len(over) > 0 {
			t.Errorf("after the changes %+v there is still %+v", r.Reasons[0].Change, over)
		}
	})
	if named == 0 {
		t.Error("no crew was found that needs a change")
	}
}

func apply(p *Problem, c Change) {
	switch c.Kind {
	case RaiseLimit:
		if c.Limit == MassLimit {
			p.Crew[c.Member].MaxGrams += c.By
		} else {
			p.Crew[c.Member].VolumeMl += c.By
		}
	case RaiseShare:
		for n := range p.Classes {
			if p.Classes[n].Name == c.Class {
				share := p.Classes[n].Share
				if big.NewRat(share.Num, share.Den).Cmp(big.NewRat(c.Share.Num, c.Share.Den)) < 0 {
					p.Classes[n].Share = c.Share
				}
			}
		}
	}
}

// TestWorkersDoNotMatter: the answer is the same on one processor and on two.
func TestWorkersDoNotMatter(t *testing.T) {
	for seed := range uint64(6) {
		p := inventCrew(seed, 6, 4, binding{volume: seed%2 == 0})
		one, err := Solve(context.Background(), p, Options{Steps: 2_000_000})
		if err != nil {
			t.Fatal(err)
		}
		two, _ := Solve(context.Background(), p, Options{Steps: 2_000_000, Workers: 2})
		if !slices.Equal(one.Carrier, two.Carrier) || one.Steps != two.Steps {
			t.Errorf("seed %d: one worker and two give different splits", seed)
		}
	}
}

// TestMorePacksAreNoWorse: the bounds do not rise when a member joins who carries
// nothing of their own.
func TestMorePacksAreNoWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawnCrew(t)
		before := newBounds(newInstance(p))
		p.Crew = append(p.Crew, Member{Strength: p.Crew[0].Strength, MaxGrams: Unlimited, VolumeMl: Unlimited})
		in := newInstance(p)
		after := newBounds(in)
		old := newInstance(Problem{Days: p.Days, HoursTenths: p.HoursTenths, Crew: p.Crew[:len(p.Crew)-1], Items: p.Items, Classes: p.Classes})
		for d := range after.level {
			if in.exactBurden(after.level[d]).Cmp(old.exactBurden(before.level[d])) > 0 && in.capacityOf(len(in.member)-1, d, never/4) >= 1 {
				t.Errorf("day %d: level rises from %v to %v", d, old.exactBurden(before.level[d]), in.exactBurden(after.level[d]))
			}
		}
	})
}

// TestResplitTradesChangesForFairness: from a spoilt split, the choices cost more
// changes the fairer they are, and a limit on changes is kept.
func TestResplitTradesChangesForFairness(t *testing.T) {
	p := inventCrew(3, 8, 5, loose)
	best, err := Solve(context.Background(), p, Options{Steps: 4_000_000})
	if err != nil {
		t.Fatal(err)
	}
	kept, _ := Solve(context.Background(), p, Options{Steps: 4_000_000, Previous: best.Carrier})
	if kept.Changes != 0 || !slices.Equal(kept.Carrier, best.Carrier) {
		t.Errorf("%d changes of a split that is already fair", kept.Changes)
	}
	spoilt := slices.Clone(best.Carrier)
	moved := 0
	for j, i := range spoilt {
		if i == 2 && len(plainCarriers(p, j)) == len(p.Crew) && moved < 6 {
			spoilt[j] = 5
			moved++
		}
	}
	again, _ := Solve(context.Background(), p, Options{Steps: 6_000_000, Previous: spoilt})
	checkResult(t, p, again)
	if again.Changes == 0 || again.Changes > 2*moved {
		t.Errorf("%d changes to mend %d hand-overs", again.Changes, moved)
	}
	for n := 1; n < len(again.Choices); n++ {
		x, y := again.Choices[n-1], again.Choices[n]
		if y.Changes <= x.Changes || y.R1.Cmp(x.R1) >= 0 && y.S.Cmp(x.S) >= 0 {
			t.Errorf("choice %d (%d changes) is not fairer than the one before", n, y.Changes)
		}
	}
	three, _ := Solve(context.Background(), p, Options{Steps: 6_000_000, Previous: spoilt, MaxChanges: 3})
	if three.Changes > 3 || three.Changes == 0 {
		t.Errorf("%d changes where at most 3 are asked for", three.Changes)
	}
}

// TestMemberWhoLeft: items of a member who left are no changes but have to move.
func TestMemberWhoLeft(t *testing.T) {
	p := inventCrew(4, 6, 3, loose)
	before, err := Solve(context.Background(), p, Options{Steps: 5_000_000})
	if err != nil {
		t.Fatal(err)
	}
	p.Crew[1].Strength = 0
	for j := range p.Items {
		p.Items[j].Allowed = nil
	}
	r, _ := Solve(context.Background(), p, Options{Steps: 4_000_000, Previous: before.Carrier})
	checkResult(t, p, r)
	orphans := 0
	for _, i := range before.Carrier {
		if i == 1 {
			orphans++
		}
	}
	if r.Forced != orphans || slices.Contains(r.Carrier, 1) {
		t.Errorf("%d forced, want %d; carriers %v", r.Forced, orphans, r.Carrier)
	}
}

func TestCancelledSearchStillGivesASplit(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	p := inventCrew(1, 12, 7, tightRoom)
	r, err := Solve(ctx, p, Options{})
	if err != nil {
		t.Fatal(err)
	}
	checkResult(t, p, r)
	if !r.Stopped || r.Proven {
		t.Errorf("stopped %v, proven %v", r.Stopped, r.Proven)
	}
	full, _ := Solve(context.Background(), p, Options{Steps: 5_000_000})
	if r.Steps >= full.Steps {
		t.Errorf("%d steps after the end of the context, %d in full", r.Steps, full.Steps)
	}
}

func TestProgressIsTold(t *testing.T) {
	var heard []Progress
	p := inventCrew(1, 6, 4, tightRoom)
	r, err := Solve(context.Background(), p, Options{Steps: 3_000_000, Progress: func(x Progress) { heard = append(heard, x) }})
	if err != nil {
		t.Fatal(err)
	}
	if len(heard) == 0 {
		t.Fatal("nothing was told")
	}
	last := heard[len(heard)-1]
	if s, _ := r.S.Float64(); !last.Feasible || last.S < s*0.9999 || last.Steps > r.Steps {
		t.Errorf("last told %+v, S is %v", last, s)
	}
}
