package carry

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/solve/fairsplit"
)

// addClasses limits how much of a group's dinners and fuel one pack may hold,
// so that a lost pack never ends the trip. A class of which one piece, or one
// carrier's equal part, already is more than the share is held to that.
func (c *calculation) addClasses(p *fairsplit.Problem) {
	type class struct {
		total, largest int64
		pieces         int
		carriers       map[int]bool
	}
	classes := map[string]*class{}
	var names []string
	for _, item := range p.Items {
		if item.Class == "" {
			continue
		}
		k := classes[item.Class]
		if k == nil {
			k = &class{carriers: map[int]bool{}}
			classes[item.Class] = k
			names = append(names, item.Class)
		}
		k.total += item.Energy
		k.largest = max(k.largest, item.Energy)
		k.pieces++
		for _, seat := range item.Allowed {
			k.carriers[seat] = true
		}
	}
	slices.Sort(names)
	for _, name := range names {
		share := c.Trip.Settings.DinnerShare
		if strings.HasPrefix(name, fuelOf) {
			share = c.Trip.Settings.FuelShare
		}
		k := classes[name]
		if share >= 1 || k.pieces < 2 || len(k.carriers) < 2 {
			share = 1
		}
		least := max(k.largest, ceilDivide(k.total, int64(len(k.carriers))))
		limit := max(int64(math.Floor(share*float64(k.total))), least)
		p.Classes = append(p.Classes, fairsplit.Class{Name: name, Share: fairsplit.Ratio{Num: limit, Den: max(1, k.total)}})
	}
}

// What the solver's classes are called: the group's ID follows.
const (
	dinnersOf = "dinners of group "
	fuelOf    = "fuel of group "
)

// className is how people call a class.
func (c *calculation) className(class string) prose.Text {
	for i := range c.Trip.Groups {
		group := &c.Trip.Groups[i]
		switch id := strconv.FormatInt(int64(group.ID), 10); class {
		case dinnersOf + id:
			return prose.Say("dinners of %s", group.Name)
		case fuelOf + id:
			return prose.Say("fuel of %s", group.Name)
		}
	}
	return prose.Verbatim(class)
}

func ceilDivide(a, b int64) int64 {
	if b <= 0 {
		return a
	}
	return (a + b - 1) / b
}

// onlyClasses tells whether nothing but the rules about lost packs stands in
// the way.
func onlyClasses(solved fairsplit.Result) bool {
	for _, overrun := range solved.Overruns {
		if overrun.Limit != fairsplit.ClassLimit {
			return false
		}
	}
	return len(solved.Overruns) > 0
}

func dropClasses(p *fairsplit.Problem) {
	for i := range p.Classes {
		p.Classes[i].Share = fairsplit.Ratio{Num: 1, Den: 1}
	}
}

// sayClassesDropped tells which packs hold more of a class than the trip
// allows, where that rule gave way.
func (c *calculation) sayClassesDropped(r run, pieces []piece, carrier []int) {
	for _, class := range c.dropped {
		inPack := make([]int64, len(r.present))
		total := int64(0)
		for i := range pieces {
			if pieces[i].class == class.Name && carrier[i] != fairsplit.Nobody {
				inPack[carrier[i]] += pieces[i].energy
				total += pieces[i].energy
			}
		}
		var names []prose.Text
		for seat, energy := range inPack {
			if energy*class.Share.Den > total*class.Share.Num {
				names = append(names, prose.Say("%s %.0f %%", c.Trip.Crew[r.present[seat]].Name, math.Ceil(100*float64(energy)/float64(total))))
			}
		}
		if len(names) > 0 {
			c.find(findings.LookAt, "lost-pack", findings.Place{Day: r.first},
				prose.Say("More of the %s than the trip allows in one pack: %s.", c.className(class.Name), joinNames(names)),
				prose.Say("With whole bags, and the limits of the packs, no split keeps that rule."),
				prose.Say("Allow a larger part in one pack, or pack that food in smaller bags."))
		}
	}
}
