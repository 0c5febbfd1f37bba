package window

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/findings"
	"sumpter/domain/trip"
)

// screenOf gives the screen on which a finding can be mended.
func screenOf(finding findings.Finding) string {
	switch finding.Stage {
	case findings.Needs:
		if finding.Place.Day > 0 && finding.Place.Member == 0 {
			return "route"
		}
		return "crew"
	case findings.Menu, findings.Portions:
		return "menu"
	case findings.Spoilage:
		if finding.Place.Day > 0 {
			return "menu"
		}
		return "foods"
	case findings.Cooking:
		return "menu"
	case findings.Bags, findings.Packing:
		return "packing"
	case findings.Resupply:
		return "resupply"
	case findings.Carry:
		return "loads"
	case findings.Shopping:
		return "shopping"
	default:
		return "crew"
	}
}

// placeWords says where a finding is as a person would.
func placeWords(t *trip.Trip, place findings.Place) string {
	var words []string
	if place.Day > 0 {
		words = append(words, fmt.Sprintf("%s %d", lang.L("day"), place.Day))
	}
	if place.Meal != "" {
		words = append(words, lang.L(string(place.Meal)))
	}
	if m := t.Member(place.Member); m != nil {
		words = append(words, m.Name)
	}
	if f := t.Food(place.Food); f != nil {
		words = append(words, f.Name)
	}
	if p := t.Point(place.Point); p != nil {
		words = append(words, p.Name)
	}
	if len(words) == 0 {
		return lang.L("whole trip")
	}
	return strings.Join(words, ", ")
}
