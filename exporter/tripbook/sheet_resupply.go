package tripbook

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func resupplySheet() sheet {
	type R = trip.ResupplyPoint
	t := &table[R]{
		name: sheetResupply, list: "points", names: func(s *scope) *names { return &s.points },
		about: "Places at the end of a day where a box can wait or food can be bought. Ask each of them for its rules: they change.",
		fresh: func() R { return R{Use: true} },
		columns: []column[R]{
			col("Name", "name", func(p *R) *string { return &p.Name }, line(), "What it is called.").must().wide(26),
			col("Kind", "kind", func(p *R) *trip.PointKind { return &p.Kind }, word(trip.PointKinds()), "Meeting: somebody meets the group there.").must().wide(12),
			col("After day", "after_day", func(p *R) *int { return &p.AfterDay }, count(), "Reached at the end of this day; its food is eaten from the next breakfast on.").must().wide(8),
			col("Used", "use", func(p *R) *bool { return &p.Use }, yesNo(), "Whether this trip uses it. Empty: yes.").wide(8),
			col("Address", "address", func(p *R) *string { return &p.Address }, notes(), "As it goes on the box, below the names."),
			col("Addressee", "sending.addressee", func(p *R) *string { return &p.Sending.Addressee }, line(), "Full name of who fetches the box, as on their identity card.").wide(22),
			col("Care of", "sending.care_of", func(p *R) *string { return &p.Sending.CareOf }, line(), "In whose care it waits: a warden, a host.").wide(18),
			col("Fetched by", "sending.collector", func(p *R) *trip.MemberID { return &p.Sending.Collector }, orBlank(toMember()), "A member of sheet Crew who is there on that evening.").wide(18),
			col("Sent by", "sending.sender", func(p *R) *trip.MemberID { return &p.Sending.Sender }, orBlank(toMember()), "A member of sheet Crew; or").wide(18),
			col("Sent by helper", "sending.helper", func(p *R) *string { return &p.Sending.Helper }, line(), "somebody at home who posts the box or brings it.").wide(18),
			col("Sent on", "sending.send_on", func(p *R) *units.Date { return &p.Sending.SendOn }, date(), "The day chosen for it to leave home. Empty: the latest that brings it in time."),
			openDaysColumn(func(p *R) *[]string { return &p.OpenDays }),
			closedDatesColumn(func(p *R) *[]units.Date { return &p.ClosedDates }),
			col("Post takes", "transit_days", func(p *R) *int { return &p.TransitDays }, count(), "Days, at the slowest usual.").wide(8),
			col("Post takes at least", "fastest_transit_days", func(p *R) *int { return &p.FastestDays }, count(), "Days, at the fastest possible.").wide(8),
			col("Buffer days", "buffer_days", func(p *R) *int { return &p.BufferDays }, count(), "Kept in hand before the pick-up.").wide(8),
			col("Held for", "hold_days", func(p *R) *optional.Value[int] { return &p.HoldDays }, maybe(count()), "Days a box is kept. Empty: not known; that is a finding.").wide(8),
			col("Hold margin", "hold_margin_days", func(p *R) *int { return &p.HoldMargin }, count(), "Days kept in hand before the hold ends.").wide(8),
			col("Largest parcel", "max_parcel_g", func(p *R) *optional.Value[units.Mass] { return &p.MaxParcel }, maybe(exact[units.Mass](bodyMass)), "Mass of one parcel. Empty: no limit."),
			col("Length and girth", "max_length_and_girth_m", func(p *R) *optional.Value[units.Metres] { return &p.MaxGirth }, maybe(number[units.Metres](stature)), "Most of length plus girth. Empty: no limit."),
			col("Fee per parcel", "fee_per_parcel", func(p *R) *units.Money { return &p.FeePerParcel }, money(), "Postage and holding."),
			col("Fee per visit", "visit_fee", func(p *R) *units.Money { return &p.VisitFee }, money(), "Whatever is paid once."),
			col("Detour", "detour_m", func(p *R) *units.Metres { return &p.Detour }, number[units.Metres](distance), "Extra way, there and back."),
			col("Detour hours", "detour_hours", func(p *R) *units.Hours { return &p.DetourHours }, number[units.Hours](same("h")), "Extra time. 0: that of the extra way at 5 km/h."),
			col("Stored at, lowest", "store_low_c", func(p *R) *optional.Value[units.Celsius] { return &p.StoreLow }, maybe(number[units.Celsius](temperature)), "Where the box waits. Empty: not known."),
			col("Stored at, highest", "store_high_c", func(p *R) *optional.Value[units.Celsius] { return &p.StoreHigh }, maybe(number[units.Celsius](temperature)), "Where the box waits. Empty: not known."),
			col("Takes fuel", "takes_fuel", func(p *R) *bool { return &p.TakesFuel }, yesNo(), "Fuel may be sent there. Most post does not take it.").wide(8),
			col("Sells fuel", "sells_fuel", func(p *R) *bool { return &p.SellsFuel }, yesNo(), "Fuel can be bought there.").wide(8),
			col("Takes rubbish", "takes_waste", func(p *R) *bool { return &p.TakesWaste }, yesNo(), "Rubbish can be left there.").wide(8),
			col("Notes", "notes", func(p *R) *string { return &p.Notes }, notes(), "Anything."),
			idColumn(func(p *R) *trip.PointID { return &p.ID }),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Points })
	return t
}

// dateList is dates in one cell, so written as words and not as day numbers.
func dateList() codec[[]units.Date] {
	one := date()
	one.write = func(value units.Date, _ *scope, _ unit) content { return textContent(value.String()) }
	return listOf(one, "dates")
}
