package trail

import (
	"cmp"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// bagColumns are those of what is eaten; a row is a bag key.
func (s *Screen) bagColumns() []grid.Column[string] {
	column := func(title string, width float32, text func(trail.Bag) string) grid.Column[string] {
		return grid.Column[string]{Title: title, Width: width, Tone: s.bagTone, Text: func(key string) string {
			if bag, ok := s.bag(key); ok {
				return text(bag)
			}
			return ""
		}}
	}
	columns := []grid.Column[string]{
		column(lang.L("Bag"), 72, func(b trail.Bag) string { return b.Code }),
		column(lang.L("Gone"), 112, func(b trail.Bag) string { return endText(b.End) }),
		column(lang.L("Meal"), 104, func(b trail.Bag) string { return lang.L(string(b.MealOn(s.number))) }),
		column(lang.L("Group"), 68, func(b trail.Bag) string { return s.groupName(b.Group) }),
		column(lang.L("Dish"), 196, s.dishText),
		column(lang.L("Who has it"), 86, func(b trail.Bag) string { return s.memberName(b.Carrier) }),
		column(lang.L("In it"), 240, s.contentsText),
		column(lang.L("Water to add"), 104, func(b trail.Bag) string {
			if b.Water <= 0 {
				return ""
			}
			return written.Quantity(b.Water, s.bench.Units())
		}),
		column(lang.L("On the flame"), 100, func(b trail.Bag) string { return minutes(b.Minutes) }),
	}
	columns[2].Compare = func(a, b string) int { return cmp.Compare(s.places[a], s.places[b]) }
	columns[7].Right, columns[8].Right = true, true
	return columns
}

func (s *Screen) bag(key string) (trail.Bag, bool) {
	if i, ok := s.places[key]; ok {
		return s.day.Bags[i], true
	}
	return trail.Bag{}, false
}

func (s *Screen) bagTone(key string) fyne.ThemeColorName {
	bag, _ := s.bag(key)
	switch bag.End {
	case trip.Eaten:
		return look.Quiet
	case trip.ThrownAway, trip.Lost, trip.NotPacked:
		return look.Ochre
	default:
		return look.Ink
	}
}

func endText(end trip.End) string {
	if end == "" {
		return ""
	}
	return lang.L(string(end))
}

func minutes(m units.Minutes) string {
	if m <= 0 {
		return ""
	}
	return whole(float64(m)) + " min"
}

func (s *Screen) dishText(b trail.Bag) string {
	name := bench.BagName(s.bench.Trip(), b.Bag)
	if b.Member != 0 {
		name += ", " + lang.L("for") + " " + s.memberName(b.Member)
	}
	return name
}

// takenToday adds up what the day takes from a bag.
func (s *Screen) takenToday(b trail.Bag) []bags.Content {
	var list []bags.Content
	for _, use := range b.UsesOn(s.number) {
		for _, c := range use.Contents {
			if i := slices.IndexFunc(list, func(x bags.Content) bool { return x.Food == c.Food }); i >= 0 {
				list[i].Mass += c.Mass
			} else {
				list = append(list, c)
			}
		}
	}
	return list
}

// contentsText names what the day takes from a bag, most first.
func (s *Screen) contentsText(b trail.Bag) string {
	var words []string
	for _, content := range s.takenToday(b) {
		if food := s.bench.Trip().Food(content.Food); food != nil {
			words = append(words, written.Amount(food, content.Mass, s.bench.Units())+" "+food.Name)
		}
	}
	return strings.Join(words, ", ")
}

func (s *Screen) groupName(id trip.GroupID) string {
	if group := s.bench.Trip().Group(id); group != nil {
		return group.Name
	}
	return "–"
}

func (s *Screen) memberName(id trip.MemberID) string {
	if member := s.bench.Trip().Member(id); member != nil {
		return member.Name
	}
	return lang.L("nobody")
}

// packColumns are those of what is carried; a row is a member.
func (s *Screen) packColumns() []grid.Column[trip.MemberID] {
	u := s.bench.Units()
	mass := func(title string, of func(carry.Day) units.Mass) grid.Column[trip.MemberID] {
		value := func(id trip.MemberID) units.Mass {
			pack, _ := s.pack(id)
			return of(pack.Load)
		}
		return grid.Column[trip.MemberID]{
			Title: title, Unit: typed.MassUnit(u, true), Width: 70, Right: true,
			Text:    func(id trip.MemberID) string { return large(value(id), s.bench.Units()) },
			Compare: func(a, b trip.MemberID) int { return cmp.Compare(value(a), value(b)) },
		}
	}
	volume := func(title string, of func(trail.Pack) units.Volume) grid.Column[trip.MemberID] {
		value := func(id trip.MemberID) units.Volume {
			pack, _ := s.pack(id)
			return of(pack)
		}
		return grid.Column[trip.MemberID]{
			Title: title, Unit: typed.VolumeUnit(u, true), Width: 84, Right: true,
			Text: func(id trip.MemberID) string {
				if value(id) == 0 {
					return ""
				}
				return oneDecimal(value(id), s.bench.Units())
			},
			Compare: func(a, b trip.MemberID) int { return cmp.Compare(value(a), value(b)) },
		}
	}
	return []grid.Column[trip.MemberID]{
		{Title: lang.L("Name"), Width: 110, Text: s.memberName},
		mass(lang.L("Load"), func(d carry.Day) units.Mass { return d.Load }),
		{Title: lang.L("Share"), Unit: "%", Width: 66, Right: true, Text: func(id trip.MemberID) string {
			pack, _ := s.pack(id)
			return typed.PercentText(pack.Load.Share)
		}},
		mass(lang.L("Food"), func(d carry.Day) units.Mass { return d.Food }),
		mass(lang.L("Gear"), func(d carry.Day) units.Mass { return d.Gear }),
		mass(lang.L("Fuel"), func(d carry.Day) units.Mass { return d.Fuel }),
		mass(lang.L("Waste"), func(d carry.Day) units.Mass { return d.Waste }),
		volume(lang.L("Water in"), func(p trail.Pack) units.Volume { return p.CarryIn }),
		volume(lang.L("To drink"), func(p trail.Pack) units.Volume { return p.Drink }),
		volume(lang.L("Room of waste"), func(p trail.Pack) units.Volume { return p.Load.WasteRoom }),
	}
}

func (s *Screen) pack(id trip.MemberID) (trail.Pack, bool) {
	if i, ok := s.members[id]; ok {
		return s.day.Packs[i], true
	}
	return trail.Pack{}, false
}
