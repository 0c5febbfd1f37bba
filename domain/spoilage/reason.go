package spoilage

import "sumpter/domain/prose"

// reason is why a food is safe, not safe or not known.
type reason int

const (
	keeps reason = iota
	keptColdAllTheWay
	warmButFresh
	warmTooLong
	openTooLong
	soakedTooLong
	controlUnknown
	placeUnknown
	shelfUnknown
	pastShelf
	beyondHeat
	coldTooLong
)

func (r reason) verdict() Verdict {
	switch r {
	case keeps, keptColdAllTheWay, warmButFresh:
		return Safe
	case warmTooLong, openTooLong, soakedTooLong:
		return NotSafe
	default:
		return NotKnown
	}
}

// words say it to the leader in one sentence.
func (r reason) words() prose.Text {
	switch r {
	case keeps:
		return prose.Say("Keeps until then.")
	case keptColdAllTheWay:
		return prose.Say("Perishable, and cold enough all the way.")
	case warmButFresh:
		return prose.Say("Warmer than its shelf life is stated for, but less than half of it is used.")
	case warmTooLong:
		return prose.Say("Perishable, and too long in the danger zone.")
	case openTooLong:
		return prose.Say("Its package was opened at an earlier meal, and it was too warm since.")
	case soakedTooLong:
		return prose.Say("Soaks too long at this warmth: wet food turns perishable.")
	case controlUnknown:
		return prose.Say("Nobody said whether it needs cooling, and it is not kept cold.")
	case placeUnknown:
		return prose.Say("The temperature where its box waits is not known.")
	case shelfUnknown:
		return prose.Say("Its shelf life is not known.")
	case pastShelf:
		return prose.Say("Past its shelf life at the temperatures of the way.")
	case beyondHeat:
		return prose.Say("Warmer than its shelf life is stated for, and over half of it is used.")
	default:
		return prose.Say("Perishable, and kept for more than a week.")
	}
}

// source is the rule or figure behind a reason.
func (r reason) source() prose.Text {
	switch r {
	case warmTooLong, openTooLong, soakedTooLong, controlUnknown:
		return prose.Say("USDA FSIS: 2 hours between 4.4 and 60 °C, 1 hour above 32.2 °C; time adds up and cooling does not wind it back. Food Code 1-201.10 for what is perishable.")
	case placeUnknown:
		return prose.Say("Unknown is never taken as safe.")
	case shelfUnknown:
		return prose.Say("Unknown is never taken as safe; the label or the maker knows.")
	case pastShelf:
		return prose.Say("Shelf life stated at 20 °C, used up faster in heat (Q10 over each day's course of temperature). This is quality: smell and look decide nothing about safety.")
	case beyondHeat, warmButFresh:
		return prose.Say("The food's highest steady temperature against the mean of the day in the pack; half the shelf life is kept in hand (design choice).")
	default:
		return prose.Say("FDA Food Code 3-501.17: 7 days at 5 °C or below.")
	}
}
