package needs

import (
	"sumpter/domain/prose"
	"sumpter/domain/science/metabolism"
	"sumpter/domain/trip"
)

// body is a member as the equations see them.
type body struct {
	massKg, heightCm, age float64
	sex                   metabolism.Sex
	guessed               bool // no body mass was given
}

// guessedMassKg stands in where nobody gave a body mass, so that the plan goes
// on; it is a finding that must be fixed.
const guessedMassKg = 70

func bodyOf(m *trip.Member) body {
	b := body{massKg: m.BodyMass.Kilograms(), heightCm: 100 * float64(m.Height), age: float64(m.Age)}
	switch m.Sex {
	case trip.Female:
		b.sex = metabolism.Female
	case trip.Male:
		b.sex = metabolism.Male
	}
	if b.massKg <= 0 {
		b.massKg, b.guessed = guessedMassKg, true
	}
	return b
}

func (b body) minor() bool { return b.age < metabolism.AdultAge }

// restingAs gives resting energy in kcal a day, taking the body for a sex.
func (b body) restingAs(sex metabolism.Sex) float64 {
	if b.minor() || b.heightCm <= 0 {
		return metabolism.Schofield(sex, b.massKg, b.age)
	}
	return metabolism.MifflinStJeor(sex, b.massKg, b.heightCm, b.age)
}

func (b body) resting() float64 { return b.restingAs(b.sex) }

// spread gives how far apart the equations of the sexes are.
func (b body) spread() float64 {
	return b.restingAs(metabolism.Male) - b.restingAs(metabolism.Female)
}

// basis says which equation gave the resting energy.
func (b body) basis() prose.Text {
	text := prose.Say("Mifflin-St Jeor 1990")
	if b.minor() || b.heightCm <= 0 {
		from, to := metabolism.SchofieldBand(b.age)
		text = prose.Say("Schofield 1985 (FAO/WHO/UNU 2004), from %g years", from)
		if to > 0 {
			text = prose.Say("Schofield 1985 (FAO/WHO/UNU 2004), %g to %g years", from, to)
		}
	}
	if b.sex == metabolism.NotGiven {
		return prose.Say("%s, mean of both sexes", text)
	}
	return text
}
