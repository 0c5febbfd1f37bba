package bags

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// handling is what must not be packed with other foods, and why.
type handling int

const (
	together handling = iota // dry foods and whole pieces
	crushing                 // breaks under the rest
	counted                  // handed round by the piece
	melting                  // turns soft and runs
	fresh                    // needs cold, or nobody knows: damp
	wet                      // runs
	asBought                 // stays in its package
)

// word is the handling in a bag key.
func (h handling) word() string {
	return [...]string{"", "crush", "count", "melt", "fresh", "wet", "bought"}[h]
}

// alone tells whether each food of the handling has a bag of its own, where
// several eaters share it or not.
func (h handling) alone(shared bool) bool { return h >= melting || shared && h != together }

// handling of a food, by what would spoil the bag most.
func (w *ware) handling(melts bool) handling {
	f := w.food
	switch {
	case f.PackedAsBought:
		return asBought
	case w.runs():
		return wet
	case melts:
		return melting
	case f.Storage.Control() != trip.TCSNo:
		return fresh
	case f.Storage.Crushable:
		return crushing
	default:
		return together
	}
}

// lotKey says what is packed together: all amounts with the same key.
type lotKey struct {
	kind     Kind
	day      int           // first for which it is packed
	meal     trip.Meal     // of one meal only
	group    trip.GroupID  //
	recipe   trip.RecipeID // of one dish only
	run      int           // of one batch of it only
	member   trip.MemberID // of one eater only
	clean    string        // for pots of these eaters, who are kept from traces
	place    trip.Place    // for one meal only
	handling handling
	food     trip.FoodID // only this food; where foods are mixed, the first of a set of its own
}

// mixed tells whether foods of several eaters come into one bag and are
// shared out from it.
func (key lotKey) mixed() bool {
	return key.kind == MealBag && key.place == trip.AtBowl && key.handling == together
}

// setHandling chooses how a food for the bowls is packed. What one eater gets
// in a package, or by the piece, lies in the bag with the rest.
func (key *lotKey) setHandling(w *ware, melts bool) {
	key.handling = w.handling(melts)
	shared := key.member == 0
	switch {
	case !shared && key.handling == asBought:
		key.handling = together
	case shared && key.handling == together && w.food.Form == trip.Piece:
		key.handling = counted
	}
	if key.handling.alone(shared) {
		key.food = w.food.ID
	}
}

// text names a bag by what it serves, so that it stays the same bag when other
// days change. It begins with the first day it is packed for.
func (key *lotKey) text(part int) string {
	var text strings.Builder
	text.Grow(48) // one piece of memory for most keys
	number := func(sign string, n int64) {
		text.WriteString(sign)
		text.WriteString(strconv.FormatInt(n, 10))
	}
	word := func(w string) {
		if w != "" {
			text.WriteString(" " + w)
		}
	}
	number("d", int64(key.day))
	switch {
	case key.meal != "":
		word(string(key.meal))
	case key.kind == SnackBag:
		word("snack")
	case key.kind == ReserveBag:
		word("reserve")
	default:
		word("store")
	}
	number(" g", int64(key.group))
	if key.recipe != 0 {
		number(" r", int64(key.recipe))
		number(" b", int64(key.run))
	}
	if key.member != 0 {
		number(" m", int64(key.member))
	}
	word(key.clean)
	if key.kind != SnackBag && key.kind != ReserveBag {
		word(string(key.place))
	}
	if key.meal != "" || key.kind == SnackBag || key.kind == ReserveBag {
		word(key.handling.word())
	}
	if key.food != 0 {
		number(" f", int64(key.food))
	}
	number(" ", int64(part))
	return text.String()
}

// lot is what goes into one bag, if it is large enough.
type lot struct {
	key         lotKey
	place       int   // in the order of the lots
	reserve     bool  // not touched before there is need
	carriedFrom int   // day, where that is before the first use
	uses        []Use // without what they take
	lines       []line
}

// line is a food for a use: for one eater's bowl, or for the pot.
type line struct {
	use    int // place in the lot's uses
	member trip.MemberID
	ware   *ware
	mass   units.Mass
}

// add puts a line into the lot. Batches come in the order of eating.
func (l *lot) add(s *sitting, place trip.Place, a line) {
	n := len(l.uses)
	if n == 0 || l.uses[n-1].Place != place || !l.uses[n-1].of(s) {
		made := Use{Day: s.Day, Meal: s.Meal, Recipe: s.Recipe, Batch: s.run, Place: place}
		if place == trip.InPot {
			for i := range s.Portions {
				made.PotFor = append(made.PotFor, s.Portions[i].Member)
			}
		}
		l.uses = append(l.uses, made)
		n++
	}
	a.use = n - 1
	l.lines = append(l.lines, a)
}

func (u *Use) of(s *sitting) bool {
	return u.Day == s.Day && u.Meal == s.Meal && u.Recipe == s.Recipe && u.Batch == s.run
}

// fill writes a part of the lot into a bag.
func (l *lot) fill(bag *Bag, part []line) {
	var eaters []trip.MemberID
	for len(part) > 0 {
		n := 1
		for n < len(part) && part[n].use == part[0].use {
			n++
		}
		made := l.uses[part[0].use]
		made.Contents = contents(part[:n])
		for _, a := range part[:n] {
			made.Kcal += a.ware.food.Kcal(a.mass)
		}
		if made.Place == trip.AtBowl {
			made.Shares = shares(part[:n])
			for _, s := range made.Shares {
				eaters = append(eaters, s.Member)
			}
		}
		eaters = append(eaters, made.PotFor...)
		bag.Uses = append(bag.Uses, made)
		part = part[n:]
	}
	slices.Sort(eaters)
	bag.Eaters = len(slices.Compact(eaters))
	for i := range bag.Uses {
		bag.Kcal += bag.Uses[i].Kcal
	}
	first, last := &bag.Uses[0], &bag.Uses[len(bag.Uses)-1]
	bag.Day, bag.LastDay, bag.Meal, bag.Place, bag.Recipe = first.Day, last.Day, first.Meal, first.Place, first.Recipe
	if len(bag.Uses) == 1 {
		bag.Contents = slices.Clone(first.Contents)
		return
	}
	for i := range bag.Uses {
		if bag.Uses[i].Recipe != bag.Recipe {
			bag.Recipe = 0
		}
		for _, c := range bag.Uses[i].Contents {
			bag.Contents = addContent(bag.Contents, c)
		}
	}
	slices.SortFunc(bag.Contents, func(a, b Content) int { return cmp.Compare(a.Food, b.Food) })
}

// contents adds up lines by food.
func contents(lines []line) []Content {
	list := make([]Content, 0, 4)
	for _, a := range lines {
		list = addContent(list, Content{a.ware.food.ID, a.mass})
	}
	slices.SortFunc(list, func(a, b Content) int { return cmp.Compare(a.Food, b.Food) })
	return list
}

func addContent(list []Content, c Content) []Content {
	if i := slices.IndexFunc(list, func(x Content) bool { return x.Food == c.Food }); i >= 0 {
		list[i].Mass += c.Mass
		return list
	}
	return append(list, c)
}

// shares adds up lines by eater.
func shares(lines []line) []Share {
	list := make([]Share, 0, 4)
	for _, a := range lines {
		if i := slices.IndexFunc(list, func(x Share) bool { return x.Member == a.member }); i >= 0 {
			list[i].Mass += a.mass
		} else {
			list = append(list, Share{a.member, a.mass})
		}
	}
	slices.SortFunc(list, func(a, b Share) int { return cmp.Compare(a.Member, b.Member) })
	return list
}
