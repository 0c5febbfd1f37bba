package trip

import (
	"sumpter/domain/prose"
	"sumpter/domain/units"
)

func (c *checker) points() {
	if len(c.trip.Points) > MaxPoints {
		return
	}
	for i := range c.trip.Points {
		point := &c.trip.Points[i]
		c.at("points", i, int64(point.ID), point.Name)
		word(c, "kind", "kind", point.Kind, PointKinds()...)
		if point.AfterDay < 1 || point.AfterDay > len(c.trip.Days) {
			c.add("after_day", prose.Say("it is reached after day %d", point.AfterDay), prose.Say("a day from 1 to %d", len(c.trip.Days)), prose.Say("Enter the day on whose evening it is reached."))
		}
		c.notes("address", "address", point.Address)
		c.opening(point.Opening)
		c.transit(point)
		c.sending(&point.Sending)
		c.visit(point)
		c.notes("notes", "notes", point.Notes)
	}
}

// posted checks how boxes are sent from home.
func (c *checker) posted() {
	c.where = Where{List: "posting"}
	c.notes("return_address", "return address", c.trip.Posting.ReturnAddress)
	c.opening(c.trip.Posting.Opening)
}

func (c *checker) opening(p Opening) {
	if c.count("open_days", "opening days", len(p.OpenDays), 0, 7) {
		for _, day := range p.OpenDays {
			word(c, "open_days", "opening day", day, OpenDayNames()...)
		}
		distinct(c, "open_days", "opening day", p.OpenDays, func(day string) string { return day })
	}
	if c.count("closed_dates", "closed dates", len(p.ClosedDates), 0, maxClosedDates) {
		for _, date := range p.ClosedDates {
			c.date("closed_dates", "closed date", date, true)
		}
		distinct(c, "closed_dates", "closed date", p.ClosedDates, func(d units.Date) units.Date { return d })
	}
}

func (c *checker) transit(p *ResupplyPoint) {
	c.within("transit_days", "usual time in the post", float64(p.TransitDays), 0, maxTransitDays, "days")
	c.within("fastest_transit_days", "fastest time in the post", float64(p.FastestDays), 0, maxTransitDays, "days")
	if p.FastestDays > p.TransitDays {
		c.swapped("fastest_transit_days", "fastest time in the post", float64(p.FastestDays), float64(p.TransitDays), "days")
	}
	c.within("buffer_days", "days kept in hand", float64(p.BufferDays), 0, maxTransitDays, "days")
	if hold, known := p.HoldDays.Get(); known {
		c.within("hold_days", "time a box is kept", float64(hold), 0, maxHoldDays, "days")
	}
	c.within("hold_margin_days", "margin on the time a box is kept", float64(p.HoldMargin), 0, maxTransitDays, "days")
	if limit, known := p.MaxParcel.Get(); known {
		c.above("max_parcel_g", "largest mass of a parcel", limit.Kilograms(), maxPackageKilograms, "kg")
	}
	if girth, known := p.MaxGirth.Get(); known {
		c.above("max_length_and_girth_m", "largest length and girth", float64(girth), maxGirthMetres, "m")
	}
	c.price("fee_per_parcel", "fee for a parcel", p.FeePerParcel)
}

func (c *checker) visit(p *ResupplyPoint) {
	c.price("visit_fee", "fee for a visit", p.VisitFee)
	c.within("detour_m", "detour", float64(p.Detour), 0, maxDetourMetres, "m")
	c.within("detour_hours", "time of the detour", float64(p.DetourHours), 0, maxDetourHours, "h")
	low, lowKnown := p.StoreLow.Get()
	high, highKnown := p.StoreHigh.Get()
	lowOK := !lowKnown || c.within("store_low_c", "lowest temperature where the box waits", float64(low), minCelsius, maxCelsius, "°C")
	highOK := !highKnown || c.within("store_high_c", "highest temperature where the box waits", float64(high), minCelsius, maxCelsius, "°C")
	if lowKnown && highKnown && lowOK && highOK && low > high {
		c.swapped("store_low_c", "lowest temperature where the box waits", float64(low), float64(high), "°C")
	}
}

// sending checks who sends a box, when, and what is written on it.
func (c *checker) sending(s *Sending) {
	c.line("sending.addressee", "addressee", s.Addressee)
	c.line("sending.care_of", "care of", s.CareOf)
	c.line("sending.helper", "helper who sends the box", s.Helper)
	c.date("sending.send_on", "day of sending", s.SendOn, false)
	if s.Collector != 0 && !c.members[s.Collector] {
		c.missing("sending.collector", "member", int64(s.Collector), "another member, or nobody")
	}
	if s.Sender != 0 && !c.members[s.Sender] {
		c.missing("sending.sender", "member", int64(s.Sender), "another member, or nobody")
	}
	if s.Sender != 0 && s.Helper != "" {
		c.add("sending.helper", prose.Say("a member and a helper both send the box"), prose.Say("one of the two"), prose.Say("Take one of them out."))
	}
}

func (c *checker) shops() {
	if len(c.trip.Shops) > MaxShops {
		return
	}
	for i := range c.trip.Shops {
		s := &c.trip.Shops[i]
		c.at("shops", i, 0, s.Name)
		if s.Point != 0 && !c.pointIDs[s.Point] {
			c.missing("point", "resupply point", int64(s.Point), "another point, or none")
		}
		c.notes("address", "address", s.Address)
		c.opening(s.Opening)
		c.price("visit_fee", "cost of a visit", s.VisitFee)
		c.price("least_order", "least order", s.LeastOrder)
		c.notes("notes", "notes", s.Notes)
	}
}
