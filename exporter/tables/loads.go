package tables

import (
	"fmt"
	"strings"

	"sumpter/domain/carry"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// loadRow is one member on one morning.
type loadRow struct {
	member *carry.Member
	number int
	day    *carry.Day
}

func loadsTable(x *index) Table {
	var rows []loadRow
	for i := range x.plan.Carry.Members {
		member := &x.plan.Carry.Members[i]
		for j := range member.Days {
			if member.Days[j].Present {
				rows = append(rows, loadRow{member, j + 1, &member.Days[j]})
			}
		}
	}
	unit := " (" + x.loadUnit() + ")"
	mass := func(key, heading string, of func(*carry.Day) units.Mass) field[loadRow] {
		return field[loadRow]{Column{Key: key, Heading: heading + unit, Decimals: 2, Width: 9}, func(r loadRow) Value { return x.load(of(r.day)) }}
	}
	return groupBy(fill(Table{
		Name: "loads", Title: "Loads, by member and morning",
		About: "Load is own kit, food, gear, fuel and waste; its share is load / carrying capability. Water to a dry camp comes on top and is shown apart.",
		Empty: "Nobody carries anything yet.",
	}, []field[loadRow]{
		{Column{Key: "member", Heading: "Member", Width: 18}, func(r loadRow) Value { return words(x.member(r.member.Member)) }},
		{Column{Key: "day", Heading: "Day", Width: 5}, func(r loadRow) Value { return count(r.number) }},
		{Column{Key: "date", Heading: "Date", Width: 15}, func(r loadRow) Value { return x.date(r.number) }},
		mass("own_kit", "Own kit", func(d *carry.Day) units.Mass { return d.OwnKit }),
		mass("food", "Food", func(d *carry.Day) units.Mass { return d.Food }),
		mass("gear", "Gear", func(d *carry.Day) units.Mass { return d.Gear }),
		mass("fuel", "Fuel", func(d *carry.Day) units.Mass { return d.Fuel }),
		mass("waste", "Waste", func(d *carry.Day) units.Mass { return d.Waste }),
		{Column{Key: "waste_room", Heading: "Room of waste (" + x.drinkUnit() + ")", Decimals: 1, Width: 9}, func(r loadRow) Value { return x.drink(r.day.WasteRoom) }},
		mass("load", "Load", func(d *carry.Day) units.Mass { return d.Load }),
		{Column{Key: "capability", Heading: "Capability" + unit, Decimals: 1, Width: 10}, func(r loadRow) Value { return x.load(r.member.Capability) }},
		{Column{Key: "share", Heading: "Share of capability", Role: Percent, Width: 11}, func(r loadRow) Value { return figure(r.day.Share) }},
		{Column{Key: "fair", Heading: "Fair share that day", Role: Percent, Width: 11}, func(r loadRow) Value { return x.fair(r.number) }},
		mass("water", "Water on top", func(d *carry.Day) units.Mass { return d.Water }),
		{Column{Key: "volume", Heading: "Shared things (" + x.drinkUnit() + ")", Decimals: 1, Width: 11}, func(r loadRow) Value { return x.drink(r.day.Volume) }},
	}, rows), rows, func(r loadRow) trip.MemberID { return r.member.Member })
}

// fair gives the fair level of a day.
func (x *index) fair(day int) Value {
	if level, ok := fairLevel(x.plan.Carry, day); ok {
		return figure(level)
	}
	return words(Unknown)
}

// fairLevel gives the share everybody would carry on a day if loads could be
// split to the gram, as the carry stage worked it out.
func fairLevel(result carry.Result, day int) (level float64, ok bool) {
	for i := range result.Stages {
		stage := &result.Stages[i]
		if place := day - stage.FirstDay; day <= stage.LastDay && place >= 0 && place < len(stage.Fair) {
			return stage.Fair[place], true
		}
	}
	return 0, false
}

// itemRow is one thing carried on one stretch of days.
type itemRow struct {
	stage *carry.Stage
	item  carry.Item
}

func carriersTable(x *index) Table {
	var rows []itemRow
	for i := range x.plan.Carry.Stages {
		stage := &x.plan.Carry.Stages[i]
		for _, member := range x.trip.Crew {
			for _, item := range stage.Items {
				if item.Carrier == member.ID {
					rows = append(rows, itemRow{stage, item})
				}
			}
		}
		for _, item := range stage.Items {
			if x.Member(item.Carrier) == nil {
				rows = append(rows, itemRow{stage, item})
			}
		}
	}
	return groupBy(fill(Table{
		Name: "who_carries", Title: "Who carries what",
		About: "One row a thing, for each stretch of days in which nothing changes hands.",
		Empty: "Nobody carries anything yet.",
	}, []field[itemRow]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(itemRow) Value { return open() }},
		{Column{Key: "days", Heading: "On", Width: 13}, func(r itemRow) Value { return words(dayRange(r.stage.FirstDay, r.stage.LastDay)) }},
		{Column{Key: "member", Heading: "Carried by", Width: 18}, func(r itemRow) Value { return words(x.member(r.item.Carrier)) }},
		{Column{Key: "kind", Heading: "Kind", Width: 8}, func(r itemRow) Value { return words(string(r.item.Kind)) }},
		{Column{Key: "item", Heading: "Thing", Role: Code, Width: 24, Wrap: true}, func(r itemRow) Value { return words(x.itemName(r.item)) }},
		{Column{Key: "about", Heading: "What it is", Width: 34, Wrap: true}, func(r itemRow) Value { return words(x.itemAbout(r.item)) }},
		{Column{Key: "mass", Heading: "Mass (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 9}, func(r itemRow) Value { return x.itemMass(r.item) }},
		{Column{Key: "why", Heading: "Why", Width: 44, Wrap: true}, func(r itemRow) Value { return words(orNone(x.text(r.item.Why), "no reason given")) }},
	}, rows), rows, func(r itemRow) carrierGroup { return carrierGroup{r.stage.FirstDay, r.item.Carrier} })
}

// carrierGroup is what one member carries on one stretch of days.
type carrierGroup struct {
	firstDay int
	member   trip.MemberID
}

func (x *index) itemName(item carry.Item) string {
	switch item.Kind {
	case carry.BagItem:
		return x.bag(item.Key).Code
	case carry.GearItem:
		if gear := x.Gear(item.Key); gear != nil {
			return gear.Name
		}
	case carry.FuelItem:
		if container := x.Fuel(item.Key); container != nil {
			return container.Name
		}
	case carry.WasteItem:
		return "rubbish"
	}
	return item.Key
}

func (x *index) itemAbout(item carry.Item) string {
	switch item.Kind {
	case carry.BagItem:
		bag := x.bag(item.Key)
		return fmt.Sprintf("%s, %s: %s", dayRange(bag.Day, bag.LastDay), bagMeal(bag), x.bagDish(bag))
	case carry.GearItem:
		if gear := x.Gear(item.Key); gear != nil {
			return string(gear.Kind)
		}
	case carry.FuelItem:
		if container := x.Fuel(item.Key); container != nil && container.EmptyFrom > 0 {
			return fmt.Sprintf("full at the start, empty from day %d", container.EmptyFrom)
		}
		return "fuel"
	}
	return "wrappings of what was eaten"
}

func (x *index) itemMass(item carry.Item) Value {
	switch item.Kind {
	case carry.BagItem:
		if bag := x.Bag(item.Key); bag != nil {
			return x.food(bag.Mass())
		}
	case carry.GearItem:
		if gear := x.Gear(item.Key); gear != nil {
			return x.food(gear.Mass)
		}
	case carry.FuelItem:
		if container := x.Fuel(item.Key); container != nil {
			return x.food(container.Fuel + container.Empty)
		}
	case carry.WasteItem:
		return words("see loads")
	}
	return words(Unknown)
}

func splitsTable(x *index) Table {
	rows := make([]*carry.Stage, len(x.plan.Carry.Stages))
	for i := range rows {
		rows[i] = &x.plan.Carry.Stages[i]
	}
	share := func(key, heading string, of func(*carry.Stage) float64) field[*carry.Stage] {
		return field[*carry.Stage]{Column{Key: key, Heading: heading, Role: Percent, Width: 14}, func(s *carry.Stage) Value { return figure(of(s)) }}
	}
	return fill(Table{
		Name: "splits", Title: "How fair the split is",
		About: "Shares are load / carrying capability. No split whatever can be below the bound.",
		Empty: "Nobody carries anything yet.",
	}, []field[*carry.Stage]{
		{Column{Key: "days", Heading: "On", Width: 14}, func(s *carry.Stage) Value { return words(dayRange(s.FirstDay, s.LastDay)) }},
		share("worst", "Heaviest share", func(s *carry.Stage) float64 { return s.Worst }),
		share("worst_bound", "Its bound", func(s *carry.Stage) float64 { return s.WorstBound }),
		share("mean", "Heaviest over the days", func(s *carry.Stage) float64 { return s.Mean }),
		share("mean_bound", "Bound over the days", func(s *carry.Stage) float64 { return s.MeanBound }),
		{Column{Key: "proven", Heading: "Proven best", Width: 11}, func(s *carry.Stage) Value { return yesNo(s.Proven) }},
		{Column{Key: "hand_overs", Heading: "Things changing hands", Width: 12}, func(s *carry.Stage) Value { return count(s.HandOvers) }},
		{Column{Key: "dish_packs", Heading: "Packs to a dish of several bags", Decimals: 1, Width: 14}, func(s *carry.Stage) Value { return figure(s.DishPacks) }},
		{Column{Key: "over", Heading: "Over a fair load by more than 2 %", Width: 60, Wrap: true}, func(s *carry.Stage) Value { return words(orNone(x.over(s), "nobody, on any day")) }},
	}, rows)
}

// over names who is over the fair level on a stage, on their worst morning.
func (x *index) over(stage *carry.Stage) string {
	var lines []string
	for _, over := range stage.Over {
		lines = append(lines, fmt.Sprintf("%s, day %d: %s, %.1f %%. %s", x.member(over.Member), over.Day, over.Over.Format(x.system), 100*over.Part(), x.text(over.Why)))
	}
	return strings.Join(lines, "\n")
}

// choiceRow is one choice between few hand-overs and a fair load.
type choiceRow struct {
	stage  *carry.Stage
	choice carry.Choice
}

func splitChoicesTable(x *index) Table {
	var rows []choiceRow
	for i := range x.plan.Carry.Stages {
		stage := &x.plan.Carry.Stages[i]
		for _, choice := range stage.Choices {
			rows = append(rows, choiceRow{stage, choice})
		}
	}
	share := func(key, heading string, of func(carry.Choice) float64) field[choiceRow] {
		return field[choiceRow]{Column{Key: key, Heading: heading, Role: Percent, Width: 14}, func(r choiceRow) Value { return figure(of(r.choice)) }}
	}
	return fill(Table{
		Name: "split_choices", Title: "Few hand-overs or a fair load",
		About: "What nothing beats between the packs as they were at the last change by hand and the fairest split. Shares are load / carrying capability, without the packs of who holds more than a fair load in any case. Where no split was found that keeps all limits, how far packs together are over them counts before fairness.",
		Empty: "The split is free: no packs are kept.",
	}, []field[choiceRow]{
		{Column{Key: "days", Heading: "On", Width: 14}, func(r choiceRow) Value { return words(dayRange(r.stage.FirstDay, r.stage.LastDay)) }},
		{Column{Key: "must", Heading: "Must change packs", Width: 11}, func(r choiceRow) Value { return count(r.choice.Must) }},
		{Column{Key: "hand_overs", Heading: "Change for fairness", Width: 11}, func(r choiceRow) Value { return count(r.choice.HandOvers) }},
		share("worst", "Heaviest share", func(c carry.Choice) float64 { return c.Worst }),
		share("mean", "Heaviest over the days", func(c carry.Choice) float64 { return c.Mean }),
		{Column{Key: "aside", Heading: "Shares are without", Width: 22, Wrap: true}, func(r choiceRow) Value { return words(orNone(x.memberNames(r.stage.Aside), "nobody")) }},
		{Column{Key: "over_limit", Heading: "Over load limits (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 12}, func(r choiceRow) Value { return x.food(r.choice.OverLimit) }},
		{Column{Key: "over_room", Heading: "Over the room of packs (" + x.drinkUnit() + ")", Decimals: 1, Width: 12}, func(r choiceRow) Value { return x.drink(r.choice.OverRoom) }},
		{Column{Key: "over_part", Heading: "Packs with too large a part", Width: 12}, func(r choiceRow) Value { return count(r.choice.OverPart) }},
		{Column{Key: "taken", Heading: "Taken", Width: 8}, func(r choiceRow) Value { return yesNo(r.choice.Taken) }},
	}, rows)
}

// packChangesTable lists what is in another pack than before the last change
// by hand.
func packChangesTable(x *index) Table {
	var rows []decided[trip.HandOver]
	for i := range x.plan.Carry.Stages {
		stage := &x.plan.Carry.Stages[i]
		for at, choice := range stage.Choices {
			if choice.Taken {
				for _, over := range stage.Moved(x.trip.Kept, at) {
					rows = append(rows, decided[trip.HandOver]{stage.FirstDay, over})
				}
			}
		}
	}
	return fill(Table{
		Name: "pack_changes", Title: "What changes packs",
		About: "What goes into another pack than it was in at the last change by hand.",
		Empty: "Nothing changes packs.",
	}, []field[decided[trip.HandOver]]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(decided[trip.HandOver]) Value { return open() }},
		{Column{Key: "day", Heading: "From day", Width: 7}, func(r decided[trip.HandOver]) Value { return count(r.day) }},
		{Column{Key: "from", Heading: "Out of the pack of", Width: 22}, func(r decided[trip.HandOver]) Value { return words(x.member(r.what.From)) }},
		{Column{Key: "to", Heading: "Into the pack of", Width: 22}, func(r decided[trip.HandOver]) Value { return words(x.member(r.what.To)) }},
		{Column{Key: "thing", Heading: "Thing", Role: Code, Width: 24, Wrap: true}, func(r decided[trip.HandOver]) Value { return words(x.itemName(itemOf(r.what))) }},
		{Column{Key: "about", Heading: "What it is", Width: 34, Wrap: true}, func(r decided[trip.HandOver]) Value { return words(x.itemAbout(itemOf(r.what))) }},
	}, rows)
}

func itemOf(over trip.HandOver) carry.Item {
	thing := carry.ThingOf(over)
	return carry.Item{Kind: thing.Kind, Key: thing.Key}
}
