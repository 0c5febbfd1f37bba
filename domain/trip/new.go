package trip

import "sumpter/domain/units"

// New gives the trip a leader starts from: one day, one cook group, the usual
// settings, bags and fuel containers (common practice, no source: weigh your
// own), and the leader alone in the crew.
func New(title string, start units.Date) *Trip {
	return &Trip{
		Title: title, Start: start, Units: units.Metric, Currency: "EUR", Settings: DefaultSettings(), Posting: UsualPosting(),
		Groups: []CookGroup{{ID: 1, Name: "Group 1"}},
		Crew:   []Member{NewMember(1, "Leader", 1)},
		Days:   []Day{NewDay()},
		Bags:   UsualBags(units.Metric),
		Fuels:  UsualFuels(),
	}
}

// NewDay gives a day of rest at sea level in mild weather, with every meal
// from the packs, to be filled in.
func NewDay() Day {
	return Day{Terrain: Trail, Low: 8, High: 18, Meals: Meals()}
}

// NewMember gives a member whose figures are to be filled in: an adult of
// 70 kg with 8 kg of own kit.
func NewMember(id MemberID, name string, group GroupID) Member {
	return Member{
		ID: id, Name: name, Group: group, Sex: SexNotGiven, Age: 40, BodyMass: 70 * units.Kilogram, Height: 1.72,
		Appetite: 1, Strength: 1, OwnKit: 8 * units.Kilogram, PackRoom: 25 * units.Litre,
	}
}

// UsualBags lists the sizes of bag a packing night can count on, as they are
// sold where people think in those units. Three quarters full they still seal
// (common practice, no source).
func UsualBags(system units.System) []BagType {
	if system == units.US {
		quart := units.FromMillilitres(946.352946) // NIST Handbook 44, Appendix C
		return []BagType{
			{Name: "snack bag", Nominal: quart.Scale(0.25), Fill: 0.75, Tare: 2 * units.Gram},
			{Name: "pint bag", Nominal: quart.Scale(0.5), Fill: 0.75, Tare: 2500 * units.Milligram},
			{Name: "quart bag", Nominal: quart, Fill: 0.75, Tare: 6 * units.Gram},
			{Name: "gallon bag", Nominal: 4 * quart, Fill: 0.75, Tare: 11 * units.Gram},
			{Name: "8 fl oz bottle", Nominal: quart.Scale(0.25), Fill: 0.9, Tare: 15 * units.Gram, Liquids: true},
			{Name: "quart bottle", Nominal: quart, Fill: 0.9, Tare: 35 * units.Gram, Liquids: true},
		}
	}
	return []BagType{
		{Name: "small bag", Nominal: 300 * units.Millilitre, Fill: 0.75, Tare: 2 * units.Gram},
		{Name: "half-litre bag", Nominal: 600 * units.Millilitre, Fill: 0.75, Tare: 2500 * units.Milligram},
		{Name: "1 L bag", Nominal: units.Litre, Fill: 0.75, Tare: 6 * units.Gram},
		{Name: "3 L bag", Nominal: 3 * units.Litre, Fill: 0.75, Tare: 10 * units.Gram},
		{Name: "small bottle", Nominal: 250 * units.Millilitre, Fill: 0.9, Tare: 15 * units.Gram, Liquids: true},
		{Name: "bottle", Nominal: units.Litre, Fill: 0.9, Tare: 35 * units.Gram, Liquids: true},
	}
}

// UsualFuels lists containers of common sizes (common practice, no source).
func UsualFuels() []FuelContainer {
	return []FuelContainer{
		{Fuel: GasMix, Name: "small gas canister", Net: 100 * units.Gram, Empty: 95 * units.Gram, Volume: 400 * units.Millilitre},
		{Fuel: GasMix, Name: "gas canister", Net: 230 * units.Gram, Empty: 150 * units.Gram, Volume: 850 * units.Millilitre},
		{Fuel: GasMix, Name: "large gas canister", Net: 450 * units.Gram, Empty: 200 * units.Gram, Volume: 1600 * units.Millilitre},
		{Fuel: WhiteGas, Name: "fuel bottle", Net: 600 * units.Gram, Empty: 150 * units.Gram, Volume: units.Litre},
		{Fuel: Ethanol, Name: "spirit bottle", Net: 700 * units.Gram, Empty: 60 * units.Gram, Volume: units.Litre},
	}
}

// NextID gives an ID that no element of a list has.
func NextID[E any, ID ~int64](list []E, of func(*E) ID) ID {
	next := ID(1)
	for i := range list {
		next = max(next, of(&list[i])+1)
	}
	return next
}
