// Package fill chooses dishes for the slots that a leader left open: the lightest, cheapest or most varied menu that feeds each member of
// each cook group, around what is decided already. It turns the trip into the integer problem of package menufill and back.
//
// What is chosen keeps these rules, the first before the later: nobody is served what their allergy or diet forbids, nothing unsafe or
// not known to be safe is served, nothing needs a flame where none is allowed; a day's energy can be met within the portions that the recipes
// allow; then its protein; then fibre, salt and fat; then minutes on the burner; then no dinner twice within the days that the settings ask
// for; then staples and textures that alternate. Only the first three are never given up.
//
// Start with Menu; Rank weighs the recipes for one slot by the same measure. Both want a canonical trip.
package fill

import (
	"context"

	"sumpter/domain/needs"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Options limit the work of Menu.
type Options struct {
	// Steps is the work for each cook group, a count that does not depend on the machine (some 30 million a second in 2026); 0 means Thorough.
	Steps int64
	// Tries is how often the menu may be chosen, the sized portions and the budget looked at in between; 0: as often as the work allows. One
	// try weighs as Rank does.
	Tries int
	// Beside is what else the budget must pay for, as Beside tells of an earlier plan.
	Beside units.Money
	// Progress, if set, hears now and then how far the work is.
	Progress func(Progress)
}

// Progress tells how far the work is.
type Progress struct {
	Share float64      // of the work allowed, 0 to 1
	Group trip.GroupID // whose slots are being filled
	Found bool         // there is a menu for them already
	Gap   float64      // how far it may be from the best, as a share
}

// Sketch is work for a menu that is made again with every edit.
const Sketch = 400_000

// Thorough is work for a menu that the leader asked for: seconds.
func Thorough(days int) int64 { return min(160_000_000, max(12_000_000, 6_000_000*int64(days))) }

// Proposal is dishes for the open slots.
type Proposal struct {
	Cells  []trip.Cell // by day, meal and group; only slots that were open and get something
	Groups []Outcome   // of each cook group with an open slot
}

// Outcome is how well the slots of a cook group are filled.
type Outcome struct {
	Group   trip.GroupID `json:"group"`
	Slots   int          `json:"slots"`   // that were open
	Gap     float64      `json:"gap"`     // no menu from these recipes is better by more than this share, by the measure of the aim
	Proven  bool         `json:"proven"`  // none is better at all
	Stopped bool         `json:"stopped"` // the work was ended early
}

// Gap is the largest of the groups' gaps.
func (p *Proposal) Gap() float64 {
	gap := 0.0
	for _, g := range p.Groups {
		gap = max(gap, g.Gap)
	}
	return gap
}

// Stopped tells whether some of the work was ended early.
func (p *Proposal) Stopped() bool {
	for _, g := range p.Groups {
		if g.Stopped {
			return true
		}
	}
	return false
}

// Menu fills every slot that is open and not locked. The same trip and needs give the same cells, as long as the context does not end
// early: then the best so far comes back, and its error only where there is nothing yet.
func Menu(ctx context.Context, t *trip.Trip, n needs.Result, o Options) (Proposal, error) {
	if o.Steps <= 0 {
		o.Steps = Thorough(len(t.Days))
	}
	f := &filling{larder: newLarder(t, n), options: o, dearer: 1}
	if err := f.run(ctx); err != nil {
		return Proposal{}, err
	}
	f.proposal.sort()
	return f.proposal, nil
}
