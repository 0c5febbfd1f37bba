package trail

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/typed"
	"sumpter/domain/carry"
	"sumpter/domain/findings"
	"sumpter/domain/plan"
	"sumpter/domain/resupply"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// sidePanel shows the chosen bag or member, and below it what holds for all:
// fuel, hand-overs, boxes to come.
type sidePanel struct {
	screen  *Screen
	bag     string        // chosen last; or
	member  trip.MemberID //
	chosen  *fyne.Container
	all     *fyne.Container
	content fyne.CanvasObject
}

func newSidePanel(s *Screen) *sidePanel {
	p := &sidePanel{screen: s, chosen: container.NewVBox(), all: container.NewVBox()}
	p.content = container.NewVScroll(container.NewVBox(p.chosen, widget.NewSeparator(), p.all))
	return p
}

func (p *sidePanel) showBag(key string) {
	p.bag, p.member = key, 0
	p.showChosen()
}

func (p *sidePanel) showMember(id trip.MemberID) {
	p.bag, p.member = "", id
	p.showChosen()
}

func (p *sidePanel) refresh() {
	p.showChosen()
	p.all.RemoveAll()
	if p.screen.bench.Plan() == nil {
		p.all.Add(paragraph(lang.L("Here comes the day: what is eaten, who has it, how it is cooked. It needs a plan first: enter crew, days and menu.")))
		return
	}
	p.showFuel()
	p.showHandOvers()
	p.showBoxes()
	p.all.Add(paragraph(lang.L("Treat all water. A torn, wet or doubtful bag is not eaten. Never cook inside a tent. Local rules and people on the spot come first.")))
}

func (p *sidePanel) showChosen() {
	p.chosen.RemoveAll()
	if pack, ok := p.screen.pack(p.member); ok {
		p.addPack(pack)
		return
	}
	if _, ok := p.screen.bag(p.bag); !ok && len(p.screen.day.Bags) > 0 {
		p.bag = p.screen.day.Bags[0].Key
		if key, ok := p.screen.bags.Selected(); ok {
			p.bag = key
		}
	}
	if bag, ok := p.screen.bag(p.bag); ok {
		p.addBag(bag)
		return
	}
	if p.screen.bench.Plan() != nil {
		p.chosen.Add(paragraph(lang.L("Nothing is eaten from the packs on this day.")))
	}
}

// addBag says how the bag is made into a meal.
func (p *sidePanel) addBag(bag trail.Bag) {
	s := p.screen
	u := s.bench.Units()
	p.chosen.Add(look.NewText(bag.Code, look.Figure, look.Ink))
	p.chosen.Add(look.NewHeading(s.dishText(bag)))
	p.chosen.Add(paragraph(lang.X("bag-who", "{{.Meal}}, {{.Group}}, for {{.Eaters}}. {{.Who}} has it.", map[string]any{
		"Meal": lang.L(string(bag.Meal)), "Group": s.groupName(bag.Group), "Eaters": bag.Eaters, "Who": s.memberName(bag.Carrier)})))
	p.addAllergens(bag)
	for _, content := range bag.Contents {
		if food := s.bench.Trip().Food(content.Food); food != nil {
			p.chosen.Add(look.NewText(content.Mass.Format(u)+"  "+food.Name, look.Body, look.Ink))
		}
	}
	if text := p.cookingText(bag, u); text != "" {
		p.chosen.Add(paragraph(text))
	}
	if recipe := s.bench.Trip().Recipe(bag.Recipe); recipe != nil {
		for i, step := range recipe.Method {
			p.chosen.Add(paragraph(strconv.Itoa(i+1) + ". " + step))
		}
	}
	p.addBagFindings(bag)
}

// cookingText gives water and minutes at the height of the meal.
func (p *sidePanel) cookingText(bag trail.Bag, u units.System) string {
	var words []string
	if bag.Water > 0 {
		words = append(words, lang.X("add-water", "Add {{.Water}} of water.", map[string]any{"Water": bag.Water.Format(u)}))
	}
	if bag.Place == trip.AtBowl {
		words = append(words, lang.L("Goes onto the bowls, not into the pot."))
	}
	made := p.screen.bench.Plan()
	if made == nil {
		return strings.Join(words, " ")
	}
	for _, meal := range made.Cooking.Meals {
		if meal.Day != bag.Day || meal.Meal != bag.Meal || meal.Group != bag.Group {
			continue
		}
		if meal.Cold {
			words = append(words, lang.L("Made without flame."))
			continue
		}
		if bag.Minutes > 0 || bag.Soak > 0 {
			words = append(words, lang.X("minutes-there", "On the flame {{.Minutes}} min after the boil, then {{.Soak}} min to soak; reckoned for {{.Height}}.", map[string]any{
				"Minutes": whole(float64(bag.Minutes)), "Soak": whole(float64(bag.Soak)), "Height": meal.Height.FormatHeight(u)}))
		}
		words = append(words, lang.X("meal-takes", "The whole meal takes about {{.Minutes}} min and {{.Water}} of water with drinks and washing up.", map[string]any{
			"Minutes": whole(float64(meal.Minutes)), "Water": (meal.FoodWater + meal.OtherWater).Format(u)}))
	}
	return strings.Join(words, " ")
}

// addAllergens names what is in the bag, in full, in the double frame; not
// known is not free.
func (p *sidePanel) addAllergens(bag trail.Bag) {
	var words []string
	for _, allergen := range bag.Allergens {
		words = append(words, string(allergen.Allergen)+" ("+lang.L(string(allergen.Presence))+")")
	}
	if len(words) == 0 {
		return
	}
	p.chosen.Add(look.NewDoubleFrame(look.Plum, paragraph(strings.Join(words, ", "))))
}

func (p *sidePanel) addBagFindings(bag trail.Bag) {
	made := p.screen.bench.Plan()
	if made == nil {
		return
	}
	for _, finding := range made.Findings {
		at := finding.Place
		own := at.Bag == bag.Key || at.Day == bag.Day && at.Meal == bag.Meal && (at.Group == 0 || at.Group == bag.Group)
		if own && finding.Severity != findings.Note {
			p.chosen.Add(findingRow(finding))
		}
	}
}

// addPack lists what a member carries, and offers what to do when they leave.
func (p *sidePanel) addPack(pack trail.Pack) {
	s := p.screen
	u := s.bench.Units()
	p.chosen.Add(look.NewText(s.memberName(pack.Member), look.Figure, look.Ink))
	p.chosen.Add(paragraph(lang.X("pack-load", "{{.Load}} this morning, {{.Own}} of it their own kit.", map[string]any{
		"Load": pack.Load.Load.Format(u), "Own": pack.Load.OwnKit.Format(u)}) + p.waterText(pack, u)))
	for _, item := range pack.Items {
		p.chosen.Add(look.NewText(item.Mass.Format(u)+"  "+p.itemName(item), look.Body, look.Ink))
	}
	p.chosen.Add(container.NewHBox(
		widget.NewButton(lang.X("leaves-evening", "Leaves after day {{.Day}}", map[string]any{"Day": s.number}), func() { s.leave(s.number) }),
		widget.NewButton(lang.X("left-before", "Left before day {{.Day}}", map[string]any{"Day": s.number}), func() { s.leave(s.number - 1) })))
	p.chosen.Add(paragraph(lang.L("The rest is planned anew for who stays. Nobody leaves alone who is ill or hurt.")))
}

func (p *sidePanel) waterText(pack trail.Pack, u units.System) string {
	text := ""
	if pack.Drink > 0 {
		text += " " + lang.X("pack-drink", "Drinks about {{.Litres}} over the day.", map[string]any{"Litres": pack.Drink.Format(u)})
	}
	if pack.CarryIn > 0 {
		text += " " + lang.X("pack-carry-in", "Carries {{.Litres}} of water to the dry camp besides.", map[string]any{"Litres": pack.CarryIn.Format(u)})
	}
	return text
}

// itemName says what a thing is: a bag by its code, gear by its name.
func (p *sidePanel) itemName(item carry.Item) string {
	made := p.screen.bench.Plan()
	switch item.Kind {
	case carry.BagItem:
		for i := range made.Bags.Bags {
			if bag := &made.Bags.Bags[i]; bag.Key == item.Key {
				return fmt.Sprintf("%s  %s, %s", bag.Code, dayNumber(bag.Day), lang.L(string(bag.Meal)))
			}
		}
	case carry.GearItem:
		if id, err := strconv.ParseInt(item.Key, 10, 64); err == nil {
			if gear := p.screen.bench.Trip().GearItem(trip.GearID(id)); gear != nil {
				return gear.Name
			}
		}
	case carry.FuelItem:
		for _, leg := range made.Cooking.Fuel {
			for _, c := range leg.Containers {
				if c.Key == item.Key {
					return c.Name
				}
			}
		}
	case carry.WasteItem:
		return lang.L("wrappings of what was eaten")
	}
	return item.Key
}

func (p *sidePanel) showFuel() {
	u := p.screen.bench.Units()
	p.all.Add(look.NewHeading(lang.L("Fuel this morning")))
	if len(p.screen.day.Fuel) == 0 {
		p.all.Add(paragraph(lang.L("No fuel is carried on this part of the way.")))
	}
	for _, fuel := range p.screen.day.Fuel {
		p.all.Add(paragraph(lang.X("fuel-left", "{{.Group}}: {{.Left}} of {{.Fuel}} left in {{.Count}} containers, if all went as planned; today takes {{.Today}} and more in wind.", map[string]any{
			"Group": p.screen.groupName(fuel.Group), "Left": fuel.Left.Format(u), "Fuel": lang.L(string(fuel.Kind)), "Count": len(fuel.Full), "Today": fuel.Today.Format(u)})))
	}
}

func (p *sidePanel) showHandOvers() {
	if len(p.screen.day.HandOvers) == 0 {
		return
	}
	p.all.Add(look.NewHeading(lang.L("Hand over this morning")))
	for _, h := range p.screen.day.HandOvers {
		p.all.Add(look.NewText(fmt.Sprintf("%s: %s → %s", p.itemName(h.Item), p.screen.memberName(h.From), p.screen.memberName(h.To)), look.Body, look.Ink))
	}
}

func (p *sidePanel) showBoxes() {
	made := p.screen.bench.Plan()
	boxes := trail.Ahead(made, p.screen.number)
	if len(boxes) == 0 {
		return
	}
	p.all.Add(look.NewHeading(lang.L("Boxes to come")))
	for _, box := range boxes {
		p.addBox(made, box)
	}
}

func (p *sidePanel) addBox(made *plan.Plan, box resupply.Box) {
	t := p.screen.bench.Trip()
	point := t.Point(box.Point)
	if point == nil {
		return
	}
	u := t.Units
	gone := slices.Contains(t.Progress.MissingBoxes, box.Point)
	p.all.Add(look.NewText(fmt.Sprintf("%s, %s, %s", point.Name, dayNumber(point.AfterDay), box.Mass.Format(u)), look.Body, look.Ink))
	word := lang.L("This box did not come")
	if gone {
		word = lang.L("It came after all")
		short := trail.IfMissing(made, &t.Progress, box, p.screen.number)
		p.all.Add(findingRow(shortageFinding(short, p.screen.number, u)))
	}
	p.all.Add(container.NewHBox(widget.NewButton(word, func() { p.screen.missing(box.Point) })))
}

// shortageFinding says what a missing box means, and what to do.
func shortageFinding(s trail.Shortage, day int, u units.System) findings.Finding {
	data := map[string]any{
		"Bags": s.Bags, "Food": s.Food.Format(u), "Left": s.LeftBags, "LeftFood": s.LeftFood.Format(u),
		"Days": strconv.FormatFloat(s.Lasts, 'f', 1, 64), "Back": s.BackDays, "Day": day, "Turn": s.TurnBackBy,
	}
	f := findings.Finding{Severity: findings.MustFix}
	f.What = lang.X("box-gone", "{{.Bags}} bags with {{.Food}} of food are missing. After the evening of day {{.Day}} the packs hold {{.Left}} bags, {{.LeftFood}}: {{.Days}} days of what the group burns.", data)
	switch {
	case s.ReachesBack():
		f.Severity = findings.LookAt
		f.Remedy = lang.X("box-back", "That reaches for the {{.Back}} days back to where it came from. Turn back by the evening of day {{.Turn}}, or go on only if food can be bought near the point.", data)
	case s.TurnBackBy > 0 && day > s.TurnBackBy:
		f.Remedy = lang.X("box-too-late", "The way back takes {{.Back}} days and the evening to turn back, day {{.Turn}}, is past: find food near the point, take the shortest safe way out, and call for help while you still have some.", data)
	default:
		f.Remedy = lang.X("box-ration", "The way back takes {{.Back}} days: eat less and share it out, find food near the point, or take the shortest safe way out.", data)
	}
	return f
}

// large writes kilograms or pounds with one decimal, so that they stand in line.
func large(m units.Mass, u units.System) string {
	if u == units.US {
		return strconv.FormatFloat(m.Pounds(), 'f', 1, 64)
	}
	return strconv.FormatFloat(m.Kilograms(), 'f', 1, 64)
}

func oneDecimal(v units.Volume, u units.System) string {
	text := typed.VolumeText(v, u, true)
	if value, err := strconv.ParseFloat(text, 64); err == nil {
		return strconv.FormatFloat(value, 'f', 1, 64)
	}
	return text
}

func paragraph(text string) *widget.Label {
	label := widget.NewLabel(text)
	label.Wrapping = fyne.TextWrapWord
	return label
}

// findingRow shows a finding with its sign, word and remedy.
func findingRow(finding findings.Finding) fyne.CanvasObject {
	words := paragraph(lang.L(string(finding.Severity)) + ": " + finding.What + " " + finding.Remedy)
	return container.NewBorder(nil, nil, container.NewVBox(look.NewSign(finding.Severity)), nil, words)
}

func whole(value float64) string { return strconv.FormatFloat(value, 'f', 0, 64) }
