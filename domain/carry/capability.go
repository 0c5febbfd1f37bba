package carry

import (
	"math"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// perHectogram is the step in which capability is kept, so that shares are
// compared as whole numbers.
const perHectogram = 100 * units.Gram

// capabilityMass is the mass a member's load is measured by: body mass, at
// most that of a body mass index of 27, times the leader's strength factor.
// It is rounded to 100 g. Who has strength 0 is not a carrier.
func capabilityMass(member *trip.Member) units.Mass {
	return units.Mass(hectograms(member)) * perHectogram
}

func hectograms(member *trip.Member) int64 {
	return int64(math.Round(referenceMass(member).Kilograms() * member.Strength * 10))
}
