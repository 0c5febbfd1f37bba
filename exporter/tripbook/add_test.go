package tripbook

import (
	"errors"
	"strings"
	"testing"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func TestAddTable(t *testing.T) {
	base := triptest.Large(3, 2, 1)
	group := base.Groups[0].Name
	cases := map[string]struct {
		text, sheet string
		check       func(*trip.Trip) bool
	}{
		"members, metric, commas": {
			"Name,Cook group,Sex,Age,Body mass [kg],Height [cm],Own kit [kg],Room in the pack [L]\nNele," + group + ",female,31,61.5,172,7.2,25\n", sheetCrew,
			func(t *trip.Trip) bool {
				m := t.Crew[len(t.Crew)-1]
				return m.Name == "Nele" && m.BodyMass == 61_500*units.Gram && m.Age == 31 && m.ID > 0 && t.Member(m.ID).Name == "Nele"
			},
		},
		"members, US, in another order": {
			"Body mass [lb]\tName\tSex\tAge\tOwn kit [lb]\tRoom in the pack [L]\tCook group\n100\tNele\tfemale\t31\t15\t25\t" + group + "\n", sheetCrew,
			func(t *trip.Trip) bool { return t.Crew[len(t.Crew)-1].BodyMass == units.FromGrams(45359.237) },
		},
		"foods with semicolons and decimal commas": {
			"\ufeffName;Energy per 100 g [kcal];Protein per 100 g;Carbohydrate is\nHaferkekse;452,5;7,1;available\nWalnüsse;654;15;total\n", sheetFoods,
			func(t *trip.Trip) bool {
				f := t.Foods[len(t.Foods)-2]
				return f.Name == "Haferkekse" && f.Per100g.Kcal == 452.5 && f.Presence(trip.Gluten) == trip.NotKnown && f.Storage.TCS == trip.TCSUnknown
			},
		},
		"foods under the headings of a label": {
			"Product\tSalt\tCarbohydrate\tFat (g/100 g)\tFiber\tProtein per 100 g\tEnergy (kJ)\nRusks\t1\t70\t5.5\t6,5\t12\t1631.76\n", sheetFoods,
			func(t *trip.Trip) bool {
				f := t.Foods[len(t.Foods)-1]
				n := f.Per100g
				return f.Name == "Rusks" && n.Kcal > 389.9 && n.Kcal < 390.1 && n.SodiumMilligrams.Or(0) == 400 && n.CarbGrams.Or(0) == 70 && n.FatGrams.Or(0) == 5.5 &&
					n.FibreGrams.Or(0) == 6.5 && n.ProteinGrams.Or(0) == 12 && n.CarbConvention == trip.AvailableCarbohydrate && f.Presence(trip.Gluten) == trip.NotKnown && len(f.Diets) == 0
			},
		},
		"a plain list of people": {
			"First name\tGender\tAge\tWeight (kg)\tDiet\nNele\tfemale\t31\t61.5\tvegan\n", sheetCrew,
			func(t *trip.Trip) bool {
				m := t.Crew[len(t.Crew)-1]
				return m.Name == "Nele" && m.BodyMass == 61_500*units.Gram && m.Group == t.Groups[0].ID && m.OwnKit > 0 && m.PackRoom > 0
			},
		},
		"a plain list of gear": {
			"Item\tWeight (g)\nTarp\t480\n", sheetGear,
			func(t *trip.Trip) bool { return t.Gear[len(t.Gear)-1].Kind == trip.OtherGear },
		},
		"gear": {
			"Name,Kind,Mass [g]\nTarp,shelter,480\n", sheetGear,
			func(t *trip.Trip) bool { return t.Gear[len(t.Gear)-1].Mass == 480*units.Gram },
		},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			added, problems, err := AddTable(base, "list.csv", strings.NewReader(c.text))
			if err != nil || added.Trip == nil {
				t.Fatalf("%v, %v", problems, err)
			}
			if added.Sheet != c.sheet || added.Count < 1 || !c.check(added.Trip) {
				t.Errorf("%s, %d: %v", added.Sheet, added.Count, problems)
			}
			if assumed := strings.Join(added.Assumed, ", "); strings.HasPrefix(name, "a plain list of people") && assumed != "Cook group: "+group+", Own kit (kg): 8, Room in the pack (L): 25" || strings.HasPrefix(name, "members") && assumed != "" {
				t.Errorf("%q was assumed", assumed)
			}
			if len(base.Crew) != 3 {
				t.Error("the trip itself was changed")
			}
		})
	}
}

func TestBadTablesChangeNothing(t *testing.T) {
	base := triptest.Large(3, 2, 1)
	cases := map[string]struct{ text, want string }{
		"a name twice":          {"Name,Kind,Mass [g]\nTarp,shelter,480\ntarp,shelter,500\n", "A3: \"tarp\" is the name of row 2 already"},
		"a name that is there":  {"Name,Kind,Mass [g]\n" + base.Gear[0].Name + ",shelter,480\n", "A2"},
		"a number that is none": {"Name,Kind,Mass [g]\nTarp,shelter,light\n", "C2"},
		"beyond what may be":    {"Name,Cook group,Sex,Age,Body mass [kg],Own kit [kg],Room in the pack [L]\nNele," + base.Groups[0].Name + ",female,31,900,7,25\n", "E2"},
		"an unknown word":       {"Name,Kind,Mass [g]\nTarp,castle,480\n", "B2"},
	}
	for name, c := range cases {
		added, problems, err := AddTable(base, "list.csv", strings.NewReader(c.text))
		if err != nil || added.Trip != nil || len(problems) == 0 || !strings.Contains(problems[0].String(), c.want) {
			t.Errorf("%s: %v, %v", name, problems, err)
		}
	}
	for _, text := range []string{"", "What,Ever\n1,2\n", "Name,Kind\n\"Tarp,shelter\n", "Name,Kind\n\xff\xfe,shelter\n"} {
		if added, _, err := AddTable(base, "list.csv", strings.NewReader(text)); err == nil || added.Trip != nil {
			t.Errorf("%q is taken", text)
		}
	}
	if _, _, err := AddTable(base, "list.csv", strings.NewReader(strings.Repeat("a,", MaxBytes/2+2))); !errors.Is(err, ErrTooLarge) {
		t.Errorf("a huge table: %v", err)
	}
}

func FuzzAddTable(f *testing.F) {
	for _, text := range []string{"Name,Kind,Mass [g]\nTarp,shelter,480\n", "Name;Age\nA;1e309\n", "\"", "Name\tSex\n\t\n"} {
		f.Add(text)
	}
	base := triptest.Large(2, 2, 1)
	f.Fuzz(func(t *testing.T, text string) {
		added, _, err := AddTable(base, "list.csv", strings.NewReader(text))
		if err == nil && added.Trip != nil && len(trip.Validate(added.Trip)) > 0 {
			t.Errorf("%q makes a trip that is none", text)
		}
	})
}

func TestAddTableNamesWhatIsMissing(t *testing.T) {
	base := triptest.Large(3, 2, 1)
	_, problems, err := AddTable(base, "", strings.NewReader("Club list\n\nName,Sex,Height (cm)\nNele,female,168\n"))
	if err != nil || len(problems) == 0 {
		t.Fatalf("%v, %v", problems, err)
	}
	text := problems[0].String()
	for _, want := range []string{"cell A3: ", "these headings are missing: ", "Body mass (", "Age"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q does not say %q", text, want)
		}
	}
	_, _, err = AddTable(base, "", strings.NewReader("What,Ever\n1,2\n"))
	if err == nil || !strings.Contains(err.Error(), "row 1, with What, Ever, is no row of headings") {
		t.Errorf("got %v", err)
	}
}
