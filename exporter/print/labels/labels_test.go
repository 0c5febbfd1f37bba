package labels

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/bags"
	"sumpter/domain/findings"
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
	"sumpter/exporter/plantest"
	"sumpter/exporter/print/fonts"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/printtest"
)

func all(p *plan.Plan) []*bags.Bag {
	list := make([]*bags.Bag, len(p.Bags.Bags))
	for i := range list {
		list[i] = &p.Bags.Bags[i]
	}
	return list
}

func english(p *plan.Plan, grid Grid) *press.Press {
	return press.New(p, fonts.Bundled(), prose.Reader{}, grid.Paper, press.Colour)
}

func drawn(t *testing.T, p *plan.Plan, grid Grid, start int) []page.Page {
	t.Helper()
	pages, err := Draw(context.Background(), english(p, grid), grid, all(p), start, nil)
	if err != nil {
		t.Fatal(err)
	}
	return pages
}

func large(t *testing.T, people, days int) *plan.Plan {
	t.Helper()
	p, err := plan.Make(context.Background(), triptest.Large(people, days, 7), plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestEveryBagHasOneLabelOnEverySheet(t *testing.T) {
	p := large(t, 8, 4)
	for _, sheet := range Sheets() {
		content := printtest.Write(t, drawn(t, p, sheet.Grid, 1))
		words := strings.Fields(printtest.Text(t, content))
		count := map[string]int{}
		for _, word := range words {
			count[word]++
		}
		for _, bag := range p.Bags.Bags {
			// Other labels of the same pot may name it after "with".
			if count[bag.Code] == 0 {
				t.Errorf("%s: bag %s has no label", sheet.Key, bag.Code)
			}
		}
		want := (len(p.Bags.Bags) + sheet.Grid.Count() - 1) / sheet.Grid.Count()
		if got := printtest.Pages(t, content); got != want {
			t.Errorf("%s: %d pages for %d bags, want %d", sheet.Key, got, len(p.Bags.Bags), want)
		}
		printtest.FontsEmbedded(t, content)
	}
}

// codes counts the large codes: those that begin a label.
func codes(pages []page.Page) map[string]int {
	count := map[string]int{}
	for i := range pages {
		for _, mark := range pages[i].Marks {
			if text, ok := mark.(page.Text); ok && text.Line.Size > sizes[0] {
				count[printtest.Says(text)]++
			}
		}
	}
	return count
}

func TestEveryCodeIsLargeOnce(t *testing.T) {
	p := large(t, 8, 4)
	for _, sheet := range Sheets() {
		count := codes(drawn(t, p, sheet.Grid, 1))
		for _, bag := range p.Bags.Bags {
			if count[bag.Code] != 1 {
				t.Errorf("%s: the code %s is large %d times", sheet.Key, bag.Code, count[bag.Code])
			}
		}
	}
}

func TestLabelsSayAllergensAndWhatMatters(t *testing.T) {
	p := plantest.Small()
	words := printtest.Words(t, printtest.Write(t, drawn(t, p, Usual(press.A4).Grid, 1)))
	for _, want := range []string{
		"1D-A", "CONTAINS peanuts", "NOT KNOWN TO BE FREE OF soybeans", "300 g rice", "80 g +peanuts", "Rice pot",
		"DINNER", "Day 1, Mon 20 Jul", "only for", "Add 600 mL of water", "14 min on the flame", "5 min off the flame",
		"390 g", "pack: =1+1", "box: Valley post, then pack: =1+1", "not known how long it keeps", "no declared allergen",
		"Boil the water. Stir in the rice.",
	} {
		if !strings.Contains(words, want) {
			t.Errorf("no label says %q in %s", want, words)
		}
	}
}

// A reserve is for no meal: the label says when it may be opened, and what is not known to keep is said to be so.
func TestAReserveIsNotForTheTable(t *testing.T) {
	p := plantest.Small()
	bag := &p.Bags.Bags[0]
	bag.Kind, bag.Reserve, bag.Uses, bag.Meal, bag.Recipe, bag.Place = bags.ReserveBag, true, nil, "", 0, trip.AtBowl
	p.Findings = append(p.Findings, findings.Finding{Code: "reserve-does-not-keep", Place: findings.Place{Food: bag.Contents[0].Food}})
	words := printtest.Words(t, printtest.Write(t, drawn(t, p, Usual(press.A4).Grid, 1)))
	for _, want := range []string{"ONLY IN NEED", "emergency reserve", "sealed until there is need", "not known how long it keeps"} {
		if !strings.Contains(strings.ToLower(words), strings.ToLower(want)) {
			t.Errorf("the label does not say %q in %s", want, words)
		}
	}
}

// A bag is not safe on the day it is eaten: the label says so, in place of a
// day until which it keeps.
func TestWhatDoesNotKeepIsSaid(t *testing.T) {
	p := plantest.Small()
	p.Spoilage.Fates[1].Verdict = "not safe"
	words := printtest.Words(t, printtest.Write(t, drawn(t, p, Usual(press.A4).Grid, 1)))
	if strings.Contains(words, "NOT SAFE") {
		t.Error("a label warns of a food that is in none of the bags")
	}
	p.Spoilage.Fates[0].Verdict = "not safe"
	words = printtest.Words(t, printtest.Write(t, drawn(t, p, Usual(press.A4).Grid, 1)))
	if !strings.Contains(words, "NOT SAFE on day 1") {
		t.Errorf("nothing says that the rice of day 1 is not safe: %s", words)
	}
}

func TestPartlyUsedSheet(t *testing.T) {
	grid := Sheets()[0].Grid // eight
	p := plantest.Small()
	pages := drawn(t, p, grid, 7)
	if len(pages) != 2 {
		t.Fatalf("three labels from the seventh of eight on take %d sheets", len(pages))
	}
	for _, mark := range pages[0].Marks {
		if _, top, _, _ := printtest.Bounds(mark); top < grid.Top+3*grid.Height-1 {
			t.Errorf("%s is on a label that is used already", printtest.Describe(mark))
		}
	}
	for _, start := range []int{0, 9} {
		if _, err := Draw(context.Background(), english(p, grid), grid, all(p), start, nil); err == nil {
			t.Errorf("a sheet of eight can begin with label %d", start)
		}
	}
}

func TestNoBagsNoSheet(t *testing.T) {
	if pages := drawn(t, plantest.Empty(), Usual(press.A4).Grid, 3); len(pages) != 0 {
		t.Errorf("an empty plan has %d sheets of labels", len(pages))
	}
}

func TestSamePlanSameBytes(t *testing.T) {
	p := plantest.Small()
	grid := Usual(press.Letter).Grid
	first, second := printtest.Write(t, drawn(t, p, grid, 1)), printtest.Write(t, drawn(t, p, grid, 1))
	if !bytes.Equal(first, second) {
		t.Error("the labels of one plan differ")
	}
}

func TestCancelledInTheMiddle(t *testing.T) {
	p := plantest.Small()
	grid := Usual(press.A4).Grid
	list := all(p)
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	drawn := 0
	_, err := Draw(ctx, english(p, grid), grid, list, 1, func(done int) {
		drawn = done
		if done == 2 {
			cancel()
		}
	})
	if !errors.Is(err, context.Canceled) || drawn != 2 || len(list) < 3 {
		t.Errorf("after %d of %d labels: %v", drawn, len(list), err)
	}
}

func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	p := plantest.Small()
	grid := Usual(press.A4).Grid
	if _, err := Draw(ctx, english(p, grid), grid, all(p), 1, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("error %v", err)
	}
}

func TestSheetsFitTheirPaper(t *testing.T) {
	seen := map[string]bool{}
	for _, sheet := range Sheets() {
		if err := sheet.Grid.Check(); err != nil {
			t.Errorf("%s: %v", sheet.Key, err)
		}
		if seen[sheet.Key] {
			t.Errorf("%s stands twice", sheet.Key)
		}
		seen[sheet.Key] = true
	}
	for _, paper := range []press.Paper{press.A4, press.Letter} {
		if usual := Usual(paper); usual.Grid.Paper != paper {
			t.Errorf("the usual sheet of %s is on %s", paper.Name, usual.Grid.Paper.Name)
		}
	}
}

func TestGridsThatCannotBe(t *testing.T) {
	good := Sheets()[0].Grid
	for name, spoil := range map[string]func(*Grid){
		"no columns":    func(g *Grid) { g.Columns = 0 },
		"too many":      func(g *Grid) { g.Columns, g.Rows = 50, 50 },
		"too narrow":    func(g *Grid) { g.Width = 30 * mm },
		"too low":       func(g *Grid) { g.Height = 10 * mm },
		"negative":      func(g *Grid) { g.Left = -1 },
		"not a number":  func(g *Grid) { g.Width = press.Points(math.NaN()) },
		"off the right": func(g *Grid) { g.Width = 110 * mm },
		"off the end":   func(g *Grid) { g.Top = 60 * mm },
	} {
		g := good
		spoil(&g)
		var fault *Fault
		if err := g.Check(); !errors.As(err, &fault) || strings.Contains(err.Error(), "%!") {
			t.Errorf("%s: error %v", name, err)
		}
	}
}

// Whatever is in a bag, its label keeps to its cell, no text lies over other
// text, and the code and each allergen are there (or it says that they do not
// fit).
func TestAnyBagFitsItsLabel(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		grid := anyGrid().Draw(rt, "grid")
		p := plantest.Small()
		bag := anyBag(p).Draw(rt, "bag")
		p.Bags.Bags = []bags.Bag{bag}
		pages, err := Draw(context.Background(), english(p, grid), grid, all(p), 1, nil)
		if err != nil {
			rt.Fatal(err)
		}
		cellRight, cellBottom := grid.Left+grid.Width+0.5, grid.Top+grid.Height+0.5
		var said strings.Builder
		for _, mark := range pages[0].Marks {
			if rule, ok := mark.(page.Rule); ok && grid.Cut && rule.Dash == 2 {
				continue
			}
			left, top, right, bottom := printtest.Bounds(mark)
			if left < grid.Left || top < grid.Top || right > cellRight || bottom > cellBottom {
				rt.Errorf("%s reaches (%.1f %.1f) to (%.1f %.1f), out of its label", printtest.Describe(mark), left, top, right, bottom)
			}
			if text, ok := mark.(page.Text); ok {
				said.WriteString(printtest.Says(text) + " ")
			}
		}
		for _, fault := range printtest.Over(&pages[0]) {
			rt.Error(fault)
		}
		words := solid(said.String()) // long words are broken over lines
		if !strings.Contains(words, bag.Code) {
			rt.Errorf("the label does not say %s", bag.Code)
		}
		for _, allergen := range bag.Allergens {
			if !strings.Contains(words, solid(string(allergen.Allergen))) && !strings.Contains(words, fmt.Sprintf("ALLERGENS:%d", len(bag.Allergens))) {
				rt.Errorf("the label does not say %s: %s", allergen.Allergen, words)
			}
		}
	})
}

func solid(text string) string { return strings.Join(strings.Fields(text), "") }

func anyGrid() *rapid.Generator[Grid] {
	return rapid.Custom(func(t *rapid.T) Grid {
		if rapid.Bool().Draw(t, "sold") {
			return rapid.SampledFrom(Sheets()).Draw(t, "sheet").Grid
		}
		return Grid{
			Paper: press.A4, Columns: 1, Rows: 1, Left: 5 * mm, Top: 5 * mm,
			Width: press.Points(rapid.IntRange(45, 200).Draw(t, "width")) * mm, Height: press.Points(rapid.IntRange(25, 285).Draw(t, "height")) * mm,
		}
	})
}

func anyBag(p *plan.Plan) *rapid.Generator[bags.Bag] {
	return rapid.Custom(func(t *rapid.T) bags.Bag {
		bag := p.Bags.Bags[0]
		bag.Meal = rapid.SampledFrom(trip.Meals()).Draw(t, "meal")
		bag.Member = trip.MemberID(rapid.IntRange(0, 3).Draw(t, "member"))
		bag.Parts = rapid.IntRange(1, 12).Draw(t, "parts")
		bag.Water = units.Volume(rapid.IntRange(0, 5000).Draw(t, "water")) * units.Millilitre
		bag.Double, bag.Crushable, bag.Melts = rapid.Bool().Draw(t, "double"), rapid.Bool().Draw(t, "crushable"), rapid.Bool().Draw(t, "melts")
		name := rapid.StringN(0, 120, -1)
		p.Trip.Crew[0].Name, p.Trip.Recipes[0].Name, p.Trip.Groups[0].Name = name.Draw(t, "carrier"), name.Draw(t, "recipe"), name.Draw(t, "group")
		p.Trip.Recipes[0].Method = rapid.SliceOfN(rapid.StringN(0, 400, -1), 0, 10).Draw(t, "method")
		bag.Contents = nil
		for i := range rapid.IntRange(1, 30).Draw(t, "foods") {
			p.Trip.Foods = append(p.Trip.Foods, trip.Food{ID: trip.FoodID(100 + i), Name: name.Draw(t, "food")})
			bag.Contents = append(bag.Contents, bags.Content{Food: trip.FoodID(100 + i), Mass: units.Mass(rapid.IntRange(100, 9_000_000).Draw(t, "mass"))})
		}
		bag.Allergens = nil
		for _, allergen := range trip.KnownAllergens()[:rapid.IntRange(0, len(trip.KnownAllergens())).Draw(t, "allergens")] {
			if presence := rapid.SampledFrom(trip.Presences()).Draw(t, "presence"); presence != trip.Free {
				bag.Allergens = append(bag.Allergens, bags.Allergen{Allergen: allergen, Presence: presence})
			}
		}
		return bag
	})
}
