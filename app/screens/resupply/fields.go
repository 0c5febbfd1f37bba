package resupply

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// longestWait is far above any transit or hold; what a trip may hold exactly
// is checked when the edit is made.
const longestWait = 999

// fields lists the columns in the units the leader reads.
func (s *Screen) fields() []field {
	return slices.Concat(s.placeFields(), s.sendingFields(), s.postingFields(), s.visitFields())
}

func (s *Screen) placeFields() []field {
	return []field{
		{title: lang.L("Name"), width: 200, text: func(p *trip.ResupplyPoint) string { return p.Name },
			set: func(p *trip.ResupplyPoint, text string) error { p.Name = text; return nil }},
		yesField(lang.L("Used"), 60, func(p *trip.ResupplyPoint) *bool { return &p.Use }),
		{title: lang.L("Kind"), width: 100, text: func(p *trip.ResupplyPoint) string { return lang.L(string(p.Kind)) }, set: setKind, choices: kindWords()},
		countField(lang.L("After day"), "", 84, func(p *trip.ResupplyPoint) *int { return &p.AfterDay }),
		{title: lang.X("opening-days", "Open"), width: 150, text: openText, set: setOpen},
		{title: lang.L("Closed on"), width: 130, text: closedText, set: setClosed},
		{title: lang.L("Address"), width: 240, text: func(p *trip.ResupplyPoint) string { return bench.AddressText(p.Address) },
			set: func(p *trip.ResupplyPoint, text string) error { p.Address = bench.ReadAddress(text); return nil }},
	}
}

func (s *Screen) postingFields() []field {
	u, currency, days := s.bench.Units(), s.bench.Trip().Currency, lang.L("days")
	return []field{
		countField(lang.L("In the post"), days, 120, func(p *trip.ResupplyPoint) *int { return &p.TransitDays }),
		countField(lang.L("Fastest"), days, 100, func(p *trip.ResupplyPoint) *int { return &p.FastestDays }),
		countField(lang.L("In hand"), days, 100, func(p *trip.ResupplyPoint) *int { return &p.BufferDays }),
		{title: lang.L("Kept for"), unit: days, width: 106, number: func(p *trip.ResupplyPoint) float64 { return float64(p.HoldDays.Or(-1)) }, text: holdText, set: setHold},
		countField(lang.L("Margin"), days, 100, func(p *trip.ResupplyPoint) *int { return &p.HoldMargin }),
		{title: lang.L("Parcel up to"), unit: typed.MassUnit(u, true), width: 120, number: func(p *trip.ResupplyPoint) float64 { return float64(p.MaxParcel.Or(0)) },
			text: func(p *trip.ResupplyPoint) string {
				return known(p.MaxParcel, func(m units.Mass) string { return written.Bare(typed.MassText(m, u, true)) })
			},
			set: func(p *trip.ResupplyPoint, text string) error {
				return setKnown(&p.MaxParcel, text, func(text string) (units.Mass, error) { return typed.Mass(text, u, true) })
			}},
		{title: lang.L("Length and girth"), unit: typed.StatureUnit(u), width: 150, number: func(p *trip.ResupplyPoint) float64 { return float64(p.MaxGirth.Or(0)) },
			text: func(p *trip.ResupplyPoint) string {
				return known(p.MaxGirth, func(m units.Metres) string { return written.Bare(typed.StatureText(m, u)) })
			},
			set: func(p *trip.ResupplyPoint, text string) error {
				return setKnown(&p.MaxGirth, text, func(text string) (units.Metres, error) { return typed.Stature(text, u) })
			}},
		moneyField(lang.L("A parcel"), currency, func(p *trip.ResupplyPoint) *units.Money { return &p.FeePerParcel }),
		moneyField(lang.L("A visit"), currency, func(p *trip.ResupplyPoint) *units.Money { return &p.VisitFee }),
	}
}

func (s *Screen) visitFields() []field {
	u := s.bench.Units()
	degrees := func(title string, of func(p *trip.ResupplyPoint) *optional.Value[units.Celsius]) field {
		return field{title: title, unit: typed.TemperatureUnit(u), width: 104, number: func(p *trip.ResupplyPoint) float64 { return float64(of(p).Or(-99)) },
			text: func(p *trip.ResupplyPoint) string {
				return known(*of(p), func(c units.Celsius) string { return typed.TemperatureText(c, u) })
			},
			set: func(p *trip.ResupplyPoint, text string) error {
				return setKnown(of(p), text, func(text string) (units.Celsius, error) { return typed.Temperature(text, u) })
			}}
	}
	return []field{
		{title: lang.L("Detour"), unit: typed.DistanceUnit(u), width: 90, number: func(p *trip.ResupplyPoint) float64 { return float64(p.Detour) },
			text: func(p *trip.ResupplyPoint) string { return written.Bare(typed.DistanceText(p.Detour, u)) },
			set: func(p *trip.ResupplyPoint, text string) (err error) {
				p.Detour, err = typed.Distance(text, u)
				return err
			}},
		{title: lang.L("Detour"), unit: "h", width: 84, number: func(p *trip.ResupplyPoint) float64 { return float64(p.DetourHours) },
			text: func(p *trip.ResupplyPoint) string { return written.Number(float64(p.DetourHours), 1) },
			set: func(p *trip.ResupplyPoint, text string) (err error) {
				p.DetourHours, err = typed.Hours(text)
				return err
			}},
		degrees(lang.L("Coolest"), func(p *trip.ResupplyPoint) *optional.Value[units.Celsius] { return &p.StoreLow }),
		degrees(lang.L("Warmest"), func(p *trip.ResupplyPoint) *optional.Value[units.Celsius] { return &p.StoreHigh }),
		yesField(lang.L("Takes fuel"), 124, func(p *trip.ResupplyPoint) *bool { return &p.TakesFuel }),
		yesField(lang.L("Sells fuel"), 110, func(p *trip.ResupplyPoint) *bool { return &p.SellsFuel }),
		yesField(lang.L("Takes rubbish"), 118, func(p *trip.ResupplyPoint) *bool { return &p.TakesWaste }),
		{title: lang.L("Notes"), width: 300, text: func(p *trip.ResupplyPoint) string { return strings.ReplaceAll(p.Notes, "\n", " ") },
			set: func(p *trip.ResupplyPoint, text string) error { p.Notes = text; return nil }},
	}
}

func yesWord(yes bool) string {
	if yes {
		return lang.L("yes")
	}
	return lang.L("no")
}

func yesField(title string, width float32, of func(p *trip.ResupplyPoint) *bool) field {
	return field{title: title, width: width, text: func(p *trip.ResupplyPoint) string { return yesWord(*of(p)) }, choices: []string{yesWord(true), yesWord(false)},
		set: func(p *trip.ResupplyPoint, text string) (err error) {
			*of(p), err = typed.Yes(text)
			return err
		}}
}

func countField(title, unit string, width float32, of func(p *trip.ResupplyPoint) *int) field {
	return field{title: title, unit: unit, width: width, number: func(p *trip.ResupplyPoint) float64 { return float64(*of(p)) },
		text: func(p *trip.ResupplyPoint) string { return fmt.Sprint(*of(p)) },
		set: func(p *trip.ResupplyPoint, text string) (err error) {
			*of(p), err = typed.Whole(text, 0, longestWait)
			return err
		}}
}

func moneyField(title, currency string, of func(p *trip.ResupplyPoint) *units.Money) field {
	return field{title: title, unit: currency, width: 106, number: func(p *trip.ResupplyPoint) float64 { return float64(*of(p)) },
		text: func(p *trip.ResupplyPoint) string { return written.Money(*of(p), currency) },
		set: func(p *trip.ResupplyPoint, text string) (err error) {
			*of(p), err = typed.Money(text, currency)
			return err
		}}
}
