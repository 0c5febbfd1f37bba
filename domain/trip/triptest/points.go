package triptest

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// points spreads resupply points over the evenings; odd ones fall anywhere.
func (b *builder) points(count int) {
	days := len(b.trip.Days)
	if days < 2 {
		return
	}
	for i, id := range b.ids(count) {
		after := min(days-1, max(1, (i+1)*days/(count+1)))
		if b.odd {
			after = b.pick(1, days-1)
		}
		b.trip.Points = append(b.trip.Points, b.point(trip.PointID(id), after))
	}
}

func (b *builder) point(id trip.PointID, after int) trip.ResupplyPoint {
	point := trip.ResupplyPoint{
		ID: id, Name: named("Stop", int64(id)), AfterDay: after, Use: !b.odd || b.chance(80),
		Kind:        oneOf(b, trip.PostOffice, trip.ShopOnWay, trip.Hut, trip.Cache, trip.Meeting),
		TransitDays: b.pick(2, 5), FastestDays: b.pick(1, 2), BufferDays: b.pick(0, 2),
		HoldDays: unsure(b, b.pick(7, 30)), HoldMargin: b.pick(0, 2),
		MaxParcel: maybe(b, 60, units.Mass(b.pick(10, 30))*units.Kilogram), FeePerParcel: units.Money(b.pick(0, 1500)),
		StoreLow: unsure(b, units.Celsius(b.pick(5, 15))), StoreHigh: unsure(b, units.Celsius(b.pick(16, 30))),
		TakesFuel: b.chance(50), SellsFuel: b.chance(30), TakesWaste: b.chance(70),
	}
	if b.rarely() {
		point.OpenDays = some(b, 60, []string{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"})
		point.ClosedDates = []units.Date{b.trip.DateOf(after)}
		point.Address, point.Notes = "Box 7,\nValley end", "ring first"
		point.MaxGirth = optional.Of(units.Metres(3))
	}
	if b.rarely() {
		point.Sending = b.sending(after)
	}
	if b.rarely() {
		point.VisitFee, point.Detour = units.Money(b.pick(0, 3000)), units.Metres(b.pick(0, 80)*100)
		point.DetourHours = units.Hours(b.tenths(0, 20))
	}
	return point
}

func (b *builder) sending(after int) trip.Sending {
	s := trip.Sending{Addressee: "Ann Example", CareOf: oneOf(b, "", "the warden"), Collector: oneOf(b, b.trip.Crew...).ID}
	if b.chance(50) {
		s.Sender = oneOf(b, b.trip.Crew...).ID
	} else {
		s.Helper = "Bo at home"
	}
	if b.chance(50) {
		s.SendOn = b.trip.DateOf(after).AddDays(-b.pick(0, 20))
	}
	return s
}
