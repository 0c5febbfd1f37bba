// Package foodsafety holds the published limits of time and temperature for
// food, decides which food needs them, and keeps the account of how much of
// the time allowed is used.
//
// It never calls food safe because something is not known, and it does not
// replace local rules or a food-safety specialist.
package foodsafety

// Control says whether a food must be kept cold or hot, or eaten in time.
type Control int

const (
	// NeedsAssessment is "PA" in the Food Code's tables: without a product
	// assessment the food is treated as needing control. Unknown figures end
	// here too; it is the zero value for that reason.
	NeedsAssessment Control = iota
	// NotControlled food is shelf-stable as it is.
	NotControlled
)

// String returns the words of the Food Code.
func (c Control) String() string {
	if c == NotControlled {
		return "not TCS"
	}
	return "PA"
}

// Assess decides by water activity and pH whether a food needs time or
// temperature control (TCS). Packaged means heat-treated to kill vegetative
// cells and then packaged (table A); all else is table B. A figure that is
// not known is given as NaN and is taken as the worst.
//
// Always TCS whatever the figures, for the caller to know: raw or cooked
// animal food, cooked plant food, cut melon, cut leafy greens, cut tomato,
// sprouts, garlic in oil.
//
// Source: FDA Food Code 1-201.10, tables A and B (the column headings of
// table B from memory).
func Assess(waterActivity, pH float64, packaged bool) Control {
	stable := stableInTableB(waterActivity, pH)
	if packaged {
		stable = stableInTableA(waterActivity, pH)
	}
	if stable {
		return NotControlled
	}
	return NeedsAssessment
}

// Every comparison is written so that NaN makes it false.

func stableInTableA(waterActivity, pH float64) bool {
	switch {
	case waterActivity <= 0.92:
		return true
	case waterActivity <= 0.95:
		return pH <= 5.6
	default:
		return pH <= 4.6
	}
}

func stableInTableB(waterActivity, pH float64) bool {
	switch {
	case waterActivity < 0.88:
		return true
	case waterActivity <= 0.90:
		return pH <= 5.0
	case waterActivity <= 0.92:
		return pH <= 4.6
	default:
		return pH < 4.2
	}
}
