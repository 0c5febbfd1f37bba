package trail

import (
	"fmt"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/carry"
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// sidePanel shows the chosen bag or member, and beside it how the rest of the
// way stands: who is there, what changes hands, fuel, boxes to come.
type sidePanel struct {
	screen  *Screen
	bag     string        // chosen last; or
	member  trip.MemberID //
	chosen  *page
	all     *page
	crew    *crewPicker
	splits  *widget.RadioGroup // few hand-overs against a fair load
	part    *widget.Entry      // how much of the bag is gone
	tabs    *bench.Tabs
	content fyne.CanvasObject
}

const restTab = 1

func newSidePanel(s *Screen) *sidePanel {
	later := s.bench.Document.AfterFrame
	p := &sidePanel{screen: s, chosen: newPage(later), all: newPage(later), crew: newCrewPicker(s)}
	p.tabs = bench.NewTabs(
		container.NewTabItem(lang.L("Bag or pack"), p.chosen.scroll),
		container.NewTabItem(lang.L("The rest of the way"), p.all.scroll),
	)
	p.tabs.OnSelected = func(*container.TabItem) { p.refresh() }
	p.content = p.tabs
	return p
}

// openRest shows the rest of the way where it has to be decided.
func (p *sidePanel) openRest() {
	if p.screen.toDecide() {
		p.tabs.SelectIndex(restTab)
	}
}

func (p *sidePanel) showBag(key string) {
	p.bag, p.member = key, 0
	p.showChosen()
	if !p.screen.filling { // somebody chose it
		p.tabs.SelectIndex(0)
	}
}

func (p *sidePanel) showMember(id trip.MemberID) {
	p.bag, p.member = "", id
	p.showChosen()
	if !p.screen.filling { // somebody chose it
		p.tabs.SelectIndex(0)
	}
}

// refresh fills the tab that is seen.
func (p *sidePanel) refresh() {
	if p.tabs.SelectedIndex() == restTab {
		p.fillAll()
		p.all.layOut()
		return
	}
	p.fillChosen()
	p.chosen.layOut()
}

func (p *sidePanel) showChosen() {
	if p.tabs.SelectedIndex() != restTab {
		p.refresh()
	}
}

func (p *sidePanel) fillAll() {
	p.all.RemoveAll()
	if p.screen.bench.Plan() == nil {
		p.all.Add(paragraph(lang.L("Here comes the day: what is eaten, who has it, how it is cooked. It needs a plan first: enter crew, days and menu.")))
		return
	}
	p.showCrew()
	p.showBoxes()
	p.showDecision()
	p.showRest()
	p.showFuel()
	p.all.Add(paragraph(lang.L("Treat all water. A torn, wet or doubtful bag is not eaten. Never cook inside a tent. Local rules and people on the spot come first.")))
}

func (p *sidePanel) fillChosen() {
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
	p.chosen.Add(line(bag.Code, look.Figure))
	p.chosen.Add(heading(s.dishText(bag)))
	p.chosen.Add(paragraph(lang.X("bag-who", "{{.Meal}}, {{.Group}}, for {{.Eaters}}. {{.Who}} has it.", map[string]any{
		"Meal": lang.L(string(bag.MealOn(s.number))), "Group": s.groupName(bag.Group), "Eaters": bag.Eaters, "Who": s.memberName(bag.Carrier)})))
	p.addAllergens(bag)
	for _, content := range s.takenToday(bag) {
		if food := s.bench.Trip().Food(content.Food); food != nil {
			p.chosen.Add(line(written.Amount(food, content.Mass, u)+"  "+food.Name, look.Body))
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
	p.showPart(bag)
	p.addBagFindings(bag)
}

// cookingText gives water and minutes at the height of the meal.
func (p *sidePanel) cookingText(bag trail.Bag, u units.System) string {
	var words []string
	if bag.Water > 0 {
		words = append(words, lang.X("add-water", "Add {{.Water}} of water.", map[string]any{"Water": written.Quantity(bag.Water, u)}))
	}
	if bag.Place == trip.AtBowl {
		words = append(words, lang.L("Goes onto the bowls, not into the pot."))
	}
	made := p.screen.bench.Plan()
	if made == nil {
		return strings.Join(words, " ")
	}
	for _, meal := range made.Cooking.Meals {
		if meal.Day != p.screen.number || meal.Meal != bag.MealOn(p.screen.number) || meal.Group != bag.Group {
			continue
		}
		if meal.Cold {
			words = append(words, lang.L("Made without flame."))
			continue
		}
		if bag.Minutes > 0 || bag.Soak > 0 {
			words = append(words, lang.X("minutes-there", "On the flame {{.Minutes}} min after the boil, then {{.Soak}} min to soak; reckoned for {{.Height}}.", map[string]any{
				"Minutes": whole(float64(bag.Minutes)), "Soak": whole(float64(bag.Soak)), "Height": written.Quantity(prose.Height(meal.Height), u)}))
		}
		words = append(words, lang.X("meal-takes", "The whole meal takes about {{.Minutes}} min and {{.Water}} of water with drinks and washing up.", map[string]any{
			"Minutes": whole(float64(meal.Minutes)), "Water": written.Quantity(meal.FoodWater+meal.OtherWater, u)}))
	}
	return strings.Join(words, " ")
}

// addAllergens names what is in the bag, in full, in the double frame; not
// known is not free.
func (p *sidePanel) addAllergens(bag trail.Bag) {
	var words []string
	for _, allergen := range bag.Allergens {
		words = append(words, bench.AllergenWord(allergen.Allergen, p.screen.bench.Units())+" ("+lang.L(string(allergen.Presence))+")")
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
		own := at.Bag == bag.Key || at.Day == p.screen.number && at.Meal == bag.MealOn(p.screen.number) && (at.Group == 0 || at.Group == bag.Group)
		if own && finding.Severity != findings.Note {
			p.chosen.Add(findingRow(finding, p.screen.bench.Units()))
		}
	}
}

// addPack lists what a member carries, and offers what to do when they leave.
func (p *sidePanel) addPack(pack trail.Pack) {
	s := p.screen
	u := s.bench.Units()
	p.chosen.Add(line(s.memberName(pack.Member), look.Figure))
	p.chosen.Add(paragraph(lang.X("pack-load", "{{.Load}} this morning, {{.Own}} of it their own kit.", map[string]any{
		"Load": written.Quantity(pack.Load.Load, u), "Own": written.Quantity(pack.Load.OwnKit, u)}) + p.waterText(pack, u)))
	for _, item := range pack.Items {
		p.chosen.Add(line(written.Quantity(item.Mass, u)+"  "+p.itemName(item), look.Body))
	}
	p.chosen.Add(container.NewHBox(
		widget.NewButton(lang.X("leaves-evening", "Leaves after day {{.Day}}", map[string]any{"Day": s.number}), func() { s.leave(s.number) }),
		widget.NewButton(lang.X("left-before", "Left before day {{.Day}}", map[string]any{"Day": s.number}), func() { s.leave(s.number - 1) })))
	p.chosen.Add(paragraph(lang.L("The rest is planned anew for who stays. Nobody leaves alone who is ill or hurt.")))
}

func (p *sidePanel) waterText(pack trail.Pack, u units.System) string {
	text := ""
	if pack.Drink > 0 {
		text += " " + lang.X("pack-drink", "Drinks about {{.Litres}} over the day.", map[string]any{"Litres": written.Quantity(pack.Drink, u)})
	}
	if pack.CarryIn > 0 {
		cook := pack.Load.ToCookWith()
		text += " " + lang.X("pack-carry-in-parts", "Carries {{.Litres}} of water to the dry camp besides: {{.Drink}} to drink there, {{.Cook}} to cook with.", map[string]any{
			"Litres": written.Quantity(pack.CarryIn, u), "Drink": written.Quantity(pack.CarryIn-cook, u), "Cook": written.Quantity(cook, u),
		})
	}
	return text
}

// itemName says what a thing is: a bag by its code, gear by its name.
func (p *sidePanel) itemName(item carry.Item) string {
	made := p.screen.bench.Plan()
	if p.screen.rest != nil {
		made = p.screen.rest.Plan // a bag may have gone to other meals
	}
	switch item.Kind {
	case carry.BagItem:
		for i := range made.Bags.Bags {
			if bag := &made.Bags.Bags[i]; bag.Key == item.Key {
				return fmt.Sprintf("%s  %s", bag.Code, bench.BagDays(bag))
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

// large writes kilograms or pounds with one decimal, so that they stand in line.
func large(m units.Mass, u units.System) string {
	if u == units.US {
		return written.Number(m.Pounds(), 1)
	}
	return written.Number(m.Kilograms(), 1)
}

func oneDecimal(v units.Volume, u units.System) string {
	if u == units.US {
		return written.Number(v.Quarts(), 1)
	}
	return written.Number(v.Litres(), 1)
}

// line and heading stand where the words of a paragraph begin.
func line(text string, size look.Size) fyne.CanvasObject {
	return indented(look.NewText(text, size, look.Ink).Yielding())
}

func heading(text string) fyne.CanvasObject { return indented(look.NewHeading(text).Yielding()) }

func indented(text *look.Text) fyne.CanvasObject {
	return container.New(layout.NewCustomPaddedLayout(0, 0, theme.InnerPadding(), 0), text)
}

// listed shows entries under one another, each wrapping, nearer to each other
// than paragraphs are.
func listed(entries []string) fyne.CanvasObject {
	list := container.New(layout.NewCustomPaddedVBoxLayout(theme.Padding() - theme.InnerPadding()*3/2))
	for _, entry := range entries {
		list.Objects = append(list.Objects, paragraph(entry))
	}
	return list
}

func paragraph(text string) *look.Paragraph { return look.NewParagraph(text, look.Body, look.Ink) }

// findingRow shows a finding with its sign, word and remedy.
func findingRow(finding findings.Finding, system units.System) fyne.CanvasObject {
	words := paragraph(lang.L(string(finding.Severity)) + ": " + written.Text(finding.What.Then(finding.Remedy), system))
	return container.NewBorder(nil, nil, container.NewVBox(look.NewSign(finding.Severity)), nil, words)
}

func whole(value float64) string { return strconv.FormatFloat(value, 'f', 0, 64) }
