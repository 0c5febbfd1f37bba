package plan

import (
	"context"
	"math"

	"sumpter/domain/audit"
	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/fill"
	"sumpter/domain/findings"
	"sumpter/domain/menu"
	"sumpter/domain/needs"
	"sumpter/domain/packing"
	"sumpter/domain/portions"
	"sumpter/domain/prose"
	"sumpter/domain/reserve"
	"sumpter/domain/resupply"
	"sumpter/domain/shopping"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Load changes need, need changes food, food changes load. The rounds end when
// no load changes by settledChange, or after mostRounds; the plan says which.
const (
	mostRounds    = 6
	settledChange = 0.01
)

// firstGuess is the shared load per member that the first round reckons with:
// four days of food at the usual 0.8 kg (common practice, no source). It only
// shortens the way to the answer.
const firstGuess = 3200 * units.Gram

// Options of a planning run. The zero value is good.
type Options struct {
	// Progress, if set, hears which stage begins.
	Progress func(stage prose.Text)
}

// Make plans a trip. A trip that cannot be planned gives a plan that holds
// only the findings that say why; the only error is that of ctx.
func Make(ctx context.Context, t *trip.Trip, options Options) (*Plan, error) {
	if problems := trip.Validate(t); len(problems) > 0 {
		return refused(t, problems), nil
	}
	m := &making{plan: &Plan{Trip: t.Canonical()}, options: options}
	m.plan.Legs = m.plan.Trip.Legs()
	m.reserve = reserve.New(m.plan.Trip)
	if err := m.settle(ctx); err != nil {
		return nil, err
	}
	if err := m.finish(ctx); err != nil {
		return nil, err
	}
	m.gather()
	return m.plan, nil
}

// Refused tells whether the trip could not be planned at all.
func (p *Plan) Refused() bool { return p.Rounds == 0 }

// refused makes a plan of a trip that cannot be planned.
func refused(t *trip.Trip, problems []trip.Problem) *Plan {
	p := &Plan{Trip: t}
	for _, problem := range problems {
		p.Findings = append(p.Findings, findings.Finding{
			Severity: findings.MustFix, Stage: findings.Trip, Code: "trip-fault",
			What: problem.Text(), Why: prose.Say("A trip is planned only when every entry has a meaning."),
			Remedy: problem.Remedy,
		})
	}
	return p
}

type making struct {
	plan    *Plan
	split   *carry.Result // of the round before; nil before the first
	walked  needs.Loads   // the loads the needs were worked out on
	reserve *reserve.Planner
	options Options
}

func (m *making) say(stage prose.Text) {
	if m.options.Progress != nil {
		m.options.Progress(stage)
	}
}

// settle repeats needs to carry until the loads no longer change: first on
// the loads of an ideal split, which costs no search, then on real ones.
func (m *making) settle(ctx context.Context) error {
	p := m.plan
	loads, searched := guessLoads(p.Trip), false
	for p.Rounds < mostRounds && !p.Settled {
		if err := ctx.Err(); err != nil {
			return err
		}
		p.Rounds++
		m.say(prose.Say("needs"))
		p.Needs, m.walked = needs.Figures(p.Trip, loads), loads
		if err := m.feed(ctx); err != nil {
			return err
		}
		next := carry.Estimate(m.work())
		if searched || largestChange(loads, next) < settledChange || p.Rounds >= mostRounds-2 {
			searched = true
			if err := m.carry(ctx); err != nil {
				return err
			}
			next = p.Carry.Loads()
		}
		p.Change = largestChange(loads, next)
		p.Settled = searched && p.Change < settledChange
		loads = next
	}
	return nil
}

// feed works out menu to bags on the needs there are. The menu is chosen once:
// portions follow the needs of later rounds.
func (m *making) feed(ctx context.Context) error {
	p := m.plan
	if p.Rounds == 1 {
		m.say(prose.Say("menu"))
		proposed, err := m.propose(ctx)
		if err != nil {
			return err
		}
		p.Menu = menu.Resolve(p.Trip, proposed)
	}
	m.say(prose.Say("portions"))
	p.Portions = portions.Figures(p.Trip, p.Needs, p.Menu)
	p.Portions.Reserve = m.reserve.Size(p.Needs, p.Portions, p.Legs)
	m.say(prose.Say("cooking"))
	p.Cooking = cooking.Compute(p.Trip, p.Needs, p.Portions, p.Legs)
	m.say(prose.Say("bags"))
	p.Bags = bags.Compute(p.Trip, p.Portions, p.Cooking, p.Legs)
	return nil
}

// propose fills the slots that were left open, where the settings ask for it, with little work: a plan is made again with every edit.
func (m *making) propose(ctx context.Context) ([]trip.Cell, error) {
	if !m.plan.Trip.Settings.FillOpenSlots {
		return nil, nil
	}
	proposal, err := fill.Menu(ctx, m.plan.Trip, m.plan.Needs, fill.Options{Steps: fill.Sketch})
	return proposal.Cells, err
}

func (m *making) work() carry.Work {
	p := m.plan
	return carry.Work{Trip: p.Trip, Legs: p.Legs, Needs: p.Needs, Bags: p.Bags, Cooking: p.Cooking, Kept: p.Trip.Kept}
}

// carry splits the load, near to the split of the round before.
func (m *making) carry(ctx context.Context) error {
	m.say(prose.Say("loads"))
	split, err := carry.Compute(ctx, m.work(), m.split)
	if err != nil {
		return err
	}
	m.plan.Carry, m.split = split, &split
	return nil
}

// finish works out what no earlier stage waits for, on the settled bags.
func (m *making) finish(ctx context.Context) error {
	p := m.plan
	// The sentences that explain each need are written once, for the last round.
	p.Needs = needs.Compute(p.Trip, m.walked)
	held := p.Portions.Reserve // as it lies in the bags
	p.Portions = portions.Compute(p.Trip, p.Needs, p.Menu)
	p.Portions.Reserve = held
	m.say(prose.Say("spoilage"))
	p.Spoilage = spoilage.Compute(p.Trip, p.Portions)
	m.say(prose.Say("boxes"))
	p.Resupply = resupply.Compute(p.Trip, p.Bags, p.Cooking, p.Legs)
	m.say(prose.Say("shopping"))
	p.Shopping = shopping.Compute(p.Trip, p.Bags, p.Resupply, p.Cooking)
	m.say(prose.Say("packing night"))
	p.Packing = packing.Compute(p.Trip, p.Bags, p.Resupply)
	return ctx.Err()
}

// gather puts the findings of all stages into one list, those of the
// independent check among them.
func (m *making) gather() {
	p := m.plan
	for _, list := range [][]findings.Finding{
		p.Needs.Findings, p.Menu.Findings, p.Portions.Findings, m.reserve.Findings(), p.Spoilage.Findings, p.Cooking.Findings,
		p.Bags.Findings, p.Resupply.Findings, p.Carry.Findings, p.Shopping.Findings, p.Packing.Findings,
	} {
		p.Findings = append(p.Findings, list...)
	}
	m.say(prose.Say("check"))
	p.Findings = append(p.Findings, audit.Check(p.audited())...)
	findings.Sort(p.Findings)
}

func (p *Plan) audited() audit.Work {
	return audit.Work{
		Trip: p.Trip, Legs: p.Legs, Needs: p.Needs, Menu: p.Menu, Portions: p.Portions, Spoilage: p.Spoilage,
		Cooking: p.Cooking, Bags: p.Bags, Resupply: p.Resupply, Carry: p.Carry, Shopping: p.Shopping, Findings: p.Findings,
	}
}

func guessLoads(t *trip.Trip) needs.Loads {
	loads := make(needs.Loads, len(t.Crew))
	for i := range t.Crew {
		loads[i] = make([]units.Mass, len(t.Days))
		for d := range loads[i] {
			loads[i][d] = t.Crew[i].OwnKit + firstGuess
		}
	}
	return loads
}

// largestChange is the heaviest change of a load between two rounds, as a
// share of the load.
func largestChange(before, after needs.Loads) float64 {
	change := 0.0
	for i := range after {
		for d, load := range after[i] {
			if load > 0 {
				change = math.Max(change, math.Abs(float64(load-before[i][d]))/float64(load))
			}
		}
	}
	return change
}
