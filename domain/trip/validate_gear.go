package trip

import (
	"fmt"

	"sumpter/domain/prose"
)

func (c *checker) gearList() {
	if len(c.trip.Gear) > MaxGear {
		return
	}
	for i := range c.trip.Gear {
		item := &c.trip.Gear[i]
		c.at("gear", i, int64(item.ID), item.Name)
		word(c, "kind", "kind", item.Kind, GearKinds()...)
		if item.Group != 0 && !c.groups[item.Group] {
			c.missing("group", "cook group", int64(item.Group), "one of the cook groups, or nobody's")
		}
		c.within("mass_g", "mass", item.Mass.Kilograms(), 0, maxGearKilograms, "kg")
		c.within("volume_ml", "volume", item.Volume.Litres(), 0, maxGearLitres, "L")
		c.kitchen(item)
	}
}

// kitchen checks what matters to stoves and pots; other gear may leave it
// empty but not wrong.
func (c *checker) kitchen(item *Gear) {
	if item.Kind == Stove || item.Fuel != "" {
		word(c, "fuel", "fuel", item.Fuel, FuelKinds()...)
	}
	if item.Kind == Stove {
		c.within("power_w", "power", item.PowerWatts, minWatts, maxWatts, "W")
		c.within("efficiency", "efficiency", item.Efficiency, minEfficiency, 1, "")
	} else {
		c.within("power_w", "power", item.PowerWatts, 0, maxWatts, "W")
		c.within("efficiency", "efficiency", item.Efficiency, 0, 1, "")
	}
	if item.Kind == Pot {
		c.above("capacity_ml", "capacity", item.Capacity.Litres(), maxGearLitres, "L")
	} else {
		c.within("capacity_ml", "capacity", item.Capacity.Litres(), 0, maxGearLitres, "L")
	}
	c.within("heat_capacity_kj_per_kg_k", "heat capacity", item.HeatCapacity, 0, maxHeatCapacity, "kJ/(kg K)")
}

func (c *checker) fuels() {
	if len(c.trip.Fuels) > MaxFuels {
		return
	}
	for i := range c.trip.Fuels {
		can := &c.trip.Fuels[i]
		c.at("fuels", i, 0, can.Name)
		word(c, "fuel", "fuel", can.Fuel, FuelKinds()...)
		c.above("net_g", "mass of the fuel", can.Net.Kilograms(), maxPackageKilograms, "kg")
		c.within("empty_g", "mass when empty", can.Empty.Kilograms(), 0, maxPackageKilograms, "kg")
		c.within("volume_ml", "volume", can.Volume.Litres(), 0, maxGearLitres, "L")
		if price, known := can.Price.Get(); known {
			c.price("price", "price", price)
		}
	}
}

func (c *checker) bags() {
	if len(c.trip.Bags) > MaxBagTypes {
		return
	}
	for i := range c.trip.Bags {
		bag := &c.trip.Bags[i]
		c.at("bag_types", i, 0, bag.Name)
		if bag.Name == AsBought {
			c.add("name", prose.Say("the name %q has a meaning of its own", AsBought), prose.Say("another name"), prose.Say("Rename the kind of bag."))
		}
		c.above("nominal_ml", "nominal volume", bag.Nominal.Litres(), maxBagLitres, "L")
		c.above("fill", "share that may be filled", bag.Fill, 1, "")
		c.within("tare_g", "mass when empty", bag.Tare.Kilograms(), 0, maxTareKilograms, "kg")
	}
}

func (c *checker) pins() {
	if len(c.trip.Pins) > MaxPins {
		return
	}
	for i := range c.trip.Pins {
		pin := &c.trip.Pins[i]
		c.where = Where{List: "pins", Index: i + 1}
		if named := countOf(pin.Bag != "", pin.Gear != 0, pin.Fuel != ""); named != 1 {
			c.add("", prose.Say("the pin names not exactly one of bag, gear and fuel container"), prose.Say("one of the three"), prose.Say("Keep one of them, or take the pin out."))
		}
		if pin.Gear != 0 && !c.gear[pin.Gear] {
			c.missing("gear", "piece of gear", int64(pin.Gear), "one of the gear, or take the pin out")
		}
		c.line("bag", "key of the bag", pin.Bag)
		c.line("fuel_container", "key of the container", pin.Fuel)
		if !c.members[pin.Member] {
			c.missing("member", "member", int64(pin.Member), "one of the crew, or take the pin out")
		}
	}
	c.where = Where{List: "pins"}
	distinct(c, "", "pin", c.trip.Pins, func(p Pin) string {
		return fmt.Sprintf("%s member %d", HandOver{Bag: p.Bag, Gear: p.Gear, Fuel: p.Fuel}.thing(), p.Member)
	})
}

func countOf(facts ...bool) int {
	n := 0
	for _, is := range facts {
		if is {
			n++
		}
	}
	return n
}
