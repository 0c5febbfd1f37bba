package press

import (
	"slices"
	"strconv"
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
	"sumpter/domain/units"
	"sumpter/exporter/print/typeset"
)

// Phrases that several papers use, so that they say the same of a thing.

// TripTitle is the name of the trip.
func (p *Press) TripTitle() string {
	if p.Trip.Title == "" {
		return p.Tell(prose.Say("Trip without a name"))
	}
	return p.Trip.Title
}

// MemberName names a member, or says that it is nobody.
func (p *Press) MemberName(id trip.MemberID) string {
	if member := p.Member(id); member != nil {
		return member.Name
	}
	return p.Tell(prose.Say("nobody yet"))
}

// GroupName names a cook group; nothing where the trip has only one.
func (p *Press) GroupName(id trip.GroupID) string {
	if group := p.Group(id); group != nil && len(p.Trip.Groups) > 1 {
		return group.Name
	}
	return ""
}

// PlaceName names a resupply point.
func (p *Press) PlaceName(id trip.PointID) string {
	if point := p.Point(id); point != nil {
		return point.Name
	}
	return p.Tell(prose.Say("a point that is not in the trip"))
}

// FoodName names a food.
func (p *Press) FoodName(id trip.FoodID) string {
	if food := p.Food(id); food != nil {
		return food.Name
	}
	return p.Tell(prose.Say("unknown food"))
}

// DishName names what a bag becomes; a store by its food.
func (p *Press) DishName(bag *bags.Bag) string {
	switch {
	case bag.Kind == bags.ReserveBag:
		return p.Tell(prose.Say("emergency reserve"))
	case bag.Kind == bags.SnackBag && bag.Reserve:
		return p.Tell(prose.Say("Snacks, reserve: not before there is need"))
	case bag.Kind == bags.SnackBag && len(bag.Uses) > 1:
		return p.Tell(prose.Say("Snacks"))
	case len(bag.Uses) > 1:
		var names []string
		for _, content := range bag.Contents {
			names = append(names, p.FoodName(content.Food))
		}
		return strings.Join(names, ", ")
	}
	if recipe := p.Recipe(bag.Recipe); recipe != nil {
		return recipe.Name
	}
	return p.Tell(prose.Say("a dish that is not in the trip"))
}

// Plain tells whether a bag is one food and is called by its name.
func (p *Press) Plain(bag *bags.Bag) bool {
	return len(bag.Contents) == 1 && p.DishName(bag) == p.FoodName(bag.Contents[0].Food)
}

// CountBags says how many bags.
func CountBags(count int) prose.Text {
	return prose.Plural(count, prose.Say("1 bag"), prose.Say("%d bags", count))
}

// MealName names a meal.
func (p *Press) MealName(meal trip.Meal) string { return p.Tell(prose.Say("%s", meal)) }

// When says for which meal a bag is, or that several take from it.
func (p *Press) When(bag *bags.Bag) string {
	if bag.Kind == bags.ReserveBag {
		return p.Tell(prose.Say("only in need"))
	}
	if len(bag.Uses) > 1 && bag.Kind != bags.SnackBag {
		return p.Tell(prose.Say("store"))
	}
	return p.MealName(bag.Meal)
}

// BagDays says on which days a bag is eaten from, with their dates.
func (p *Press) BagDays(bag *bags.Bag) string {
	if bag.Kind == bags.ReserveBag {
		return p.Tell(prose.Say("to day %d", bag.LastDay))
	}
	if bag.LastDay <= bag.Day {
		return p.Day(bag.Day)
	}
	first, last := p.ShortDate(p.Trip.DateOf(bag.Day)), p.ShortDate(p.Trip.DateOf(bag.LastDay))
	if first == "" || last == "" {
		return p.Tell(prose.Say("Days %d to %d", bag.Day, bag.LastDay))
	}
	return p.Tell(prose.Say("Days %d to %d, %s to %s", bag.Day, bag.LastDay, first, last))
}

// Day names a day of the trip with its date where there is one.
func (p *Press) Day(day int) string {
	if date := p.ShortDate(p.Trip.DateOf(day)); date != "" {
		return p.Tell(prose.Say("Day %d, %s", day, date))
	}
	return p.Tell(prose.Say("Day %d", day))
}

// Date writes a date with its year, or that it is not set.
func (p *Press) Date(date units.Date) string {
	if !date.IsSet() {
		return p.Tell(prose.Say("date not set"))
	}
	return p.Tell(prose.Say("%s", date))
}

// ShortDate writes a date of the trip, whose year everybody knows. A date that
// is not set has no words.
func (p *Press) ShortDate(date units.Date) string {
	if !date.IsSet() {
		return ""
	}
	_, month, day := date.Civil()
	return p.Tell(prose.Say("%s %d %s", prose.Word(date.Weekday().Short()), day, prose.Word(units.MonthName(month))))
}

// AllergenNames names allergens.
func (p *Press) AllergenNames(list []trip.Allergen) string {
	return p.Tell(prose.List(", ", list))
}

// Weigh writes a mass as a kitchen scale shows it: ounces with grams beside
// them, since a tenth of an ounce is coarser than the scale.
func (p *Press) Weigh(mass units.Mass) string {
	grams := p.quantity(mass, units.Metric)
	if p.Reader.Units != units.US {
		return grams
	}
	decimals := 1
	if mass.Ounces() < 1 {
		decimals = 2
	}
	return p.Reader.Number(mass.Ounces(), decimals) + "\u00a0oz (" + grams + ")"
}

// Mass writes a mass for a reader.
func (p *Press) Mass(mass units.Mass) string { return p.quantity(mass, p.Reader.Units) }

// Volume writes a volume for a reader.
func (p *Press) Volume(volume units.Volume) string { return p.quantity(volume, p.Reader.Units) }

// Load writes what somebody carries, to a tenth of a kilogram or a pound.
func (p *Press) Load(mass units.Mass) string {
	if p.Reader.Units == units.US {
		return p.Reader.Number(mass.Pounds(), 1) + "\u00a0lb"
	}
	return p.Reader.Number(mass.Kilograms(), 1) + "\u00a0kg"
}

// Money writes an amount without its currency.
func (p *Press) Money(amount units.Money) string {
	text := amount.Decimal(p.Trip.Currency)
	if p.Reader.DecimalSign != "" {
		text = strings.Replace(text, ".", p.Reader.DecimalSign, 1)
	}
	return text
}

// quantity keeps a figure and its unit on one line.
func (p *Press) quantity(quantity prose.Quantity, system units.System) string {
	reader := p.Reader
	reader.Units = system
	return strings.ReplaceAll(reader.Quantity(quantity), " ", "\u00a0")
}

// Eaters says who eats a bag: "only for Kim", "for 5".
func (p *Press) Eaters(bag *bags.Bag) string {
	if only := bag.OnlyEater(); only != 0 {
		return p.Tell(prose.Say("only for %s", p.MemberName(only)))
	}
	return p.Tell(prose.Say("for %d", bag.Eaters))
}

// Part says which of several bags of a dish it is, or nothing.
func (p *Press) Part(bag *bags.Bag) string {
	if bag.Parts < 2 {
		return ""
	}
	return p.Tell(prose.Say("bag %d of %d", bag.Part, bag.Parts))
}

// Cook says what to do with a bag, in short.
func (p *Press) Cook(bag *bags.Bag) string {
	if bag.Kind == bags.ReserveBag {
		return p.Tell(prose.Say("leave it sealed until there is need"))
	}
	var parts []string
	recipe, meal := p.Recipe(bag.Recipe), p.Meal(bag.Day, bag.Meal, bag.Group)
	cold := meal != nil && meal.Cold
	if len(bag.Uses) > 1 && bag.Kind != bags.SnackBag {
		return p.Tell(prose.Say("take from it %d times; the recipe cards say how much", len(bag.Uses)))
	}
	if bag.Place == trip.AtBowl && bag.Meal != trip.Snack && bag.Water == 0 {
		parts = append(parts, p.Tell(prose.Say("onto the bowls")))
	}
	if bag.Water > 0 {
		parts = append(parts, p.Tell(prose.Say("add %s of water", p.Volume(bag.Water))))
	}
	heated := bag.Place == trip.InPot && recipe != nil && meal != nil && cooking.Heated(recipe, bag.Meal)
	switch {
	case cold && heated:
		parts = append(parts, p.Tell(prose.Say("no flame that day: make it cold")))
	case bag.Minutes > 0:
		parts = append(parts, p.Tell(prose.Say("%.0f min on the flame", float64(bag.Minutes))))
	case heated:
		parts = append(parts, p.Tell(prose.Say("bring to the boil")))
	}
	if bag.Soak > 0 {
		parts = append(parts, p.Tell(prose.Say("%.0f min off the flame", float64(bag.Soak))))
	}
	return strings.Join(parts, ", ")
}

// Takes lists what each meal takes from a bag that serves several; nothing for
// other bags.
func (p *Press) Takes(bag *bags.Bag) []string {
	if len(bag.Uses) < 2 {
		return nil
	}
	list := make([]string, len(bag.Uses))
	for i := range bag.Uses {
		use := &bag.Uses[i]
		if bag.Kind == bags.SnackBag {
			list[i] = p.Tell(prose.Say("Day %d: %s", use.Day, p.Weigh(use.Mass())))
			continue
		}
		list[i] = p.Tell(prose.Say("Day %d, %s: %s", use.Day, use.Meal, p.Weigh(use.Mass())))
		if recipe := p.Recipe(use.Recipe); recipe != nil {
			list[i] += " · " + recipe.Name
		}
	}
	return list
}

// mostBeside is how many bags of a pot are named on the label of another.
const mostBeside = 3

// With names the other bags of the same pot and the same eaters, or nothing.
func (p *Press) With(bag *bags.Bag) string {
	var codes []string
	for _, other := range p.together(bag) {
		if other != bag {
			codes = append(codes, other.Code)
		}
	}
	switch more := len(codes) - mostBeside; {
	case len(codes) == 0:
		return ""
	case more > 1:
		return p.Tell(prose.Say("together with %s and %d more", strings.Join(codes[:mostBeside], ", "), more))
	default:
		return p.Tell(prose.Say("together with %s", strings.Join(codes, ", ")))
	}
}

// First tells whether a bag is the first of those that are made together and
// that this dish uses up: what it takes from a store comes beside.
func (p *Press) First(bag *bags.Bag) bool {
	for _, other := range p.together(bag) {
		if len(other.Uses) == 1 {
			return other == bag
		}
	}
	return true
}

// together lists the bags of a pot that the same people eat.
func (p *Press) together(bag *bags.Bag) []*bags.Bag {
	var list []*bags.Bag
	for _, other := range p.Pot(bag) {
		if other.Member == bag.Member {
			list = append(list, other)
		}
	}
	return list
}

// Contents lists what is in a bag with its mass, in the order of the plan.
func (p *Press) Contents(bag *bags.Bag) []typeset.Span {
	return p.contents(bag, bag.Contents)
}

func (p *Press) contents(bag *bags.Bag, list []bags.Content) []typeset.Span {
	var spans []typeset.Span
	for i, content := range list {
		if i > 0 {
			spans = append(spans, typeset.Plain("\u00a0· "))
		}
		spans = append(spans, typeset.Bold(p.Weigh(content.Mass)), typeset.Plain("\u00a0"+p.contentName(bag, content.Food)))
	}
	return spans
}

// contentName names a food in a bag, and where it is put in if that is on the way.
func (p *Press) contentName(bag *bags.Bag, food trip.FoodID) string {
	if box := p.BoughtAt(bag.Key, food); box != nil {
		return p.Tell(prose.Say("%s, bought at %s", p.FoodName(food), p.PlaceName(box.Point)))
	}
	return p.FoodName(food)
}

// SomeContents lists the first foods of a bag and says how many more there are.
func (p *Press) SomeContents(bag *bags.Bag, most int) []typeset.Span {
	if len(bag.Contents) <= most {
		return p.Contents(bag)
	}
	return append(p.contents(bag, bag.Contents[:most]),
		typeset.Plain("\u00a0· "+p.Tell(prose.Say("and %d more: see the packing list", len(bag.Contents)-most))))
}

// Handling says in what a bag is packed and what it does not bear.
func (p *Press) Handling(bag *bags.Bag) []string {
	var list []string
	switch {
	case bag.Type == trip.AsBought:
		list = append(list, p.Tell(prose.Say("stays as bought")))
	case bag.Type != "":
		list = append(list, strings.ReplaceAll(bag.Type, " ", "\u00a0"))
	}
	if bag.Double {
		list = append(list, p.Tell(prose.Say("two bags")))
	}
	return append(list, p.Care(bag)...)
}

// Care says what a bag does not bear.
func (p *Press) Care(bag *bags.Bag) []string {
	var list []string
	if bag.Crushable {
		list = append(list, p.Tell(prose.Say("breaks easily")))
	}
	if bag.Melts {
		list = append(list, p.Tell(prose.Say("melts in heat")))
	}
	return list
}

// Carried says whose pack a bag is in, and where it waits before.
func (p *Press) Carried(bag *bags.Bag) string {
	var text string
	for i, carrier := range p.Carriers(bag.Key) {
		if i == 0 {
			text = p.Tell(prose.Say("pack: %s", p.MemberName(carrier.Member)))
			continue
		}
		text = p.Tell(prose.Say("%s, from day %d %s", text, carrier.FromDay, p.MemberName(carrier.Member)))
	}
	if text == "" {
		text = p.Tell(prose.Say("nobody carries it yet"))
	}
	if box := p.Box(bag.Key); box != nil {
		text = p.Tell(prose.Say("box: %s, then %s", p.PlaceName(box.Point), text))
	}
	return text
}

// Keeps is how long a bag keeps: its worst content decides.
type Keeps struct {
	Words string
	Bad   bool // not safe, or not known to be
}

// Keeping says until when a bag is to be eaten. What is not known is said to
// be so; it never counts as safe.
func (p *Press) Keeping(bag *bags.Bag) Keeps {
	last, known := len(p.Trip.Days), true
	if bag.Kind == bags.ReserveBag {
		known = !slices.ContainsFunc(p.Plan.Findings, func(f findings.Finding) bool {
			return f.Code == "reserve-does-not-keep" && slices.ContainsFunc(bag.Contents, func(c bags.Content) bool { return c.Food == f.Place.Food })
		})
	}
	for i := range bag.Uses {
		use := &bag.Uses[i]
		for _, content := range use.Contents {
			fate := p.Fate(use.Day, use.Meal, bag.Group, content.Food)
			switch {
			case fate == nil || fate.Verdict == spoilage.NotKnown:
				known = false
			case fate.Verdict == spoilage.NotSafe || fate.LatestDay < use.Day:
				return Keeps{p.Tell(prose.Say("NOT SAFE on day %d", use.Day)), true}
			default:
				last = min(last, fate.LatestDay)
			}
		}
	}
	switch {
	case !known:
		return Keeps{p.Tell(prose.Say("not known how long it keeps")), true}
	case last < len(p.Trip.Days):
		return Keeps{Words: p.Tell(prose.Say("eat by day %d", last))}
	default:
		return Keeps{Words: p.Tell(prose.Say("keeps to the end"))}
	}
}

// Declared is the allergens of a bag by what is known of them.
type Declared struct {
	Contains, MayContain, NotKnown []trip.Allergen
}

// Allergens sorts the allergens of a bag.
func Allergens(list []bags.Allergen) Declared {
	var d Declared
	for _, allergen := range list {
		switch allergen.Presence {
		case trip.Contains:
			d.Contains = append(d.Contains, allergen.Allergen)
		case trip.MayContain:
			d.MayContain = append(d.MayContain, allergen.Allergen)
		case trip.NotKnown:
			d.NotKnown = append(d.NotKnown, allergen.Allergen)
		}
	}
	return d
}

// Worst adds allergens to a list that keeps the worst state of each, in the
// order in which they first appear.
func Worst(list, more []bags.Allergen) []bags.Allergen {
	for _, allergen := range more {
		place := slices.IndexFunc(list, func(a bags.Allergen) bool { return a.Allergen == allergen.Allergen })
		if place < 0 {
			list = append(list, allergen)
			continue
		}
		list[place].Presence = trip.Worse(list[place].Presence, allergen.Presence)
	}
	return list
}

// None tells that nothing has to be said.
func (d Declared) None() bool {
	return len(d.Contains) == 0 && len(d.MayContain) == 0 && len(d.NotKnown) == 0
}

// InShort says allergens in a run of text.
func (p *Press) InShort(d Declared) string {
	var parts []string
	if len(d.Contains) > 0 {
		parts = append(parts, p.Tell(prose.Say("contains %s", prose.List(", ", d.Contains))))
	}
	if len(d.MayContain) > 0 {
		parts = append(parts, p.Tell(prose.Say("may contain %s", prose.List(", ", d.MayContain))))
	}
	if len(d.NotKnown) > 0 {
		parts = append(parts, p.Tell(prose.Say("not known: %s", prose.List(", ", d.NotKnown))))
	}
	return strings.Join(parts, "; ")
}

// Warning sets allergens so that nobody overlooks them, each kind in a shape
// of its own: white on dark what is in, a double frame around what may be in,
// a dashed double frame around what nobody knows.
func (p *Press) Warning(size, width Points, declared Declared) Block {
	style := Style{Size: size, Ink: p.Inks.Danger}
	pad := size * 0.4
	var parts []Block
	if len(declared.Contains) > 0 {
		parts = append(parts, p.Banner(style, p.Inks.Danger, pad, width, p.named(p.Tell(prose.Say("CONTAINS")), declared.Contains)))
	}
	if len(declared.MayContain) > 0 {
		parts = append(parts, p.Framed(style, false, pad, width, p.named(p.Tell(prose.Say("MAY CONTAIN")), declared.MayContain)))
	}
	if len(declared.NotKnown) > 0 {
		parts = append(parts, p.Framed(style, true, pad, width, p.named(p.Tell(prose.Say("NOT KNOWN TO BE FREE OF")), declared.NotKnown)))
	}
	return Stack(size*0.2, parts...)
}

func (p *Press) named(lead string, list []trip.Allergen) typeset.Span {
	return typeset.Bold(lead + " " + p.AllergenNames(list))
}

// Days names a stretch of days.
func (p *Press) Days(first, last int) string {
	if first >= last {
		return p.Tell(prose.Say("day %d", first))
	}
	return p.Tell(prose.Say("days %d to %d", first, last))
}

// GearKey is the key of a piece of gear among what is carried.
func (p *Press) GearKey(gear *trip.Gear) string { return strconv.FormatInt(int64(gear.ID), 10) }

// Thing names what is carried, other than bags.
func (p *Press) Thing(item carry.Item) string {
	switch item.Kind {
	case carry.GearItem:
		if gear := p.Gear(item.Key); gear != nil {
			return gear.Name
		}
	case carry.FuelItem:
		if container := p.Fuel(item.Key); container != nil {
			return container.Name
		}
	case carry.WasteItem:
		return p.Tell(prose.Say("rubbish"))
	}
	return item.Key
}
