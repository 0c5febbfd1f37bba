package resupply

import (
	"fmt"

	"sumpter/domain/bags"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func finding(severity findings.Severity, code string, p *trip.ResupplyPoint, what, why, remedy string) findings.Finding {
	return findings.Finding{
		Severity: severity, Stage: findings.Resupply, Code: code,
		Place: findings.Place{Day: p.AfterDay, Point: p.ID}, What: what, Why: why, Remedy: remedy,
	}
}

func offTheDays(t *trip.Trip, p *trip.ResupplyPoint) findings.Finding {
	return finding(findings.LookAt, "point-off-route", p,
		fmt.Sprintf("%s is to be used after day %d of a trip of %d days: it is not.", p.Name, p.AfterDay, len(t.Days)),
		"A box serves the days after its point; there must be at least one before it and one after.",
		fmt.Sprintf("Put it after a day from 1 to %d, or do not use it.", max(1, len(t.Days)-1)))
}

func sameEvening(p *trip.ResupplyPoint) findings.Finding {
	return finding(findings.LookAt, "point-doubled", p,
		fmt.Sprintf("%s lies on an evening on which another point is used: it gets no box.", p.Name),
		"Food is taken on once an evening; of two points the one with the lower ID is used.",
		"Use only one of them, or move one to another day.")
}

func nextMorning(p *trip.ResupplyPoint, evening units.Date) findings.Finding {
	return finding(findings.LookAt, "pick-up-moved", p,
		fmt.Sprintf("%s is closed on %s: the box is picked up on %s, before setting off.", p.Name, evening.Spoken(), evening.AddDays(1).Spoken()),
		"The opening days and closed dates entered for the point.",
		"Ask when it opens, plan a late start, and keep the breakfast of that day in the packs.")
}

func closed(p *trip.ResupplyPoint, evening, next units.Date, found bool) findings.Finding {
	remedy := "Enter its opening days, or use another point."
	if found {
		remedy = fmt.Sprintf("It opens on %s: move the start by %d days, wait there with food for %d days more, or use another point.",
			next.Spoken(), int(next-evening), int(next-evening))
	}
	return finding(findings.MustFix, "point-closed", p,
		fmt.Sprintf("%s is closed on %s and the day after.", p.Name, evening.Spoken()),
		"The opening days and closed dates entered for the point.", remedy)
}

func holdUnknown(p *trip.ResupplyPoint) findings.Finding {
	return finding(findings.LookAt, "hold-unknown", p,
		fmt.Sprintf("Nobody knows how long %s keeps a box: there is no earliest day of posting.", p.Name),
		"A box that comes too early is sent back. Posts differ and change their rules.",
		"Ask there and enter the days.")
}

func emptyWindow(p *trip.ResupplyPoint, w window) findings.Finding {
	hold := p.HoldDays.Or(0)
	return finding(findings.MustFix, "no-posting-day", p,
		fmt.Sprintf("No day is right to post the box for %s: not before %s, or it may be sent back; not after %s, or it may be late.", p.Name, w.from.Spoken(), w.by.Spoken()),
		fmt.Sprintf("Transit of %d to %d days, %d days in hand and a hold of %d days less %d.", p.FastestDays, p.TransitDays, p.BufferDays, hold, p.HoldMargin),
		fmt.Sprintf("A hold of %d days would do: ask for it, keep fewer days in hand, or send by a faster and surer way.", holdNeeded(p)))
}

func postedLater(p *trip.ResupplyPoint, w window) findings.Finding {
	return finding(findings.LookAt, "posted-on-trip", p,
		fmt.Sprintf("The box for %s must not be posted before %s, when the trip is under way.", p.Name, w.from.Spoken()),
		"A box that comes before the hold begins is sent back.",
		fmt.Sprintf("Leave it with somebody at home who posts it by %s.", w.by.Spoken()))
}

func packedTooLate(p *trip.ResupplyPoint, w window, night units.Date) findings.Finding {
	return finding(findings.MustFix, "packed-too-late", p,
		fmt.Sprintf("The box for %s is to be posted by %s, but packing night is %s.", p.Name, w.by.Spoken(), night.Spoken()),
		fmt.Sprintf("Transit of %d days and %d days in hand before pick-up.", p.TransitDays, p.BufferDays),
		fmt.Sprintf("Pack at least %d days earlier, or send by a faster way.", int(night-w.by)))
}

func overLimit(t *trip.Trip, bag *bags.Bag, p *trip.ResupplyPoint) findings.Finding {
	f := finding(findings.MustFix, "bag-over-parcel", p,
		fmt.Sprintf("Bag %s (%s, %s) is larger than a parcel to %s may be.", bag.Code, bag.Mass().Format(t.Units), bag.Volume.Format(t.Units), p.Name),
		fmt.Sprintf("The limits entered for the point, less %s and a fifth of the volume for the carton (common practice, no source).", cartonMass.Format(t.Units)),
		"Pack the meal in smaller bags, or check the limits.")
	f.Place.Bag = bag.Key
	return f
}

func emptyBox(p *trip.ResupplyPoint) findings.Finding {
	return finding(findings.Note, "empty-box", p,
		fmt.Sprintf("Nothing is eaten from the box at %s.", p.Name),
		"No bag belongs to the days after it.",
		"Fill the menu of the days after it, or do not use the point.")
}

func notThere(t *trip.Trip, p *trip.ResupplyPoint, b *Box, before trip.Leg) findings.Finding {
	what := fmt.Sprintf("If the box at %s does not come, the packs are empty after day %d", p.Name, before.LastDay)
	if t.Settings.ReserveDays > 0 {
		what += fmt.Sprintf(", but for a reserve of %.1f days", t.Settings.ReserveDays)
	}
	remedy := "Have the arrival of the box confirmed before the leg begins, and know where food can be bought near the point."
	if b.TurnBackBy > 0 {
		remedy += fmt.Sprintf(" Later than the evening of day %d the food no longer reaches back.", b.TurnBackBy)
	}
	return finding(findings.Note, "box-not-there", p, what+".",
		"Food left against days back to where it came from, at the same pace (common practice, no source).", remedy)
}

// fuelFindings says how the leg's fuel gets there.
func (b *Box) fuelFindings(p *trip.ResupplyPoint) []findings.Finding {
	switch {
	case len(b.Fuel) == 0 || b.FuelBoughtThere:
		return nil
	case !p.TakesFuel:
		return []findings.Finding{finding(findings.MustFix, "no-fuel-there", p,
			fmt.Sprintf("The leg from %s needs %d fuel containers, but fuel is neither sold nor taken there.", p.Name, len(b.Fuel)),
			"The entries of the point. Stove fuel, lighters and matches are dangerous goods and barred from ordinary post.",
			"Carry the fuel from the start, plan cold meals, or find where it is sold.")}
	case b.Posted:
		return []findings.Finding{finding(findings.LookAt, "fuel-by-post", p,
			fmt.Sprintf("%d fuel containers are to be sent to %s.", len(b.Fuel), p.Name),
			"Stove fuel, lighters and matches are dangerous goods and barred from ordinary post.",
			"Ask a carrier who is licensed for them, or have fuel bought there. Never hide it in the box.")}
	default:
		return nil
	}
}
