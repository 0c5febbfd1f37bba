package resupply

import (
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	"sumpter/domain/posting"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Compute fills a box for every leg that starts at a point, a canonical
// trip's, and weighs the ways to use the points against each other.
func Compute(t *trip.Trip, b bags.Result, c cooking.Result, legs []trip.Leg) Result {
	var r Result
	for n, leg := range legs {
		point := t.Point(leg.From)
		if point == nil {
			continue
		}
		box := Box{Point: point.ID, Leg: n, Posted: posting.Sent(point)}
		var held []*bags.Bag
		for i := range b.Bags {
			if b.Bags[i].Leg == n {
				held = append(held, &b.Bags[i])
			}
		}
		sent := box.hold(t, held, c.Fuel, point)
		r.Findings = append(r.Findings, box.parcel(sent, point)...)
		r.Findings = append(r.Findings, box.date(t, point)...)
		r.Findings = append(r.Findings, box.address(t, point)...)
		r.Findings = append(r.Findings, box.fuelFindings(point)...)
		r.Findings = append(r.Findings, box.shopFindings(t, point)...)
		if n > 0 {
			r.Findings = append(r.Findings, box.missing(t, legs[n-1], point)...)
		}
		r.Boxes = append(r.Boxes, box)
	}
	r.Findings = append(r.Findings, pointFindings(t, legs)...)
	var trouble []findings.Finding
	r.Choices, trouble = choices(t, b, legs)
	r.Findings = append(r.Findings, trouble...)
	findings.Sort(r.Findings)
	return r
}

// hold lists what is in the box, and what is put into its bags only there.
func (b *Box) hold(t *trip.Trip, held []*bags.Bag, fuel []cooking.LegFuel, point *trip.ResupplyPoint) []sent {
	list := sentOf(t, point, held)
	for _, s := range list {
		b.BoughtThere = append(b.BoughtThere, s.bought...)
		if s.nothing {
			continue
		}
		b.Bags = append(b.Bags, s.bag.Key)
		b.Mass += s.mass
		b.Volume += s.bag.Volume
	}
	for _, leg := range fuel {
		if leg.Leg != b.Leg {
			continue
		}
		for _, container := range leg.Containers {
			if container.Brought {
				continue // carried here, neither sent nor bought
			}
			b.Fuel = append(b.Fuel, container.Key)
		}
	}
	b.FuelBoughtThere = len(b.Fuel) > 0 && point.SellsFuel
	return slices.DeleteFunc(list, func(s sent) bool { return s.nothing })
}

// parcel packs the bags and adds up the fees.
func (b *Box) parcel(held []sent, point *trip.ResupplyPoint) []findings.Finding {
	limit := limitOf(point)
	pieces := make([]piece, len(held))
	var over []findings.Finding
	for i, s := range held {
		pieces[i] = s.piece()
		if !limit.fits(pieces[i]) {
			over = append(over, overLimit(s.bag, point))
		}
	}
	for _, group := range packFew(pieces, limit) {
		var p Parcel
		for _, i := range group {
			p.Bags = append(p.Bags, held[i].bag.Key)
			p.Mass += held[i].mass
			p.Volume += held[i].bag.Volume
		}
		p.carton()
		b.Parcels = append(b.Parcels, p)
	}
	b.Fees = point.VisitFee + point.FeePerParcel*units.Money(len(b.Parcels))
	return over
}

// pointFindings speaks of points that are marked for use and are not used.
func pointFindings(t *trip.Trip, legs []trip.Leg) []findings.Finding {
	var list []findings.Finding
	for i := range t.Points {
		p := &t.Points[i]
		used := slices.ContainsFunc(legs, func(l trip.Leg) bool { return l.From == p.ID })
		switch {
		case !p.Use || used:
		case p.AfterDay < 1 || p.AfterDay >= len(t.Days):
			list = append(list, offTheDays(t, p))
		default:
			list = append(list, sameEvening(p))
		}
	}
	return list
}
