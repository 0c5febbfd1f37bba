package foodenergy

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/science/checkvalues"
)

func TestMacronutrientsAgainstPublishedFigures(t *testing.T) {
	file, err := os.Open("../../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	in := func(compute func(in checkvalues.Inputs) any) func(checkvalues.Row) any {
		return func(row checkvalues.Row) any { return compute(row.Inputs) }
	}
	eu := func(in checkvalues.Inputs) Composition {
		return Composition{Convention: Available, Protein: in.Number(0), Carbohydrate: in.Number(1), Fibre: in.Number(2), Fat: in.Number(3)}
	}
	share := func(nutrient func(Shares) Range, kcalPerG float64, end func(Range) float64) func(checkvalues.Row) any {
		return in(func(in checkvalues.Inputs) any {
			return end(Grams(nutrient(AcceptableShares(false)), in.Number(0), kcalPerG))
		})
	}
	least, most := func(r Range) float64 { return r.Least }, func(r Range) float64 { return r.Most }
	carbohydrate := func(s Shares) Range { return s.Carbohydrate }
	fat, protein := func(s Shares) Range { return s.Fat }, func(s Shares) Range { return s.Protein }
	mainMeal := in(func(in checkvalues.Inputs) any {
		if lacks := MainMealLacks(in.Number(0), in.Number(1)); len(lacks) > 0 {
			return "fail: " + strings.Join(lacks, ", ")
		}
		return "pass"
	})
	checkvalues.Check(t, file, "macros", checkvalues.Answers{
		"Atwater general": in(func(in checkvalues.Inputs) any {
			return AtwaterKcal(Composition{Protein: in.Number(0), Carbohydrate: in.Number(1), Fat: in.Number(2)})
		}),
		"Atwater general with alcohol": in(func(in checkvalues.Inputs) any {
			return AtwaterKcal(Composition{Protein: in.Number(0), Carbohydrate: in.Number(1), Alcohol: in.Number(2)})
		}),
		"EU kcal": in(func(in checkvalues.Inputs) any { return EUKcal(eu(in)) }),
		"EU kJ":   in(func(in checkvalues.Inputs) any { return EUKJ(eu(in)) }),
		"EU kcal with polyols": in(func(in checkvalues.Inputs) any {
			return EUKcal(Composition{Polyols: in.Number(0), Erythritol: in.Number(1), OrganicAcids: in.Number(2)})
		}),
		"same food, kcal x 4.184":   in(func(in checkvalues.Inputs) any { return in.Number(0) * KJPerKcal }),
		"kJ to kcal":                in(func(in checkvalues.Inputs) any { return in.Number(0) / KJPerKcal }),
		"AMDR low, carbohydrate":    share(carbohydrate, CarbohydrateKcalPerG, least),
		"AMDR high, carbohydrate":   share(carbohydrate, CarbohydrateKcalPerG, most),
		"AMDR low, fat":             share(fat, FatKcalPerG, least),
		"AMDR high, fat":            share(fat, FatKcalPerG, most),
		"AMDR low, protein":         share(protein, ProteinKcalPerG, least),
		"AMDR high, protein":        share(protein, ProteinKcalPerG, most),
		"protein target range low":  in(func(in checkvalues.Inputs) any { return in.Number(0) * ActiveProteinLeast }),
		"protein target range high": in(func(in checkvalues.Inputs) any { return in.Number(0) * ActiveProteinMost }),
		"main-meal check":           mainMeal,
		"energy density":            in(func(in checkvalues.Inputs) any { return Density(in.Number(1), in.Number(0)) }),
		"food mass from need":       in(func(in checkvalues.Inputs) any { return GramsFor(in.Number(0), in.Number(1)) }),
		"carbohydrate while moving,": in(func(in checkvalues.Inputs) any {
			hours := in.Number(0)
			return fmt.Sprintf("%g to %g", hours*MovingCarbohydrateLeast, hours*MovingCarbohydrateMost)
		}),
	})
}

// The same food by both conventions: 80 g total carbohydrate with 8 g fibre in
// it is 72 g available (trade science, section 4).
func TestConventionsAgree(t *testing.T) {
	us := Composition{Convention: Total, Protein: 25, Fat: 20, Carbohydrate: 80, Fibre: 8}
	eu := Composition{Convention: Available, Protein: 25, Fat: 20, Carbohydrate: 72, Fibre: 8}
	for name, c := range map[string]Composition{"US": us, "EU": eu} {
		if AtwaterKcal(c) != 600 || EUKcal(c) != 584 || EUKJ(c) != 2453 {
			t.Errorf("%s: have %v, %v kcal and %v kJ, want 600, 584 and 2453", name, AtwaterKcal(c), EUKcal(c), EUKJ(c))
		}
	}
	if bran := (Composition{Carbohydrate: 5, Fibre: 8}); bran.AvailableCarbohydrate() != 0 {
		t.Error("fibre above total carbohydrate must leave 0 available")
	}
}

// Annex XIV, the factors not in the shared rows.
func TestAnnexXIVFactors(t *testing.T) {
	for _, c := range []struct {
		food     Composition
		kcal, kJ float64
	}{
		{Composition{Alcohol: 1}, 7, 29}, {Composition{Polyols: 1}, 2.4, 10}, {Composition{Erythritol: 1}, 0, 0},
		{Composition{OrganicAcids: 1}, 3, 13}, {Composition{Salatrims: 1}, 6, 25},
	} {
		if EUKcal(c.food) != c.kcal || EUKJ(c.food) != c.kJ {
			t.Errorf("%+v: have %v kcal, %v kJ", c.food, EUKcal(c.food), EUKJ(c.food))
		}
	}
}

func TestPlausible(t *testing.T) {
	for _, c := range []struct {
		stated, computed float64
		want             bool
	}{{400, 400, true}, {400, 340, true}, {400, 339, false}, {339, 400, false}, {20, 8, true}, {23, 8, true}, {24, 8, false}, {0, 0, true}} {
		if have := Plausible(c.stated, c.computed); have != c.want {
			t.Errorf("%v against %v: have %v", c.stated, c.computed, have)
		}
	}
}

func TestMainMealNamesAllThatLacks(t *testing.T) {
	if have := fmt.Sprint(MainMealLacks(499, 19)); have != "[energy protein]" {
		t.Error(have)
	}
	if have := MainMealLacks(500, 20); len(have) != 0 {
		t.Error(have)
	}
}

func TestMinorsNeedMoreFatAndLessProtein(t *testing.T) { // IOM 2005
	minors := AcceptableShares(true)
	if !minors.Fat.Contains(0.25) || minors.Fat.Contains(0.24) || minors.Protein.Contains(0.31) {
		t.Errorf("%+v", minors)
	}
}

// IOM 2005, from memory: 38 and 25 g for men and women to 50, 30 and 21 above.
func TestFibreByAge(t *testing.T) {
	for age, want := range map[float64][2]float64{2: {19, 19}, 8: {25, 25}, 13: {26, 31}, 16: {26, 38}, 35: {25, 38}, 50: {25, 38}, 51: {21, 30}} {
		if female, male := Fibre(age); female != want[0] || male != want[1] {
			t.Errorf("%v years: have %v and %v, want %v", age, female, male, want)
		}
	}
}

func TestEnergyProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		gram := func(name string) float64 { return rapid.Float64Range(0, 100).Draw(t, name) }
		c := Composition{Protein: gram("protein"), Fat: gram("fat"), Carbohydrate: gram("carbohydrate"), Alcohol: gram("alcohol"), Polyols: gram("polyols")}
		c.Fibre = min(c.Carbohydrate, gram("fibre"))
		if c.Convention = Convention(rapid.IntRange(0, 1).Draw(t, "convention")); c.Convention == Available {
			c.Fibre = gram("EU fibre")
		}
		richer := c
		richer.Fat++
		if AtwaterKcal(richer) < AtwaterKcal(c)+8.9 || EUKcal(richer) < EUKcal(c)+8.9 || EUKJ(richer) < EUKJ(c)+36.9 {
			t.Error("a gram of fat must add 9 kcal and 37 kJ")
		}
		if gap := c.TotalCarbohydrate() - c.AvailableCarbohydrate(); math.Abs(gap-c.Fibre) > 1e-9 {
			t.Errorf("the conventions must differ by the fibre: %v and %v", gap, c.Fibre)
		}
		other := Composition{Convention: Available, Carbohydrate: c.AvailableCarbohydrate(), Fibre: c.Fibre}
		same := Composition{Convention: Total, Carbohydrate: c.TotalCarbohydrate(), Fibre: c.Fibre}
		if math.Abs(EUKcal(other)-EUKcal(same)) > 1e-9 {
			t.Error("the convention a figure is stored in must not change its energy")
		}
	})
}
