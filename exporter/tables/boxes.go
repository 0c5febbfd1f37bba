package tables

import (
	"fmt"
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/resupply"
)

func boxesTable(x *index) Table {
	rows := make([]*resupply.Box, len(x.plan.Resupply.Boxes))
	for i := range rows {
		rows[i] = &x.plan.Resupply.Boxes[i]
	}
	return fill(Table{
		Name: "boxes", Title: "Boxes sent ahead",
		About: "What waits where, and when it must be posted. Ask the place itself whether it takes and keeps the box.",
		Empty: "No box is sent ahead: everything is carried from the start.",
	}, []field[*resupply.Box]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(*resupply.Box) Value { return open() }},
		{Column{Key: "point", Heading: "Waits at", Width: 18, Wrap: true}, func(b *resupply.Box) Value { return words(x.point(b.Point)) }},
		{Column{Key: "address", Heading: "Label", Width: 24, Wrap: true}, func(b *resupply.Box) Value { return words(orNone(strings.Join(b.Label.To, "\n"), "nothing entered")) }},
		{Column{Key: "back", Heading: "Back to", Width: 20, Wrap: true}, func(b *resupply.Box) Value { return words(orNone(strings.Join(b.Label.From, "\n"), "nothing entered")) }},
		{Column{Key: "feeds", Heading: "Feeds", Width: 11}, func(b *resupply.Box) Value { return words(x.leg(b.Leg)) }},
		{Column{Key: "how", Heading: "How", Width: 11, Wrap: true}, func(b *resupply.Box) Value {
			if b.Posted {
				return words("by post")
			}
			return words("brought by somebody")
		}},
		{Column{Key: "sender", Heading: "Sent by", Width: 16, Wrap: true}, func(b *resupply.Box) Value { return words(x.sender(b)) }},
		{Column{Key: "send_on", Heading: "Leaves home", Width: 15}, func(b *resupply.Box) Value { return dated(b.SendOn) }},
		{Column{Key: "post_from", Heading: "Post not before", Width: 15}, func(b *resupply.Box) Value {
			if b.Posted && !b.PostFrom.IsSet() {
				return words("no limit known: ask")
			}
			return postDate(b, dated(b.PostFrom))
		}},
		{Column{Key: "post_by", Heading: "Post by", Width: 15}, func(b *resupply.Box) Value { return postDate(b, dated(b.PostBy)) }},
		{Column{Key: "pick_up", Heading: "Picked up on", Width: 15}, func(b *resupply.Box) Value { return dated(b.PickUp) }},
		{Column{Key: "fetched", Heading: "Fetched by", Width: 16, Wrap: true}, func(b *resupply.Box) Value { return words(x.collector(b)) }},
		{Column{Key: "bags", Heading: "Bags", Width: 6}, func(b *resupply.Box) Value { return count(len(b.Bags)) }},
		{Column{Key: "parcels", Heading: "Parcels", Width: 8}, func(b *resupply.Box) Value { return count(len(b.Parcels)) }},
		{Column{Key: "mass", Heading: "Mass (" + x.loadUnit() + ")", Decimals: 2, Width: 9}, func(b *resupply.Box) Value { return x.load(b.Mass) }},
		{Column{Key: "volume", Heading: "Volume (" + x.drinkUnit() + ")", Decimals: 1, Width: 9}, func(b *resupply.Box) Value { return x.drink(b.Volume) }},
		{Column{Key: "fees", Heading: "Fees (" + x.trip.Currency + ")", Decimals: x.moneyDecimals(), Width: 10}, func(b *resupply.Box) Value { return x.money(b.Fees) }},
		{Column{Key: "fuel", Heading: "Fuel", Width: 18, Wrap: true}, func(b *resupply.Box) Value { return words(fuelWords(b)) }},
	}, rows)
}

func postDate(b *resupply.Box, date Value) Value {
	if !b.Posted {
		return words("not posted")
	}
	return date
}

// sender is who sends or brings a box.
func (x *index) sender(b *resupply.Box) string {
	point := x.Point(b.Point)
	switch {
	case point == nil:
		return Unknown
	case point.Sending.Sender != 0:
		return x.member(point.Sending.Sender)
	default:
		return orNone(point.Sending.Helper, "nobody named")
	}
}

func (x *index) collector(b *resupply.Box) string {
	if point := x.Point(b.Point); point != nil && point.Sending.Collector != 0 {
		return x.member(point.Sending.Collector)
	}
	return "nobody named"
}

func fuelWords(b *resupply.Box) string {
	switch {
	case len(b.Fuel) == 0:
		return "none"
	case b.FuelBoughtThere:
		return fmt.Sprintf("%d %s bought there", len(b.Fuel), plural(len(b.Fuel), "container", "containers"))
	case !b.Posted:
		return fmt.Sprintf("%d %s brought along", len(b.Fuel), plural(len(b.Fuel), "container", "containers"))
	default:
		return fmt.Sprintf("%d %s sent, where the carrier allows it", len(b.Fuel), plural(len(b.Fuel), "container", "containers"))
	}
}

// boxBagRow is one bag in one parcel of one box.
type boxBagRow struct {
	box    *resupply.Box
	parcel int
	bag    *bags.Bag
}

func boxBagsTable(x *index) Table {
	var rows []boxBagRow
	for i := range x.plan.Resupply.Boxes {
		box := &x.plan.Resupply.Boxes[i]
		if len(box.Parcels) == 0 {
			for _, key := range box.Bags {
				rows = append(rows, boxBagRow{box, 1, x.bag(key)})
			}
		}
		for j := range box.Parcels {
			for _, key := range box.Parcels[j].Bags {
				rows = append(rows, boxBagRow{box, j + 1, x.bag(key)})
			}
		}
	}
	return groupBy(fill(Table{
		Name: "box_contents", Title: "What is in which box",
		About: "Tick each bag as it goes into its box.",
		Empty: "No box is sent ahead.",
	}, []field[boxBagRow]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(boxBagRow) Value { return open() }},
		{Column{Key: "point", Heading: "Box for", Width: 24, Wrap: true}, func(r boxBagRow) Value { return words(x.point(r.box.Point)) }},
		{Column{Key: "parcel", Heading: "Parcel", Width: 7}, func(r boxBagRow) Value { return count(r.parcel) }},
		{Column{Key: "code", Heading: "Label", Role: Code, Width: 11}, func(r boxBagRow) Value { return words(r.bag.Code) }},
		{Column{Key: "day", Heading: "Day", Width: 5}, func(r boxBagRow) Value { return count(r.bag.Day) }},
		{Column{Key: "meal", Heading: "Meal", Width: 10}, func(r boxBagRow) Value { return words(bagMeal(r.bag)) }},
		{Column{Key: "for", Heading: "For", Width: 18, Wrap: true}, func(r boxBagRow) Value { return words(x.bagEaters(r.bag)) }},
		{Column{Key: "recipe", Heading: "Dish", Width: 30, Wrap: true}, func(r boxBagRow) Value { return words(x.bagDish(r.bag)) }},
		{Column{Key: "allergens", Heading: "Allergens", Role: Danger, Width: 34, Wrap: true}, func(r boxBagRow) Value { return words(allergenWords(r.bag.Allergens)) }},
		{Column{Key: "mass", Heading: "With tare (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 9}, func(r boxBagRow) Value { return x.food(r.box.Sent(r.bag)) }},
	}, rows), rows, func(r boxBagRow) boxGroup { return boxGroup{r.box, r.parcel} })
}

// boxGroup is a parcel of a box.
type boxGroup struct {
	box    *resupply.Box
	parcel int
}
