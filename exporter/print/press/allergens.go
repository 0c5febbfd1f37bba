package press

import (
	"slices"
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/exporter/print/typeset"
)

// What is said of allergens.

// AllergenNames names allergens.
func (p *Press) AllergenNames(list []trip.Allergen) string {
	return p.Tell(prose.List(", ", list))
}

// Declared is the allergens of a bag by what is known of them.
type Declared struct {
	Contains, MayContain, NotKnown []trip.Allergen
}

// Allergens sorts the allergens of a bag.
func Allergens(list []bags.Allergen) Declared {
	var d Declared
	for _, allergen := range list {
		switch allergen.Presence {
		case trip.Contains:
			d.Contains = append(d.Contains, allergen.Allergen)
		case trip.MayContain:
			d.MayContain = append(d.MayContain, allergen.Allergen)
		case trip.NotKnown:
			d.NotKnown = append(d.NotKnown, allergen.Allergen)
		}
	}
	return d
}

// Worst adds allergens to a list that keeps the worst state of each, in the
// order in which they first appear.
func Worst(list, more []bags.Allergen) []bags.Allergen {
	for _, allergen := range more {
		place := slices.IndexFunc(list, func(a bags.Allergen) bool { return a.Allergen == allergen.Allergen })
		if place < 0 {
			list = append(list, allergen)
			continue
		}
		list[place].Presence = trip.Worse(list[place].Presence, allergen.Presence)
	}
	return list
}

// None tells that nothing has to be said.
func (d Declared) None() bool {
	return len(d.Contains) == 0 && len(d.MayContain) == 0 && len(d.NotKnown) == 0
}

// InShort says allergens in a run of text.
func (p *Press) InShort(d Declared) string {
	var parts []string
	if len(d.Contains) > 0 {
		parts = append(parts, p.Tell(prose.Say("contains %s", prose.List(", ", d.Contains))))
	}
	if len(d.MayContain) > 0 {
		parts = append(parts, p.Tell(prose.Say("may contain %s", prose.List(", ", d.MayContain))))
	}
	if len(d.NotKnown) > 0 {
		parts = append(parts, p.Tell(prose.Say("not known: %s", prose.List(", ", d.NotKnown))))
	}
	return strings.Join(parts, "; ")
}

// Warning sets allergens so that nobody overlooks them, each kind in a shape
// of its own: white on dark what is in, a double frame around what may be in,
// a dashed double frame around what nobody knows.
func (p *Press) Warning(size, width Points, declared Declared) Block {
	style := Style{Size: size, Ink: p.Inks.Danger}
	pad := size * 0.4
	var parts []Block
	if len(declared.Contains) > 0 {
		parts = append(parts, p.Banner(style, p.Inks.Danger, pad, width, p.named(p.Tell(prose.Say("CONTAINS")), declared.Contains)))
	}
	if len(declared.MayContain) > 0 {
		parts = append(parts, p.Framed(style, false, pad, width, p.named(p.Tell(prose.Say("MAY CONTAIN")), declared.MayContain)))
	}
	if len(declared.NotKnown) > 0 {
		parts = append(parts, p.Framed(style, true, pad, width, p.named(p.Tell(prose.Say("NOT KNOWN TO BE FREE OF")), declared.NotKnown)))
	}
	return Stack(size*0.2, parts...)
}

func (p *Press) named(lead string, list []trip.Allergen) typeset.Span {
	return typeset.Bold(lead + " " + p.AllergenNames(list))
}
