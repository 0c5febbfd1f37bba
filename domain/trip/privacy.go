package trip

import (
	"fmt"
	"strings"

	"sumpter/domain/optional"
	"sumpter/domain/units"
)

// Body of the stranger that stands in for a member. Any adult's would do; the
// copy says that nobody is to be fed by it.
const (
	strangerAge    = 40
	strangerMass   = 70 * units.Kilogram
	strangerHeight = units.Metres(1.70)
)

// WithoutPersonalData gives a copy to hand on: route, foods, recipes and menu
// as they are, but of each member only what the work needs: cook group, days
// present, kit and room. What is kept is listed, not what is left out, so that
// a field added later stays private.
func (t *Trip) WithoutPersonalData() *Trip {
	bare := t.Clone()
	for i := range bare.Crew {
		known := &bare.Crew[i]
		bare.Crew[i] = Member{
			ID: known.ID, Name: fmt.Sprintf("Member %d", i+1), Group: known.Group,
			Sex: SexNotGiven, Age: strangerAge, BodyMass: strangerMass, Height: strangerHeight, Appetite: 1, Strength: 1,
			OwnKit: known.OwnKit, PackRoom: known.PackRoom, LoadLimit: optional.Unknown[units.Mass](),
			FirstDay: known.FirstDay, LastDay: known.LastDay,
		}
	}
	for i := range bare.Menu {
		for j := range bare.Menu[i].Dishes {
			bare.Menu[i].Dishes[j].Accepted = nil // each names a member and an allergy or diet
		}
	}
	const warning = "A copy without the crew's body and health data, allergies included: its figures are those of strangers. Feed nobody by it."
	notes := []rune(warning + "\n\n" + bare.Notes)
	bare.Notes = strings.TrimSpace(string(notes[:min(len(notes), MaxTextRunes)]))
	return bare
}
