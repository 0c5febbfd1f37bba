package triptest

import (
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
)

func TestLargeIsTheSameEveryTime(t *testing.T) {
	if !reflect.DeepEqual(Large(60, 21, 7), Large(60, 21, 7)) {
		t.Fatal("two trips of one seed differ")
	}
	if reflect.DeepEqual(Large(60, 21, 7), Large(60, 21, 8)) {
		t.Fatal("trips of two seeds are equal")
	}
}

func TestLargeHasAFullMenu(t *testing.T) {
	large := Large(60, 21, 1)
	if len(large.Crew) != 60 || len(large.Days) != 21 || len(large.Groups) != 4 || len(large.Points) != 4 || len(large.Recipes) != 120 {
		t.Fatalf("sizes: %d crew, %d days, %d groups, %d points, %d recipes",
			len(large.Crew), len(large.Days), len(large.Groups), len(large.Points), len(large.Recipes))
	}
	for day := range large.Days {
		for _, meal := range large.Days[day].Meals {
			for _, group := range large.Groups {
				if cell := large.Cell(day+1, meal, group.ID); cell == nil || len(cell.Dishes) == 0 {
					t.Fatalf("day %d %s of group %d is not filled", day+1, meal, group.ID)
				}
			}
		}
	}
}

// Each corner of the model that the generator promises must turn up in some
// trip; a generator that lost one would weaken every property test unseen.
func TestTripVisitsTheCorners(t *testing.T) {
	corners := map[string]func(*trip.Trip) bool{
		"one person":   func(g *trip.Trip) bool { return len(g.Crew) == 1 },
		"eight people": func(g *trip.Trip) bool { return len(g.Crew) == 8 },
		"one day":      func(g *trip.Trip) bool { return len(g.Days) == 1 },
		"no recipes":   func(g *trip.Trip) bool { return len(g.Recipes) == 0 },
		"two legs":     func(g *trip.Trip) bool { return len(g.Legs()) == 2 },
		"three legs":   func(g *trip.Trip) bool { return len(g.Legs()) == 3 },
		"late joiner": func(g *trip.Trip) bool {
			return anyOf(g.Crew, func(m trip.Member) bool { return m.FirstDay > 1 })
		},
		"early leaver": func(g *trip.Trip) bool {
			return anyOf(g.Crew, func(m trip.Member) bool { return m.LastDay > 0 && m.LastDay < len(g.Days) })
		},
		"allergy": func(g *trip.Trip) bool {
			return anyOf(g.Crew, func(m trip.Member) bool { return len(m.Allergies) > 0 })
		},
		"diet":     func(g *trip.Trip) bool { return anyOf(g.Crew, func(m trip.Member) bool { return len(m.Diets) > 0 }) },
		"no flame": func(g *trip.Trip) bool { return anyOf(g.Days, func(d trip.Day) bool { return d.NoFlame }) },
		"dry camp": func(g *trip.Trip) bool { return anyOf(g.Days, func(d trip.Day) bool { return d.DryCamp }) },
		"no stove": func(g *trip.Trip) bool { return !anyOf(g.Gear, func(x trip.Gear) bool { return x.Kind == trip.Stove }) },
		"pinned":   func(g *trip.Trip) bool { return len(g.Pins) > 0 },
		"open cell": func(g *trip.Trip) bool {
			return anyOf(g.Menu, func(c trip.Cell) bool { return len(c.Dishes) == 0 && !c.Locked })
		},
		"locked cell": func(g *trip.Trip) bool {
			return anyOf(g.Menu, func(c trip.Cell) bool { return len(c.Dishes) > 0 && c.Locked })
		},
		"locked empty": func(g *trip.Trip) bool {
			return anyOf(g.Menu, func(c trip.Cell) bool { return len(c.Dishes) == 0 && c.Locked })
		},
		"dish for some": func(g *trip.Trip) bool {
			return anyOf(g.Menu, func(c trip.Cell) bool { return anyOf(c.Dishes, func(d trip.Dish) bool { return len(d.For) > 0 }) })
		},
		"accepted": func(g *trip.Trip) bool {
			return anyOf(g.Menu, func(c trip.Cell) bool { return anyOf(c.Dishes, func(d trip.Dish) bool { return len(d.Accepted) > 0 }) })
		},
		"unknown density": func(g *trip.Trip) bool {
			return anyOf(g.Foods, func(f trip.Food) bool { return !f.Density.Known() })
		},
		"unknown allergen": func(g *trip.Trip) bool {
			return anyOf(g.Foods, func(f trip.Food) bool { return f.Presence(trip.Peanuts) == trip.NotKnown })
		},
		"shop on the way that sells": func(g *trip.Trip) bool {
			return anyOf(g.Points, func(p trip.ResupplyPoint) bool {
				return anyOf(g.Foods, func(f trip.Food) bool { return g.SoldAt(p.ID, &f) })
			})
		},
		"shop not used": func(g *trip.Trip) bool { return anyOf(g.Shops, func(s trip.Shop) bool { return !s.Use }) },
		"least order":   func(g *trip.Trip) bool { return anyOf(g.Shops, func(s trip.Shop) bool { return s.LeastOrder > 0 }) },
		"price of many": func(g *trip.Trip) bool {
			return anyOf(g.Foods, func(f trip.Food) bool { return anyOf(f.Packages, func(p trip.Package) bool { return p.ManyFrom > 0 }) })
		},
		"chosen day of sending": func(g *trip.Trip) bool {
			return anyOf(g.Points, func(p trip.ResupplyPoint) bool { return p.Sending.SendOn.IsSet() })
		},
		"refuse": func(g *trip.Trip) bool { return anyOf(g.Foods, func(f trip.Food) bool { return f.RefuseShare > 0 }) },
	}
	missing := len(corners)
	generator := Trip()
	for seed := 0; seed < 400 && missing > 0; seed++ {
		made := generator.Example(seed)
		for name, there := range corners {
			if there(made) {
				delete(corners, name)
			}
		}
		missing = len(corners)
	}
	for name := range corners {
		t.Errorf("never seen in 400 trips: %s", name)
	}
}

func anyOf[T any](list []T, is func(T) bool) bool {
	for _, item := range list {
		if is(item) {
			return true
		}
	}
	return false
}

func TestTripReferencesHold(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := Trip().Draw(rt, "trip")
		for _, recipe := range made.Recipes {
			for _, ingredient := range recipe.Ingredients {
				if made.Food(ingredient.Food) == nil {
					rt.Fatalf("recipe %d needs food %d, which is not there", recipe.ID, ingredient.Food)
				}
			}
		}
		for _, member := range made.Crew {
			if made.Group(member.Group) == nil {
				rt.Fatalf("member %d is in group %d, which is not there", member.ID, member.Group)
			}
		}
	})
}

// A benchmark trip that no standard eater could live on would measure how a
// planner fails, not how it works.
func TestLargeFeedsAStandardEater(t *testing.T) {
	large := Large(60, 21, 1)
	for day := 2; day < 21; day++ { // whole days
		for _, group := range large.Groups {
			kcal := 0.0
			for _, meal := range trip.Meals() {
				for _, ingredient := range large.Recipe(large.Cell(day, meal, group.ID).Dishes[0].Recipe).Ingredients {
					kcal += float64(large.Food(ingredient.Food).Kcal(ingredient.Amount))
				}
			}
			if kcal < 1800 || kcal > 4200 {
				t.Errorf("day %d of group %d brings %.0f kcal", day, group.ID, kcal)
			}
		}
	}
}
