package demo

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func points() []trip.ResupplyPoint {
	return []trip.ResupplyPoint{
		{
			ID: 1, Name: "Quarry Halt post office", Kind: trip.PostOffice, AfterDay: 3, Use: true,
			Address: "Poste restante\nPost Office, 2 Mill Lane\nQuarry Halt",
			Sending: trip.Sending{Addressee: "Tomas Varga", Collector: 2, Sender: 9},
			Opening: trip.Opening{OpenDays: []string{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat"}}, TransitDays: 3, FastestDays: 1, BufferDays: 3,
			HoldDays: optional.Of(14), HoldMargin: 2, MaxParcel: optional.Of(kilograms(20)), MaxGirth: optional.Of(units.Metres(3)),
			FeePerParcel: 950, Detour: 600, DetourHours: 0.3,
			StoreLow: optional.Of(units.Celsius(18)), StoreHigh: optional.Of(units.Celsius(27)),
			SellsFuel: true, TakesWaste: true,
			Notes: "Open until noon on Saturday. The village shop sells gas canisters; none may go by post.",
		},
		{
			ID: 2, Name: "Tarn Hut", Kind: trip.Hut, AfterDay: 6, Use: true,
			Address:     "Tarn Hut\nby the valley carrier, 4 Bridge Street\nMillhead",
			Sending:     trip.Sending{Addressee: "Tomas Varga", CareOf: "the warden", Collector: 2, Sender: 2},
			TransitDays: 3, FastestDays: 1, BufferDays: 4,
			HoldMargin: 2, MaxParcel: optional.Of(kilograms(15)), FeePerParcel: 1200, VisitFee: 0,
			StoreLow: optional.Of(units.Celsius(4)), StoreHigh: optional.Of(units.Celsius(14)),
			SellsFuel: true,
			Notes:     "The warden sells gas canisters, and has not answered yet how long boxes are kept.",
		},
	}
}

// posting is the club's own.
func posting() trip.Posting {
	p := trip.UsualPosting()
	p.ReturnAddress = "Wandering Heron walking club\n1 Dyke Road\nSaltmarsh"
	return p
}
