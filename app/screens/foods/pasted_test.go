package foods

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// near compares with a figure that is known.
func near(got optional.Value[float64], want float64) bool {
	value, known := got.Get()
	return known && math.Abs(value-want) < 0.05
}

// As labels and lists head their figures, in any order.
func TestATableAddsFoods(t *testing.T) {
	const fresh = "Rusks of spelt"
	for name, c := range map[string]struct {
		text   string
		kcal   units.Kcal
		sodium float64 // mg; below 0: not known
		fibre  float64 // g
		means  trip.CarbConvention
	}{
		// 1 g of salt holds 400 mg of sodium: Regulation (EU) 1169/2011, Annex I, 11.
		"a European label":               {"Name\tEnergy (kcal)\tFat\tCarbohydrate\tFibre\tProtein\tSalt\n" + fresh + "\t390\t5.5\t70\t6,5\t12\t1\n", 390, 400, 6.5, trip.AvailableCarbohydrate},
		"salt with its unit in the cell": {"Salt\tCarbohydrate\tProtein\tFat\tFiber\tProduct\tEnergy\n1 g\t70 g\t12 g\t5.5 g\t6.5 g\t" + fresh + "\t1632 kJ / 390 kcal\n", 390, 400, 6.5, trip.AvailableCarbohydrate},
		"for 100 g, in kilojoules":       {"Food\tEnergy (kJ/100 g)\tProtein, g per 100 g\tFat [g/100g]\tCarbs (per 100 g)\tDietary fibre (g)\tSodium (g)\n" + fresh + "\t1631.76\t12\t5.5\t70\t6.5\t0.4\n", 390, 400, 6.5, trip.AvailableCarbohydrate},
		"total carbohydrate":             {"Item\tCalories\tTotal fat\tTotal carbohydrate\tDietary fiber\tProtein\tSodium\n" + fresh + "\t390\t5.5\t70\t6.5\t12\t400\n", 390, 400, 6.5, trip.TotalCarbohydrate},
		"salt not told":                  {"Name\tkcal\tProtein\tFat\tCarb.\tFibre\tSalt\n" + fresh + "\t390\t12\t5.5\t70\t6.5\t?\n", 390, -1, 6.5, trip.AvailableCarbohydrate},
	} {
		t.Run(name, func(t *testing.T) {
			d := pantryDesk(t)
			was := d.Document.Trip()
			d.table.Paste(c.text)
			if len(d.bench.Trip().Foods) != len(was.Foods)+1 {
				t.Fatalf("no food was added; said %q", d.Said)
			}
			food := d.food(fresh)
			n := food.Per100g
			if math.Abs(float64(n.Kcal-c.kcal)) > 0.01 || !near(n.ProteinGrams, 12) || !near(n.FatGrams, 5.5) || !near(n.CarbGrams, 70) || !near(n.FibreGrams, c.fibre) || n.CarbConvention != c.means {
				t.Errorf("got %+v; said %q", n, d.Said)
			}
			if known := n.SodiumMilligrams.Known(); known != (c.sodium >= 0) || known && !near(n.SodiumMilligrams, c.sodium) {
				t.Errorf("sodium %v, want %g", n.SodiumMilligrams, c.sodium)
			}
			for _, allergen := range trip.DeclaredAllergens() {
				if food.Presence(allergen) != trip.NotKnown {
					t.Errorf("%s is %s of a food whose label nobody read", allergen, food.Presence(allergen))
				}
			}
			if len(food.Diets) != 0 || food.Storage.TCS != trip.TCSUnknown || food.Storage.ShelfDays.Known() {
				t.Errorf("diets %v and storage %+v were made up", food.Diets, food.Storage)
			}
			if !strings.Contains(d.Said, "1 new") || !strings.Contains(d.Said, "read each label") {
				t.Errorf("said %q", d.Said)
			}
			if at, _ := d.table.Selected(); at != food.ID {
				t.Errorf("the cursor is on food %d, not on what was added", at)
			}
			d.WantUndo("paste into the foods")
			if err := d.Document.Undo(); err != nil || !trip.Equal(was, d.Document.Trip()) {
				t.Errorf("one undo does not take the table back (%v)", err)
			}
		})
	}
}

// What cannot be taken is told, and then nothing is.
func TestATableOfFoodsWithAFaultChangesNothing(t *testing.T) {
	for name, c := range map[string]struct{ text, want string }{
		"no energy at all":      {"Name\tProtein\tFat\nRusks\t12\t5\n", "Energy"},
		"an energy left out":    {"Name\tEnergy\nRusks\t390\nCrispbread\t\n", "Crispbread"},
		"a figure that is none": {"Name\tEnergy\tSalt\nRusks\t390\ta pinch\n", "Sodium"},
		"a name twice":          {"Name\tEnergy\nRusks\t390\nrusks\t380\n", "usks"},
	} {
		d := pantryDesk(t)
		was := d.Document.Trip()
		d.table.Paste(c.text)
		if !trip.Equal(was, d.Document.Trip()) || d.Document.UndoName() != "" || !strings.Contains(d.Said, c.want) || !strings.Contains(d.Said, "Nothing was pasted") {
			t.Errorf("%s: said %q", name, d.Said)
		}
	}
}

func TestWhatATableTellsBesidesIsNamed(t *testing.T) {
	d := pantryDesk(t)
	d.table.Paste("Name\tEnergy (kcal)\tEnergy (kJ)\tProtein per serving\tAisle\nRusks\t390\t1632\t4\twest\n")
	for _, want := range []string{"Energy (kJ)", "Protein per serving", "Aisle"} {
		if !strings.Contains(d.Said, want) {
			t.Errorf("%s is not told as left out: %q", want, d.Said)
		}
	}
	if d.food("Rusks").Per100g.ProteinGrams.Known() {
		t.Error("a serving was taken for 100 g")
	}
}

func TestATableGoesOverAFoodOfThatName(t *testing.T) {
	d := pantryDesk(t)
	count := len(d.bench.Trip().Foods)
	d.table.Paste("Fibre\tname\n8\tcouscous\n")
	if len(d.bench.Trip().Foods) != count || !near(d.food("Couscous").Per100g.FibreGrams, 8) {
		t.Errorf("%d foods, were %d; said %q", len(d.bench.Trip().Foods), count, d.Said)
	}
}

// The label of the United States tells carbohydrate with its fibre.
func TestCarbohydrateIsThatOfTheLeadersLabels(t *testing.T) {
	made := trip.New("Short walk", 20_000)
	made.Units = units.US
	d := newDesk(t, made)
	d.Screen.Focus()
	benchClipboard(d).SetContent("Name\tEnergy\tCarbohydrate\nRusks\t390\t70\n")
	d.Window.Canvas().Focused().(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutPaste{Clipboard: benchClipboard(d)})
	if got := d.food("Rusks").Per100g.CarbConvention; got != trip.TotalCarbohydrate {
		t.Errorf("carbohydrate is %s; said %q", got, d.Said)
	}
	if d.empty.Visible() || !strings.Contains(d.Said, "with its fibre") {
		t.Errorf("said %q", d.Said)
	}
}

func benchClipboard(d *desk) fyne.Clipboard { return d.bench.Clipboard() }

// What is copied is pasted back without a change.
func TestCopiedFoodsPasteBack(t *testing.T) {
	d := pantryDesk(t)
	d.table.Paste("Name\tEnergy\tCarbohydrate\tSalt\nRusks\t390\t70\t1\n")
	was := d.food("Rusks").Per100g
	d.table.Paste(d.table.Copy())
	if got := d.food("Rusks").Per100g; got != was || strings.Contains(d.Said, "Nothing") {
		t.Errorf("got %+v, was %+v; said %q", got, was, d.Said)
	}
}
