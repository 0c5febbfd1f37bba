// Command logistics_cases writes random cases of the two solvers of logistics
// with their answers as JSON, for logistics_milp.py to solve again.
//
//	go run ./testdata/solvers/logistics_cases > cases.json
package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"

	"sumpter/domain/solve/stops"
	"sumpter/domain/solve/wholepacks"
)

type packCase struct {
	Item  wholepacks.Item
	Cost  int64 // -1: infeasible
	Left  int64
	Packs int64
}

type stopCase struct {
	Problem stops.Problem
	Front   [][2]int64 // cost, peak; empty: infeasible
}

type basketCase struct {
	Basket wholepacks.Basket
	Cost   int64 // visits paid; -1: infeasible
	Proven bool
}

func main() {
	var out struct {
		Packs   []packCase
		Stops   []stopCase
		Baskets []basketCase
		Larges  []basketCase
	}
	r := rand.New(rand.NewPCG(20, 26))
	for range 500 {
		out.Packs = append(out.Packs, packs(r))
	}
	for range 60 {
		out.Stops = append(out.Stops, route(r))
	}
	for range 100 {
		out.Baskets = append(out.Baskets, basket(r, 2+r.IntN(3), 3+r.IntN(10), 3))
	}
	for range 40 {
		out.Larges = append(out.Larges, basket(r, 3+r.IntN(3), 20+r.IntN(41), 2))
	}
	if err := json.NewEncoder(os.Stdout).Encode(out); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func packs(r *rand.Rand) packCase {
	it := wholepacks.Item{Name: "food", Keeps: r.IntN(3) > 0}
	for range 1 + r.IntN(4) {
		it.NeedGrams = append(it.NeedGrams, int64(r.IntN(6)*r.IntN(700)))
	}
	for range 1 + r.IntN(5) {
		p := wholepacks.Package{NetGrams: int64(2+r.IntN(20)) * 50}
		unit := float64(30+r.IntN(60)) / 100
		for range it.NeedGrams {
			o := wholepacks.Offer{PriceCents: int64(float64(p.NetGrams)*unit) + int64(r.IntN(40)), Available: wholepacks.Unlimited}
			if r.IntN(4) == 0 {
				o.Available = int64(r.IntN(6))
			}
			p.Offers = append(p.Offers, o)
		}
		it.Packages = append(it.Packages, p)
	}
	got, err := wholepacks.Solve(it)
	var short *wholepacks.ShortError
	if errors.As(err, &short) {
		return packCase{Item: it, Cost: -1}
	}
	return packCase{it, got.CostCents, got.LeftGrams, got.Packages}
}

// basket is some foods of some shops with visit fees, prices by the many and,
// one shop in so many, least orders.
func basket(r *rand.Rand, shops, foods, oneIn int) basketCase {
	var b wholepacks.Basket
	for s := range shops {
		shop := wholepacks.Shop{Name: fmt.Sprint("shop ", s), VisitCents: []int64{int64(r.IntN(4) * 250)}, LeastCents: []int64{0}}
		if r.IntN(oneIn) == 0 {
			shop.LeastCents[0] = int64(1500 + r.IntN(4000))
			if foods > 20 {
				shop.LeastCents[0] *= int64(2 + r.IntN(3))
			}
		}
		b.Shops = append(b.Shops, shop)
	}
	for range foods {
		it := wholepacks.Item{Name: "food", NeedGrams: []int64{int64(100 + r.IntN(3000))}, Keeps: true}
		for range 1 + r.IntN(4) {
			p := wholepacks.Package{NetGrams: int64(2+r.IntN(20)) * 50, Shop: r.IntN(len(b.Shops)), OneStock: true}
			o := wholepacks.Offer{PriceCents: p.NetGrams*int64(30+r.IntN(60))/100 + int64(r.IntN(40)), Available: wholepacks.Unlimited}
			if r.IntN(3) == 0 {
				o.ManyFrom, o.ManyCents = int64(2+r.IntN(4)), o.PriceCents*int64(75+r.IntN(20))/100
			}
			if r.IntN(5) == 0 {
				o.Available = int64(1 + r.IntN(6))
			}
			p.Offers = []wholepacks.Offer{o}
			it.Packages = append(it.Packages, p)
		}
		b.Items = append(b.Items, it)
	}
	got, err := wholepacks.SolveBasket(b)
	if err != nil {
		return basketCase{Basket: b, Cost: -1}
	}
	return basketCase{b, got.CostCents, got.Proven}
}

func route(r *rand.Rand) stopCase {
	days := 6 + r.IntN(13)
	p := stops.Problem{CarryCents: int64(5 + r.IntN(30)), WholeLegs: r.IntN(3) == 0}
	room := int64(4+r.IntN(6)) * 9000
	for range days {
		p.FoodGrams = append(p.FoodGrams, int64(7000+r.IntN(2500)))
		p.RoomGrams = append(p.RoomGrams, room)
	}
	for d := 1 + r.IntN(3); d < days; d += 1 + r.IntN(3) {
		pt := stops.Point{Day: d, StopCents: int64(r.IntN(900)), Detour: int64(r.IntN(12)), DetourCents: 80,
			ParcelGrams: stops.Boundless, Parcels: stops.Boundless}
		switch r.IntN(3) {
		case 0:
			pt.ParcelGrams, pt.Parcels, pt.ParcelCents = 10_000, int64(1+r.IntN(4)), int64(r.IntN(900))
		case 1:
			pt.PremiumCents = int64(r.IntN(80))
		}
		p.Points = append(p.Points, pt)
	}
	c := stopCase{Problem: p}
	front, err := stops.Unbeaten(p)
	if err != nil {
		return c
	}
	for _, choice := range front.Choices {
		c.Front = append(c.Front, [2]int64{choice.Cost, choice.PeakGrams})
	}
	return c
}
