package trip

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

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
	stand := func(i int) string { return fmt.Sprintf("Member %d", i+1) }
	for _, text := range bare.ownWords() {
		for i := range t.Crew {
			*text = withoutWord(*text, t.Crew[i].Name, stand(i))
		}
	}
	for i := range bare.Crew {
		known := &bare.Crew[i]
		bare.Crew[i] = Member{
			ID: known.ID, Name: stand(i), Group: known.Group,
			Sex: SexNotGiven, Age: strangerAge, BodyMass: strangerMass, Height: strangerHeight, Appetite: 1, Strength: 1,
			OwnKit: known.OwnKit, PackRoom: known.PackRoom, LoadLimit: optional.Unknown[units.Mass](),
			FirstDay: known.FirstDay, LastDay: known.LastDay, Standby: known.Standby,
		}
	}
	for i := range bare.Points {
		sending := &bare.Points[i].Sending
		sending.Addressee, sending.CareOf, sending.Helper = "", "", ""
	}
	bare.Posting.ReturnAddress = ""
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

// ownWords are the texts in which a leader may call somebody by name.
func (t *Trip) ownWords() []*string {
	words := []*string{&t.Title, &t.Notes}
	for i := range t.Groups {
		words = append(words, &t.Groups[i].Name)
	}
	for i := range t.Days {
		words = append(words, &t.Days[i].Name)
	}
	for i := range t.Foods {
		words = append(words, &t.Foods[i].Notes)
	}
	for i := range t.Recipes {
		words = append(words, &t.Recipes[i].Name, &t.Recipes[i].Notes)
		for j := range t.Recipes[i].Method {
			words = append(words, &t.Recipes[i].Method[j])
		}
	}
	for i := range t.Gear {
		words = append(words, &t.Gear[i].Name)
	}
	for i := range t.Points {
		words = append(words, &t.Points[i].Address, &t.Points[i].Notes)
	}
	for i := range t.Progress.Purchases {
		words = append(words, &t.Progress.Purchases[i].Other)
	}
	return words
}

// withoutWord replaces a name where it stands by itself, not as a part of
// another word.
func withoutWord(text, name, instead string) string {
	if name == "" {
		return text
	}
	var out strings.Builder
	for {
		at := strings.Index(text, name)
		if at < 0 {
			return out.String() + text
		}
		before, _ := utf8.DecodeLastRuneInString(text[:at])
		after, _ := utf8.DecodeRuneInString(text[at+len(name):])
		out.WriteString(text[:at])
		if unicode.IsLetter(before) || unicode.IsLetter(after) {
			out.WriteString(name)
		} else {
			out.WriteString(instead)
		}
		text = text[at+len(name):]
	}
}
