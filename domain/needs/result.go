// Package needs works out what each member burns on each day and what they
// should eat: energy with the bracket of the published equations, protein and
// the other targets, and the moving time behind it.
//
// Start with Compute; it wants a canonical trip. It never fails: what cannot be
// reckoned becomes a finding.
package needs

import (
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Loads is what each member carries on the morning of each day, by place in
// the canonical crew and day-1. The first round of the plan passes own kit
// plus a usual guess. Nil means own kit only.
type Loads [][]units.Mass

// Result is the needs of the whole trip.
type Result struct {
	Members  []Member           `json:"members"` // in the order of the canonical crew
	Walks    []Walk             `json:"walks"`   // one per day
	Findings []findings.Finding `json:"-"`
}

// Walk is the moving time of one day, the same for all.
type Walk struct {
	Hours       units.Hours `json:"hours"`        // planned moving time, party factor included
	ToblerHours units.Hours `json:"tobler_hours"` // second opinion
	StopHours   units.Hours `json:"stop_hours"`
	GivenByHand bool        `json:"given_by_hand"`
}

// Member is one member's needs over the days of the trip.
type Member struct {
	Member       trip.MemberID `json:"member"`
	RestingKcal  units.Kcal    `json:"resting_kcal"` // a day of rest in bed
	RestingBasis prose.Text    `json:"resting_basis"`
	Days         []Day         `json:"days"` // one per day of the trip
}

// Day is what one member needs on one day.
type Day struct {
	Present             bool       `json:"present"`
	Kcal                units.Kcal `json:"kcal"`        // planned need of the whole day
	Low                 units.Kcal `json:"low_kcal"`    // lowest of the equations; a figure given by hand may lie outside
	High                units.Kcal `json:"high_kcal"`   // highest
	FromPacks           float64    `json:"from_packs"`  // the part of the day eaten from the packs, 0 to 1
	TargetKcal          units.Kcal `json:"target_kcal"` // to be eaten from the packs: appetite and FromPacks taken in
	ProteinGrams        float64    `json:"protein_g"`   // to be eaten from the packs
	FatLowGrams         float64    `json:"fat_low_g"`
	FatHighGrams        float64    `json:"fat_high_g"`
	CarbLowGrams        float64    `json:"carb_low_g"`
	FibreGrams          float64    `json:"fibre_g"`
	SodiumLowMilligrams float64    `json:"sodium_low_mg"`
	MovingWatts         float64    `json:"moving_w"`        // mean gross power on the move, 0 without a walk
	Steps               []Step     `json:"steps,omitempty"` // why this figure
}

// Step is one line of the answer to "why 3,412 kcal?".
type Step struct {
	What  prose.Text `json:"what"` // "walking uphill, 2.1 h at 412 W"
	Value float64    `json:"value"`
	Unit  string     `json:"unit"`
	Basis prose.Text `json:"basis"`           // equation and source, or "leader's figure"
	Total bool       `json:"total,omitempty"` // what the steps before it come to
}

// There tells whether the member at a place in the crew is with the group on a
// day (1-based): as these needs reckon, or as planned where they know nothing
// of that day.
func (r *Result) There(t *trip.Trip, place, day int) bool {
	if place < len(r.Members) && day >= 1 && day <= len(r.Members[place].Days) {
		return r.Members[place].Days[day-1].Present
	}
	return t.Crew[place].Present(day)
}
