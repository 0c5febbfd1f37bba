// Package metabolism estimates the energy a body uses at rest, from mass,
// height, age and sex, and what a child or teenager uses in a day.
//
// The equations describe healthy people. They are not meant for pregnancy,
// nursing, an eating disorder or illness: ask for a figure from someone
// qualified instead.
//
// All results are kilocalories (1 kcal = 4.184 kJ) per day.
package metabolism

// Sex selects the equation; the published equations know two.
type Sex int

// The sexes that the equations know, and neither.
const (
	// NotGiven takes the mean of both equations (design choice); show the
	// spread between them beside it.
	NotGiven Sex = iota
	Female
	Male
)

// pick returns the figure of the sex, or the mean of both.
func (s Sex) pick(female, male float64) float64 {
	switch s {
	case Female:
		return female
	case Male:
		return male
	default:
		return (female + male) / 2
	}
}

// MifflinStJeor is the default for adults: the rounded equation.
// Derived on 498 healthy people of 19 to 78 years, R2 = 0.71; not for minors.
//
// Source: Mifflin MD et al., Am J Clin Nutr 1990;51:241-247, abstract.
func MifflinStJeor(sex Sex, massKg, heightCm, ageYears float64) float64 {
	body := 10*massKg + 6.25*heightCm - 5*ageYears
	return sex.pick(body-161, body+5)
}

// MifflinStJeorUnrounded is the same regression before its coefficients were
// rounded; it differs from MifflinStJeor by a few kilocalories.
//
// Source: as MifflinStJeor.
func MifflinStJeorUnrounded(sex Sex, massKg, heightCm, ageYears float64) float64 {
	body := 9.99*massKg + 6.25*heightCm - 4.92*ageYears - 161
	return sex.pick(body, body+166)
}

// HarrisBenedict is the revised equation of 1984, for a cross-check only. It
// reads 3 to 5 % above MifflinStJeor for usual adults; more than 10 % apart
// points to a typing error in the inputs.
//
// Source: Roza AM, Shizgal HM, Am J Clin Nutr 1984;40:168-182.
func HarrisBenedict(sex Sex, massKg, heightCm, ageYears float64) float64 {
	return sex.pick(
		447.593+9.247*massKg+3.098*heightCm-4.330*ageYears,
		88.362+13.397*massKg+4.799*heightCm-5.677*ageYears)
}

// AdultAge is the age in years from which Resting uses MifflinStJeor.
const AdultAge = 18

// Resting returns the default estimate: Schofield under AdultAge,
// MifflinStJeor from there on.
func Resting(sex Sex, massKg, heightCm, ageYears float64) float64 {
	if ageYears < AdultAge {
		return Schofield(sex, massKg, ageYears)
	}
	return MifflinStJeor(sex, massKg, heightCm, ageYears)
}
