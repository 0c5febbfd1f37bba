package fairsplit

import (
	"errors"
	"fmt"
)

// Unlimited is a mass or volume limit that never binds.
const Unlimited = int64(1) << 40

// most is the largest sum of grams, millilitres or energy a problem may hold.
const most = int64(1) << 30

// Problem is one leg: who walks, what has to be carried, and for how long.
type Problem struct {
	Days        int     // mornings of the leg, at least 1
	HoursTenths []int64 // walking time of each day in tenths of an hour; all 0 counts as all equal
	Crew        []Member
	Items       []Item
	Classes     []Class
}

// Member is somebody who may carry.
type Member struct {
	Strength  int64 // carrying capability in any unit common to the crew; 0 carries nothing
	BaseGrams int64 // own kit
	MaxGrams  int64 // hard limit of the load on the first morning, own kit included
	VolumeMl  int64 // room left in the pack for items
}

// Item is one piece that a single member carries for the whole leg.
type Item struct {
	MassGrams     int64
	VolumeMl      int64
	GoneAfter     int     // last day carried at full mass, 1 to Days
	ResidualGrams int64   // what is left to carry on later days, such as an empty cartridge
	Mornings      []int64 // grams of each morning up to GoneAfter, if they fall before it: from MassGrams, never growing; nil: all MassGrams
	Energy        int64   // weight of the item within its class
	Class         string  // name of its class, empty for none
	Allowed       []int   // members who may carry it; nil is anyone, empty is nobody
}

// Class is a kind of item of which no single pack may hold too much, so that one
// lost pack does not end the trip.
type Class struct {
	Name  string
	Share Ratio // largest part of the class's energy in one pack
}

// Ratio is an exact fraction with a positive denominator.
type Ratio struct{ Num, Den int64 }

// Validate reports the first thing in p that has no meaning, naming the place.
func (p Problem) Validate() error {
	if p.Days < 1 {
		return errors.New("fairsplit: a leg needs at least one day")
	}
	if len(p.HoursTenths) != p.Days {
		return fmt.Errorf("fairsplit: %d days but hours for %d: give one figure per day", p.Days, len(p.HoursTenths))
	}
	for d, h := range p.HoursTenths {
		if h < 0 || h > 1000 {
			return fmt.Errorf("fairsplit: day %d: %d tenths of an hour is outside 0 to 1000", d+1, h)
		}
	}
	known := map[string]bool{"": true}
	for c, class := range p.Classes {
		if class.Name == "" || known[class.Name] {
			return fmt.Errorf("fairsplit: class %d: name %q is empty or given twice", c, class.Name)
		}
		if class.Share.Den < 1 || class.Share.Num < 0 || class.Share.Num > most || class.Share.Den > most {
			return fmt.Errorf("fairsplit: class %q: share %d/%d is no fraction", class.Name, class.Share.Num, class.Share.Den)
		}
		known[class.Name] = true
	}
	if err := p.validateCrew(); err != nil {
		return err
	}
	return p.validateItems(known)
}

func (p Problem) validateCrew() error {
	total := int64(0)
	for i, m := range p.Crew {
		if m.Strength < 0 || m.Strength > 1<<20 {
			return fmt.Errorf("fairsplit: member %d: strength %d is outside 0 to %d", i, m.Strength, 1<<20)
		}
		if m.BaseGrams < 0 || m.BaseGrams > most || m.MaxGrams < 0 || m.VolumeMl < 0 {
			return fmt.Errorf("fairsplit: member %d: own kit, limit and room must not be negative", i)
		}
		total += m.BaseGrams
	}
	if total > most {
		return fmt.Errorf("fairsplit: own kits of %d g together are more than can be right", total)
	}
	return nil
}

func (p Problem) validateItems(known map[string]bool) error {
	var grams, volume, energy int64
	for j, it := range p.Items {
		if it.MassGrams < 0 || it.VolumeMl < 0 || it.Energy < 0 || it.MassGrams > most || it.VolumeMl > most || it.Energy > most {
			return fmt.Errorf("fairsplit: item %d: mass, volume and energy must be 0 to %d", j, most)
		}
		if it.ResidualGrams < 0 || it.ResidualGrams > it.MassGrams {
			return fmt.Errorf("fairsplit: item %d: %d g are left of %d g", j, it.ResidualGrams, it.MassGrams)
		}
		if it.GoneAfter < 1 || it.GoneAfter > p.Days {
			return fmt.Errorf("fairsplit: item %d: day %d is outside the leg of %d days", j, it.GoneAfter, p.Days)
		}
		if err := it.validateMornings(); err != nil {
			return fmt.Errorf("fairsplit: item %d: %w", j, err)
		}
		if !known[it.Class] {
			return fmt.Errorf("fairsplit: item %d: class %q is not in the list of classes", j, it.Class)
		}
		for _, i := range it.Allowed {
			if i < 0 || i >= len(p.Crew) {
				return fmt.Errorf("fairsplit: item %d: there is no member %d to carry it", j, i)
			}
		}
		grams, volume, energy = grams+it.MassGrams, volume+it.VolumeMl, energy+it.Energy
	}
	if grams > most || volume > most || energy > most {
		return errors.New("fairsplit: items weigh or measure more together than can be right")
	}
	return nil
}

// validateMornings: an item of which some is eaten each day only gets lighter.
func (it *Item) validateMornings() error {
	if it.Mornings == nil {
		return nil
	}
	if len(it.Mornings) != it.GoneAfter || it.Mornings[0] != it.MassGrams {
		return fmt.Errorf("%d mornings are told, it weighs %d g until day %d", len(it.Mornings), it.MassGrams, it.GoneAfter)
	}
	for d, grams := range it.Mornings {
		if grams < it.ResidualGrams || d > 0 && grams > it.Mornings[d-1] {
			return fmt.Errorf("%d g on day %d: an item never gets heavier nor lighter than what is left of it", grams, d+1)
		}
	}
	return nil
}

// grams is what the item weighs on a morning, from 1.
func (it *Item) grams(day int) int64 {
	switch {
	case day > it.GoneAfter:
		return it.ResidualGrams
	case it.Mornings != nil:
		return it.Mornings[day-1]
	default:
		return it.MassGrams
	}
}
