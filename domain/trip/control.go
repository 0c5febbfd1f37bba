package trip

import (
	"math"

	"sumpter/domain/science/foodsafety"
)

// Control tells whether the food must be kept cold or hot to be safe: what the
// leader entered, else what the maker's water activity and pH say by the
// tables A and B of FDA Food Code 1-201.10, else unknown. The tables are not
// asked where the leader knows that the food needs control: raw and cooked
// food needs it whatever its figures.
func (s *Storage) Control() TCS {
	if s.TCS != TCSUnknown {
		return s.TCS
	}
	if s.Figures() == foodsafety.NotControlled {
		return TCSNo
	}
	return TCSUnknown
}

// Figures gives what water activity and pH alone say. A figure that is not
// known is taken as the worst.
func (s *Storage) Figures() foodsafety.Control {
	worst := math.NaN()
	return foodsafety.Assess(s.WaterActivity.Or(worst), s.PH.Or(worst), s.HeatTreated)
}

// Doubted tells a food that is entered as needing no control though its
// figures ask for an assessment by the maker.
func (s *Storage) Doubted() bool {
	return s.TCS == TCSNo && s.WaterActivity.Known() && s.Figures() == foodsafety.NeedsAssessment
}
