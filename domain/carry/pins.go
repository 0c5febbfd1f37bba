package carry

import (
	"slices"
	"strconv"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// applyPins narrows the carriers of a piece to the leader's wishes. A wish
// that would put an allergen into the pack of whom it harms, or that leaves
// nobody, is not followed and becomes a finding.
func (c *calculation) applyPins(p *piece, r run) {
	for _, pin := range c.Trip.Pins {
		place, known := c.place[pin.Member]
		if !known || !pinConcerns(pin, p) || !slices.Contains(r.present, place) {
			continue
		}
		others := slices.DeleteFunc(slices.Clone(p.allowed), func(i int) bool { return i == place })
		if len(others) == 0 {
			others = slices.DeleteFunc(slices.Clone(p.byHand), func(i int) bool { return i == place })
		}
		switch {
		case pin.Forbid && !slices.Contains(p.allowed, place):
		case pin.Forbid && len(others) == 0:
			c.find(findings.LookAt, "pin-not-followed", c.placeOf(p, r), prose.Say("%s cannot be kept from %s.", c.nameOf(p), c.Trip.Crew[place].Name),
				prose.Say("Nobody else who is there may carry it."), prose.Say("Take the ban off, or change what keeps it from the others."))
		case pin.Forbid:
			p.allowed = others
			p.why = prose.Say("kept from a member by hand")
		case !slices.Contains(p.allowed, place) && !slices.Contains(p.byHand, place):
			c.find(findings.MustFix, "pin-not-followed", c.placeOf(p, r), prose.Say("%s is pinned to %s, who may not carry it; another member carries it.", c.nameOf(p), c.Trip.Crew[place].Name),
				prose.Say("%s.", p.why), prose.Say("Take the pin off, or pin it to somebody else."))
		default:
			p.allowed, p.byHand, p.why = []int{place}, nil, prose.Say("pinned by hand")
		}
	}
}

func pinConcerns(pin trip.Pin, p *piece) bool { return PinnedThing(pin) == Thing{p.kind, p.key} }

// PinnedThing names what a pin is about.
func PinnedThing(pin trip.Pin) Thing {
	return ThingOf(trip.HandOver{Bag: pin.Bag, Gear: pin.Gear, Fuel: pin.Fuel})
}

// Pin ties the thing to a member, or keeps it from one. It is false for
// rubbish, which is never pinned.
func (t Thing) Pin(member trip.MemberID, forbid bool) (trip.Pin, bool) {
	over, ok := t.HandOver()
	return trip.Pin{Bag: over.Bag, Gear: over.Gear, Fuel: over.Fuel, Member: member, Forbid: forbid}, ok
}

// nameOf is how people call a piece.
func (c *calculation) nameOf(p *piece) prose.Text {
	switch p.kind {
	case BagItem:
		return prose.Say("Bag %s", p.bag.Code)
	case GearItem:
		if id, err := strconv.ParseInt(p.key, 10, 64); err == nil {
			if gear := c.Trip.GearItem(trip.GearID(id)); gear != nil {
				return prose.Verbatim(gear.Name)
			}
		}
	case FuelItem:
		for _, fuel := range c.Cooking.Fuel {
			for i := range fuel.Containers {
				if group := c.Trip.Group(fuel.Group); group != nil && fuel.Containers[i].Key == p.key {
					return prose.Say("%s of %s", fuel.Containers[i].Name, group.Name)
				}
			}
		}
	}
	return prose.Say("%s %s", p.kind, p.key)
}

func (c *calculation) placeOf(p *piece, r run) findings.Place {
	place := findings.Place{Day: r.first}
	switch p.kind {
	case BagItem:
		place.Bag = p.key
	case GearItem:
		if id, err := strconv.ParseInt(p.key, 10, 64); err == nil {
			place.Gear = trip.GearID(id)
		}
	}
	return place
}

func (c *calculation) find(severity findings.Severity, code string, place findings.Place, what, why, remedy prose.Text) {
	c.result.Findings = append(c.result.Findings, findings.Finding{
		Severity: severity, Stage: findings.Carry, Code: code, Place: place, What: what, Why: why, Remedy: remedy,
	})
}
