package stops

import (
	"fmt"
	"math"
)

// Millicents is money in thousandths of a cent.
type Millicents = int64

// Boundless as a room or a parcel limit means that there is none.
const Boundless = math.MaxInt64

// Limits of what the package accepts; they keep every sum inside 64 bits.
const (
	// MostDays is the longest trip.
	MostDays = 1000
	// MostDayGrams is the most that one day may eat.
	MostDayGrams = 1 << 24
	// MostCents is the highest amount of money in any field.
	MostCents = 1 << 30
	// MostRateCents is the highest amount per kilogram, parcel or unit of detour.
	MostRateCents = 1 << 16
)

// Problem is a trip as far as resupply goes.
type Problem struct {
	// FoodGrams that days 1.. eat, whole group.
	FoodGrams []int64
	// RoomGrams is the most the group can carry on the mornings of days 1.. .
	RoomGrams []int64
	// CarryCents is what carrying one kilogram one morning is worth, in cents.
	CarryCents int64
	// Points in any order. At most one is used at each boundary.
	Points []Point
	// WholeLegs forbids carrying supplies past a stop: each box then holds just
	// what is eaten until the next.
	WholeLegs bool
}

// Point is a place at the end of a day where supplies can be taken on.
type Point struct {
	// Day after which the point is reached, 1 to days-1. Others are never used.
	Day int
	// StopCents is due once if anything is taken on: what the visit costs.
	StopCents int64
	// Detour of a visit in a unit of the caller's choice; only compared and added.
	Detour int64
	// DetourCents is what one unit of detour is worth, in cents.
	DetourCents int64
	// ParcelCents is due for each parcel.
	ParcelCents int64
	// ParcelGrams is the most one parcel holds; [Boundless] for no parcels at
	// all (a shop): then ParcelCents is due once.
	ParcelGrams int64
	// Parcels is the most that can wait there; [Boundless] for any number.
	Parcels int64
	// ParcelsFor, if set, says how many parcels the supplies of days first to
	// last fill here, instead of their mass over ParcelGrams: bags come in sizes,
	// and what is bought on the spot fills none. It must always answer the same,
	// and any number of parcels may then wait there.
	ParcelsFor func(first, last int) int64 `json:"-"`
	// PremiumCents is the extra price of one kilogram taken on here, in cents.
	PremiumCents int64
	// Shut is empty for a usable point, else the reason why it is not, as the
	// user will read it.
	Shut string
}

// parcels needed for the g grams of days first to last.
func (p Point) parcels(first, last int, g int64) int64 {
	switch {
	case g == 0:
		return 0
	case p.ParcelsFor != nil:
		return p.ParcelsFor(first, last)
	default:
		return (g-1)/p.ParcelGrams + 1
	}
}

// free tells that taking on a gram more here never costs more than carrying it
// past: no parcel limit, fee or premium.
func (p Point) free() bool {
	return p.ParcelCents == 0 && p.PremiumCents == 0 && (p.ParcelGrams == Boundless || p.Parcels == Boundless)
}

func (p Problem) check() error {
	days := len(p.FoodGrams)
	if days == 0 || days > MostDays {
		return fmt.Errorf("resupply over %d days: give 1 to %d", days, MostDays)
	}
	if len(p.RoomGrams) != days {
		return fmt.Errorf("resupply: room for %d mornings of %d days: give one for each", len(p.RoomGrams), days)
	}
	for i, g := range p.FoodGrams {
		if g < 0 || g > MostDayGrams {
			return fmt.Errorf("resupply: day %d eats %d g: give 0 to %d", i+1, g, MostDayGrams)
		}
	}
	if p.CarryCents < 0 || p.CarryCents > MostRateCents {
		return fmt.Errorf("resupply: carrying at %d cents per kg and morning: give 0 to %d", p.CarryCents, MostRateCents)
	}
	for i, pt := range p.Points {
		if err := pt.check(); err != nil {
			return fmt.Errorf("resupply: point %d at day %d: %w", i+1, pt.Day, err)
		}
	}
	return nil
}

func (p Point) check() error {
	if p.ParcelsFor != nil && p.Parcels != Boundless {
		return fmt.Errorf("number of parcels is %d where they are counted by bags: give no limit", p.Parcels)
	}
	for _, v := range []struct {
		what   string
		amount int64
		least  int64
		most   int64
	}{
		{"cost of a stop", p.StopCents, 0, MostCents},
		{"detour", p.Detour, 0, 1 << 20},
		{"cost of a detour", p.DetourCents, 0, MostRateCents},
		{"fee per parcel", p.ParcelCents, 0, MostRateCents},
		{"premium per kg", p.PremiumCents, 0, MostRateCents},
		{"parcel size", p.ParcelGrams, 1, Boundless},
		{"number of parcels", p.Parcels, 0, Boundless},
	} {
		if v.amount < v.least || v.amount > v.most {
			return fmt.Errorf("%s is %d: give %d to %d", v.what, v.amount, v.least, v.most)
		}
	}
	return nil
}
