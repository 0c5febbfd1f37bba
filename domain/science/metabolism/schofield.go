package metabolism

// line is R = slope x mass + constant, in kcal per day, with the published
// standard error of estimate.
type line struct{ kcalPerKg, constantKcal, standardErrorKcal float64 }

type band struct {
	fromYears    float64
	female, male line
}

// Bands are half-open: a person of exactly 18 years uses 18-30.
//
// Sources: Schofield WN, Hum Nutr Clin Nutr 1985;39C Suppl 1:5-41;
// FAO/WHO/UNU, Human energy requirements (2004), Table 5.2.
var bands = [...]band{
	{0, line{58.317, -31.1, 59}, line{59.512, -30.4, 70}},
	{3, line{20.315, 485.9, 70}, line{22.706, 504.3, 67}},
	{10, line{13.384, 692.6, 111}, line{17.686, 658.2, 105}},
	{18, line{14.818, 486.6, 119}, line{15.057, 692.2, 153}},
	{30, line{8.126, 845.6, 111}, line{11.472, 873.1, 167}},
	{60, line{9.082, 658.5, 108}, line{11.711, 587.7, 164}},
}

// Schofield estimates resting energy from mass and age band alone; the
// default for minors. The estimate jumps where a band ends, by 150 kcal for a
// man of 70 kg at 18: tell the user which band was used (SchofieldBand).
//
// Sources: Schofield WN, Hum Nutr Clin Nutr 1985;39C Suppl 1:5-41;
// FAO/WHO/UNU, Human energy requirements (2004), Table 5.2.
func Schofield(sex Sex, massKg, ageYears float64) float64 {
	b := bandOf(ageYears)
	return sex.pick(
		b.female.kcalPerKg*massKg+b.female.constantKcal,
		b.male.kcalPerKg*massKg+b.male.constantKcal)
}

// SchofieldError returns the published standard error of the estimate, in
// kcal per day: two people of three lie within it.
func SchofieldError(sex Sex, ageYears float64) float64 {
	b := bandOf(ageYears)
	return sex.pick(b.female.standardErrorKcal, b.male.standardErrorKcal)
}

// SchofieldBand returns the first age of the band used for an age and the
// first age past it, 0 where the band has no end.
func SchofieldBand(ageYears float64) (fromYears, toYears float64) {
	b := bandOf(ageYears)
	for _, next := range bands {
		if next.fromYears > b.fromYears {
			return b.fromYears, next.fromYears
		}
	}
	return b.fromYears, 0
}

func bandOf(ageYears float64) band {
	found := bands[0]
	for _, b := range bands {
		if ageYears >= b.fromYears {
			found = b
		}
	}
	return found
}
