package tripbook

import (
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func shopSheet() sheet {
	type R = trip.Shop
	t := &table[R]{
		name: sheetShops, list: "shops",
		about: "Where food is bought. A shop that only sheet Packages names is reckoned as free to visit and open every day.",
		fresh: func() R { return R{Use: true} },
		columns: []column[R]{
			col("Name", "name", func(s *R) *string { return &s.Name }, line(), "As it stands on sheet Packages.").must().wide(22),
			col("Used", "use", func(s *R) *bool { return &s.Use }, yesNo(), "Whether anything is bought there. Empty: yes.").wide(8),
			col("At resupply point", "point", func(s *R) *trip.PointID { return &s.Point }, orBlank(toPoint()), "A point of sheet Resupply: what the shop sells is bought there and not sent. Empty: near home.").wide(24),
			col("Address", "address", func(s *R) *string { return &s.Address }, notes(), "Or how to get there."),
			openDaysColumn(func(s *R) *[]string { return &s.OpenDays }),
			closedDatesColumn(func(s *R) *[]units.Date { return &s.ClosedDates }),
			col("Fee per visit", "visit_fee", func(s *R) *units.Money { return &s.VisitFee }, money(), "Fare or delivery, each time something is bought there."),
			col("Least order", "least_order", func(s *R) *units.Money { return &s.LeastOrder }, money(), "Below it nothing is sold or delivered. Empty: none."),
			col("Notes", "notes", func(s *R) *string { return &s.Notes }, notes(), "Anything."),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Shops })
	return t
}

func openDaysColumn[R any](at func(*R) *[]string) column[R] {
	return col("Open on", "open_days", at, weekdayList(), "Mon; Tue; ... Empty: every day.").wide(24)
}

func closedDatesColumn[R any](at func(*R) *[]units.Date) column[R] {
	return col("Closed on dates", "closed_dates", at, dateList(), "Holidays, with ; between.").wide(24)
}
