// Package loadlimits holds the published cautions about loads by body mass.
// All are advice; none is a medical limit, and a painful back or knee, a
// doctor's word or the member's own wish stands above every one of them.
package loadlimits

// Shares of body mass.
const (
	FightingLoad   = 0.30    // US Army ADP 3-90, FM 21-18
	ApproachMarch  = 0.45    // US Army FM 3-21.8 para 7-20, FM 21-18; above it "emergency"
	Mountaineer    = 1.0 / 3 // Langmuir 2004, p. 247
	SchoolBagLeast = 0.10    // American Academy of Pediatrics; Occupational Therapy Association
	SchoolBagMost  = 0.20    // American Academy of Pediatrics
	MultiDayAdult  = 0.20    // common practice, no source
	allowanceAtBMI = 27.0
)

// Limits are two shares of body mass: from Amber a leader should look, from
// Red the load should change.
type Limits struct{ Amber, Red float64 }

// Cautions returns 20 and 30 % for adults, 15 and 20 % for those under 18.
//
// Source: design choice within the published shares above.
func Cautions(minor bool) Limits {
	if minor {
		return Limits{Amber: 0.15, Red: SchoolBagMost}
	}
	return Limits{Amber: MultiDayAdult, Red: FightingLoad}
}

// AllowanceMass returns the body mass in kilograms that a share is taken of:
// the actual mass, but for a heavy person the mass at a body mass index of 27,
// so that the allowance does not grow with fat (design choice). Without a
// height (0 or less) the actual mass is used.
func AllowanceMass(bodyKg, heightCm float64) float64 {
	if heightCm <= 0 {
		return bodyKg
	}
	metres := heightCm / 100
	return min(bodyKg, allowanceAtBMI*metres*metres)
}
