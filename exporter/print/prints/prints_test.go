package prints

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/packing"
	"sumpter/domain/plan"
	"sumpter/domain/portions"
	"sumpter/domain/prose"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
	"sumpter/exporter/plantest"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/printtest"
)

func drawn(t *testing.T, p *plan.Plan, kind Kind, options Options) *Print {
	t.Helper()
	made, err := Draw(context.Background(), p, kind, options, nil)
	if err != nil {
		t.Fatalf("%s: %v", kind, err)
	}
	return made
}

func written(t *testing.T, made *Print) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := made.Write(context.Background(), &out); err != nil {
		t.Fatalf("%s: %v", made.Kind, err)
	}
	return out.Bytes()
}

func large(t *testing.T, people, days int) *plan.Plan {
	t.Helper()
	p, err := plan.Make(context.Background(), triptest.Large(people, days, 3), plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// hard is a plan whose names are long, from the right, in wide letters, or try
// to be something else than names.
func hard(t *testing.T) *plan.Plan {
	t.Helper()
	p := large(t, 7, 3)
	names := []string{
		strings.Repeat("Donaudampfschifffahrtsgesellschaft ", 3), "محمد العربي", "שלום כהן 7", plantest.WideName, plantest.FormulaName, plantest.SignsName,
		"../../etc/passwd\x07\u202e evil\n\tname",
	}
	tr := p.Trip
	for i := range tr.Crew {
		tr.Crew[i].Name = names[i%len(names)]
		tr.Crew[i].Medicine = names[(i+1)%len(names)]
		tr.Crew[i].Allergies = append(tr.Crew[i].Allergies, trip.Allergy{Allergen: trip.Allergen(names[i%len(names)]), Severe: i%2 == 0})
	}
	for i := range tr.Foods {
		tr.Foods[i].Name, tr.Foods[i].Aisle = names[i%len(names)]+fmt.Sprint(i), names[(i+2)%len(names)]
	}
	for i := range tr.Recipes {
		tr.Recipes[i].Name = names[i%len(names)] + fmt.Sprint(i)
		tr.Recipes[i].Method = append(tr.Recipes[i].Method, strings.Repeat(names[(i+3)%len(names)]+" ", 20))
		tr.Recipes[i].Notes = names[(i+4)%len(names)]
	}
	for i := range tr.Groups {
		tr.Groups[i].Name = names[i%len(names)]
	}
	for i := range tr.Gear {
		tr.Gear[i].Name = names[i%len(names)]
	}
	for i := range tr.Points {
		tr.Points[i].Name, tr.Points[i].Address = names[i%len(names)], names[0]+"\n"+names[1]+"\n"+names[3]
	}
	for i := range tr.Days {
		tr.Days[i].Name = names[i%len(names)]
	}
	tr.Title = names[0] + names[2]
	for i := range p.Bags.Bags {
		p.Bags.Bags[i].Allergens = append(p.Bags.Bags[i].Allergens, bags.Allergen{Allergen: trip.Allergen(names[i%len(names)]), Presence: trip.Contains})
	}
	return p
}

// Every paper of every kind of plan keeps to the paper, draws no text over
// other text, and is read by poppler with as many pages as were drawn.
func TestEveryPaperIsClean(t *testing.T) {
	for name, p := range map[string]*plan.Plan{
		"empty": plantest.Empty(), "refused": {}, "small": plantest.Small(), "hard names": hard(t), "60 people": large(t, 60, 3),
	} {
		for _, options := range []Options{{}, {Paper: press.Letter, Black: true}} {
			for _, kind := range Kinds() {
				made := drawn(t, p, kind, options)
				if has := len(made.Pages) > 0; has != Has(p, kind) {
					t.Errorf("%s: %s has %d pages, and to have any is %v", name, kind, len(made.Pages), Has(p, kind))
				}
				if len(made.Pages) == 0 {
					continue
				}
				t.Run(fmt.Sprintf("%s, %s, %s", name, kind, options.Paper.Name), func(t *testing.T) {
					printtest.Clean(t, made.Pages)
					content := written(t, made)
					if pages := printtest.Pages(t, content); pages != len(made.Pages) {
						t.Errorf("pdfinfo counts %d pages of %d", pages, len(made.Pages))
					}
					printtest.FontsEmbedded(t, content)
				})
			}
		}
	}
}

func TestPagesAreNumbered(t *testing.T) {
	made := drawn(t, large(t, 12, 5), Rounds, Options{})
	text := printtest.Words(t, written(t, made))
	for i := range made.Pages {
		if want := fmt.Sprintf("page %d of %d", i+1, len(made.Pages)); !strings.Contains(text, want) {
			t.Errorf("nothing says %q", want)
		}
	}
}

func TestWhatThereIsNothingOf(t *testing.T) {
	for _, kind := range []Kind{Labels, BoxLabels, Boxes, Cards} {
		if made := drawn(t, plantest.Empty(), kind, Options{}); len(made.Pages) > 0 {
			t.Errorf("an empty plan has %d pages of %s", len(made.Pages), kind)
		}
	}
	for kind, want := range map[Kind]string{
		Shopping: "There is nothing to buy yet.", LabelRead: "No food is on the menu yet.", Rounds: "There is nothing to pack yet.", Weighing: "There is nothing to weigh yet.",
		Booklet: "Nothing on the menu has been portioned yet.", Overview: "Nobody has been entered yet.",
	} {
		if text := printtest.Words(t, written(t, drawn(t, plantest.Empty(), kind, Options{}))); !strings.Contains(text, want) {
			t.Errorf("%s of an empty plan says %q", kind, text)
		}
	}
}

func TestSamePlanSamePapers(t *testing.T) {
	for _, kind := range Kinds() {
		first, second := written(t, drawn(t, plantest.Small(), kind, Options{})), written(t, drawn(t, plantest.Small(), kind, Options{}))
		if !bytes.Equal(first, second) {
			t.Errorf("%s differs", kind)
		}
	}
}

// Black ink alone loses nothing: the same words stand on the same pages.
func TestBlackSaysTheSame(t *testing.T) {
	for _, kind := range Kinds() {
		colour, black := drawn(t, plantest.Small(), kind, Options{}), drawn(t, plantest.Small(), kind, Options{Black: true})
		if a, b := printtest.Words(t, written(t, colour)), printtest.Words(t, written(t, black)); a != b {
			t.Errorf("%s says %q in colour and %q in black", kind, a, b)
		}
		for i := range black.Pages {
			for _, ink := range printtest.Inks(&black.Pages[i]) {
				if ink.R != ink.G || ink.G != ink.B {
					t.Errorf("%s in black has the ink %v", kind, ink)
				}
			}
		}
	}
}

func TestAllergensAreOnEveryPaperWhereTheyMatter(t *testing.T) {
	p := plantest.Small()
	for kind, want := range map[Kind][]string{
		Labels:    {"CONTAINS peanuts", "NOT KNOWN TO BE FREE OF soybeans"},
		Rounds:    {"CONTAINS peanuts", "free of peanuts", "CLEAN FIRST"},
		Weighing:  {"free of peanuts", "CLEAN FIRST"},
		Cards:     {"ALLERGIC, TRACES HARM: peanuts", "pen in the top pocket", "Reaction to food"},
		Booklet:   {"CONTAINS peanuts", "carbon monoxide"},
		Cautions:  {"Read every label again", "local rules"},
		Shopping:  {"Compare every package"},
		LabelRead: {"peanuts: NOT KNOWN", "proves nothing"},
	} {
		text := printtest.Words(t, written(t, drawn(t, p, kind, Options{})))
		for _, words := range want {
			if !strings.Contains(text, words) {
				t.Errorf("%s does not say %q", kind, words)
			}
		}
	}
}

// The check-list for labels names foods and allergens, never whom they harm.
func TestLabelsToReadNameNobody(t *testing.T) {
	p := plantest.Small()
	text := printtest.Words(t, written(t, drawn(t, p, LabelRead, Options{})))
	for i := range p.Trip.Crew {
		if name := p.Trip.Crew[i].Name; strings.Contains(text, name) {
			t.Errorf("it names %s", name)
		}
	}
}

// The sheet that stays at home tells nothing of anybody's health.
func TestOverviewTellsNothingOfHealth(t *testing.T) {
	p := plantest.Small()
	p.Trip.Crew[0].Notes, p.Trip.Crew[1].BodyMass, p.Trip.Crew[1].Age = "asthma", 61_300_000, 47
	text := strings.ToLower(printtest.Words(t, written(t, drawn(t, p, Overview, Options{}))))
	for _, private := range []string{"peanut", "pen in", "vegan", "allerg", "asthma", "61.3", "61 kg", "47", "kcal", "diet", "medicine"} {
		if strings.Contains(text, private) {
			t.Errorf("it says %q", private)
		}
	}
	for _, want := range []string{"=1+1", "(days 1 to 2)", "hut to lake", "valley post", "tue 21 jul 2026", "12 km", "500 m"} {
		if !strings.Contains(text, want) {
			t.Errorf("it does not say %q: %s", want, text)
		}
	}
}

func TestOverviewIsOnePage(t *testing.T) {
	if made := drawn(t, large(t, 60, 21), Overview, Options{Paper: press.Letter}); len(made.Pages) != 1 {
		t.Errorf("60 people over 21 days take %d pages", len(made.Pages))
	}
}

// Every bag of the plan is on the lists that say they have all.
func TestListsHaveEveryBag(t *testing.T) {
	p := large(t, 10, 4)
	for _, kind := range []Kind{Rounds, Booklet} {
		said := texts(drawn(t, p, kind, Options{}))
		for _, bag := range p.Bags.Bags {
			if !strings.Contains(said, bag.Code) {
				t.Errorf("%s lacks bag %s", kind, bag.Code)
			}
		}
	}
	weighed := texts(drawn(t, p, Weighing, Options{}))
	for _, bulk := range p.Packing.Bulk {
		for _, into := range bulk.Into {
			for _, bag := range p.Bags.Bags {
				if bag.Key == into.Bag && !strings.Contains(weighed, bag.Code) {
					t.Errorf("the weighing list lacks bag %s", bag.Code)
				}
			}
		}
	}
}

// texts is everything that is said on the pages.
func texts(made *Print) string {
	var all []string
	for i := range made.Pages {
		all = append(all, printtest.Texts(&made.Pages[i])...)
	}
	return strings.Join(all, "\n")
}

// A recipe that fits on a page is on one page: its name and its last step.
func TestNoRecipeIsCut(t *testing.T) {
	p := large(t, 6, 5)
	for i := range p.Trip.Recipes {
		p.Trip.Recipes[i].Name = fmt.Sprintf("Recipe no. %d.", i)
		p.Trip.Recipes[i].Method = []string{"Boil.", fmt.Sprintf("Last step of %d.", i)}
	}
	made := drawn(t, p, Booklet, Options{})
	cards := 0
	for i := range made.Pages {
		said := printtest.Texts(&made.Pages[i])
		for n := range p.Trip.Recipes {
			if slices.Contains(said, fmt.Sprintf("Last step of %d.", n)) {
				cards++
				if !slices.Contains(said, fmt.Sprintf("Recipe no. %d.", n)) {
					t.Errorf("page %d has the end of recipe %d without its beginning", i+1, n)
				}
			}
		}
	}
	if cards < 3 {
		t.Errorf("only %d recipes are in the booklet", cards)
	}
}

func TestChosenDaysMembersAndStations(t *testing.T) {
	p := plantest.Small()
	if said := texts(drawn(t, p, Labels, Options{Days: []int{3}})); strings.Contains(said, "1D-A") || !strings.Contains(said, "3D-A") {
		t.Errorf("the labels of day 3 say %s", said)
	}
	if said := texts(drawn(t, p, Labels, Options{Members: []trip.MemberID{2}})); strings.Contains(said, "3D-A") || !strings.Contains(said, "1D-B") {
		t.Errorf("the labels of member 2 say %s", said)
	}
	if said := texts(drawn(t, p, Cards, Options{Members: []trip.MemberID{3}})); strings.Contains(said, "\n=1+1\n") || !strings.Contains(said, plantest.SignsName) {
		t.Errorf("the cards of member 3 say %s", said)
	}
	if said := texts(drawn(t, p, Booklet, Options{Days: []int{1}})); strings.Contains(said, "Day 3") || !strings.Contains(said, "Day 1") {
		t.Errorf("the booklet of day 1 says %s", said)
	}
	if said := texts(drawn(t, p, Rounds, Options{Stations: []packing.Station{packing.Label}})); strings.Contains(said, "1D-A") || !strings.Contains(said, "1D-B") {
		t.Errorf("the list of the label station says %s", said)
	}
	p.Trip.Progress.Packed = []trip.PackedBag{{Bag: p.Bags.Bags[0].Key, Done: true}}
	if said := texts(drawn(t, p, Labels, Options{Unpacked: true})); strings.Contains(said, "1D-A") || !strings.Contains(said, "1D-B") {
		t.Errorf("the labels of what is not packed say %s", said)
	}
}

func TestEveryStationHasAName(t *testing.T) {
	seen := map[string]bool{}
	for _, station := range packing.Stations() {
		seen[station.Name().String()] = true
	}
	if len(seen) != 5 {
		t.Errorf("five stations have the names %v", seen)
	}
}

func TestKindsHaveNamesOfTheirOwn(t *testing.T) {
	seen := map[string]bool{}
	for _, kind := range Kinds() {
		for _, text := range []string{kind.Name().String(), kind.About().String(), string(kind)} {
			if text == "" || seen[text] {
				t.Errorf("%s: %q is empty or stands twice", kind, text)
			}
			seen[text] = true
		}
	}
}

func TestMissingLettersAreTold(t *testing.T) {
	made := drawn(t, plantest.Small(), Cards, Options{})
	if got := string(made.Missing); got != "咲美" {
		t.Errorf("missing are %q", got)
	}
	if !strings.Contains(texts(made), "‹?›") {
		t.Error("nothing marks the place of the missing letters")
	}
}

func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	for _, kind := range Kinds() {
		if _, err := Draw(ctx, plantest.Small(), kind, Options{}, nil); !errors.Is(err, context.Canceled) {
			t.Errorf("%s: error %v", kind, err)
		}
	}
}

func TestUnknownPaper(t *testing.T) {
	if _, err := Draw(context.Background(), plantest.Small(), "poem", Options{}, nil); err == nil {
		t.Error("a poem was printed")
	}
}

// What a bag of several meals is for stands on its label, and beside what each
// recipe takes from it.
func TestWhatEachMealTakesFromAStore(t *testing.T) {
	p := large(t, 10, 4)
	labels, booklet := texts(drawn(t, p, Labels, Options{})), texts(drawn(t, p, Booklet, Options{}))
	found := 0
	for i := range p.Bags.Bags {
		bag := &p.Bags.Bags[i]
		if bag.Kind != bags.StoreBag || len(bag.Uses) < 2 {
			continue
		}
		found++
		for _, use := range bag.Uses {
			if want := fmt.Sprintf("Day %d, %s: %s", use.Day, use.Meal, strings.ReplaceAll(use.Mass().String(), " ", "\u00a0")); !strings.Contains(labels, want) {
				t.Errorf("the label of %s does not say %q", bag.Code, want)
			}
		}
		if !strings.Contains(booklet, bag.Code) {
			t.Errorf("the booklet does not say what comes from %s", bag.Code)
		}
	}
	if found == 0 {
		t.Fatal("no store bag serves several meals")
	}
}

// A card is a sheet to fold, not two, while smaller text can bring that about.
func TestPocketCardIsASheet(t *testing.T) {
	p := large(t, 12, 7)
	if made := drawn(t, p, Cards, Options{}); len(made.Pages) != len(p.Trip.Crew) {
		t.Errorf("the cards of %d people over 7 days take %d sheets", len(p.Trip.Crew), len(made.Pages))
	}
}

// A packer reads where a bag goes when it is done.
func TestRoundsSayWhereBagsGo(t *testing.T) {
	p := large(t, 12, 9)
	said := texts(drawn(t, p, Rounds, Options{}))
	if len(p.Resupply.Boxes) == 0 {
		t.Fatal("the trip sends no box")
	}
	for i := range p.Resupply.Boxes {
		if want := "into the box for " + p.Trip.Point(p.Resupply.Boxes[i].Point).Name; !strings.Contains(said, want) {
			t.Errorf("it does not say %q", want)
		}
	}
	if !strings.Contains(said, "Done, to the packs") {
		t.Error("it does not say what goes to the packs")
	}
}

// Chosen recipes are printed alone: one that is cooked with its pots, one that is not with the amounts of the recipe, for one and for the crew,
// its swaps and its allergens.
func TestCardsOfChosenRecipes(t *testing.T) {
	p := large(t, 5, 2)
	cooked := p.Trip.Recipe(p.Portions.Batches[0].Recipe)
	var other *trip.Recipe
	for i := range p.Trip.Recipes {
		one := &p.Trip.Recipes[i]
		if !slices.ContainsFunc(p.Portions.Batches, func(b portions.Batch) bool { return b.Recipe == one.ID }) && len(one.Ingredients) > 1 {
			other = one
		}
	}
	one := &other.Ingredients[0]
	one.Amount, one.Swaps = 70*units.Gram, []trip.Swap{{Food: other.Ingredients[1].Food, Amount: 31 * units.Gram}, {}}
	food := p.Trip.Food(one.Food)
	food.Allergens = map[trip.Allergen]trip.Presence{trip.Milk: trip.Contains}
	said := texts(drawn(t, p, Booklet, Options{Recipes: []trip.RecipeID{other.ID}}))
	for _, want := range []string{other.Name, food.Name, "70\u00a0g", "350\u00a0g", "For 5", "or " + p.Trip.Food(other.Ingredients[1].Food).Name, "31\u00a0g", "or left out", "CONTAINS milk"} {
		if !strings.Contains(said, want) {
			t.Errorf("the card of a recipe that is not served lacks %q", want)
		}
	}
	if strings.Contains(said, cooked.Name) {
		t.Errorf("%s was not chosen", cooked.Name)
	}
	said = texts(drawn(t, p, Booklet, Options{Recipes: []trip.RecipeID{cooked.ID}}))
	if !strings.Contains(said, cooked.Name) || !strings.Contains(said, "Eaters") || strings.Contains(said, "For one") {
		t.Error("the card of a recipe that is served has not its pots")
	}
}

// Counted foods are told in pieces, with what they weigh, wherever somebody takes them into the hand.
// An amount to weigh that breaks in its figures is read wrongly.
func TestAmountsToWeighStandInOnePiece(t *testing.T) {
	p := large(t, 9, 4)
	p.Trip.Foods[1].PieceMass = 31 * units.Gram
	for _, system := range []units.System{units.Metric, units.US} {
		made := drawn(t, p, Weighing, Options{Reader: prose.Reader{Units: system}})
		amounts := 0
		for _, line := range strings.Split(texts(made), "\n") {
			open, closed := strings.Count(line, "("), strings.Count(line, ")")
			if open != closed {
				t.Fatalf("%s: a line breaks in %q", system, line)
			}
			amounts += open
		}
		if system == units.US && amounts == 0 {
			t.Error("nothing is told in ounces and grams")
		}
	}
}

func TestCountedFoodsAreToldInPieces(t *testing.T) {
	p := large(t, 5, 3)
	for i := range p.Trip.Foods { // what any bag holds is told as a number of pieces of a milligram
		p.Trip.Foods[i].PieceMass = units.Milligram
	}
	for _, kind := range []Kind{Labels, Weighing, Booklet} {
		if !strings.Contains(texts(drawn(t, p, kind, Options{})), "\u00a0pieces") {
			t.Errorf("%s tells of no pieces", kind)
		}
	}
}

// No parcel holds fuel, so the list of the boxes says how it gets there; and a
// bag weighs there what is sent of it.
func TestBoxesTellOfFuelAndWhatIsSent(t *testing.T) {
	for _, c := range []struct {
		bought, posted bool
		says           string
	}{
		{true, true, "Fuel containers: 1, bought there."},
		{false, true, "Fuel containers: 1, by a carrier who is licensed for them, never in a parcel of ordinary post."},
		{false, false, "Fuel containers: 1, brought along beside the parcels."},
	} {
		p := plantest.Small()
		box := &p.Resupply.Boxes[0]
		box.FuelBoughtThere, box.Posted = c.bought, c.posted
		box.BoughtThere = []resupply.Bought{{Bag: box.Bags[0], Food: 1, Mass: 123 * units.Gram}}
		text := printtest.Words(t, written(t, drawn(t, p, Boxes, Options{})))
		if !strings.Contains(text, c.says) || !strings.Contains(text, "387 g") || strings.Contains(text, "510 g ") {
			t.Errorf("%q, 387 g: %s", c.says, text)
		}
	}
	p := plantest.Small()
	p.Resupply.Boxes[0].Posted = false
	for _, kind := range []Kind{Overview, BoxLabels} { // whoever brings it must know when
		if text := printtest.Words(t, written(t, drawn(t, p, kind, Options{}))); !strings.Contains(text, "brought by somebody,") || !strings.Contains(text, "leaves home on Fri 10 Jul 2026") {
			t.Errorf("%s: %s", kind, text)
		}
	}
	p.Resupply.Boxes[0].Fuel = nil
	if text := printtest.Words(t, written(t, drawn(t, p, Boxes, Options{}))); strings.Contains(text, "Fuel") {
		t.Errorf("a box without fuel says %s", text)
	}
}

// Who carries water to a dry camp reads on the card how much, and for what.
func TestCardsTellTheWaterToADryCamp(t *testing.T) {
	made, err := plan.Make(context.Background(), dryTrip(), plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for i := range made.Carry.Members {
		m := &made.Carry.Members[i]
		said := texts(drawn(t, made, Cards, Options{Members: []trip.MemberID{m.Member}}))
		d := &m.Days[1]
		want := fmt.Sprintf("%s of water to the dry camp: %s to drink, %s to cook with", d.CarryIn(), d.CarryIn()-d.ToCookWith(), d.ToCookWith())
		if d.Water == 0 || !strings.Contains(spaced(said), want) {
			t.Errorf("the card lacks %q", want)
		}
	}
}

// dryTrip is a trip whose second camp has no water.
func dryTrip() *trip.Trip {
	on := triptest.Large(5, 3, 3)
	on.Settings.FillOpenSlots = true
	on.Days[1].DryCamp, on.Days[1].SnowWater = true, false
	return on
}

// spaced makes every kind of space one.
func spaced(text string) string { return strings.Join(strings.Fields(text), " ") }

// Ounces and the grams beside them may stand on two lines, each whole; all in
// one would be broken within a number in a narrow column.
func TestOuncesAreBrokenBeforeTheGramsOnly(t *testing.T) {
	p := large(t, 5, 3)
	p.Trip.Units = units.US
	told := 0
	for _, line := range strings.Split(texts(drawn(t, p, Weighing, Options{})), "\n") {
		if strings.Contains(line, "oz") {
			told++
			if strings.Count(line, "(") != strings.Count(line, ")") {
				t.Errorf("a line is %q", line)
			}
		}
	}
	if told == 0 {
		t.Error("nothing is told in ounces")
	}
}
