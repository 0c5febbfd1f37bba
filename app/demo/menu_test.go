package demo

import (
	"testing"

	"sumpter/domain/trip"
)

func TestEverySlotIsFilled(t *testing.T) {
	demo := Trip()
	slots := 0
	for day := range demo.Days {
		for _, group := range demo.Groups {
			for _, meal := range demo.Days[day].Meals {
				slots++
				cell := demo.Cell(day+1, meal, group.ID)
				if cell == nil || len(cell.Dishes) == 0 {
					t.Errorf("day %d %s of %s is empty", day+1, meal, group.Name)
					continue
				}
				for _, dish := range cell.Dishes {
					fits := false
					for _, own := range demo.Recipe(dish.Recipe).Meals {
						fits = fits || own == meal
					}
					if !fits {
						t.Errorf("day %d: %s is no %s", day+1, demo.Recipe(dish.Recipe).Name, meal)
					}
				}
			}
		}
	}
	if slots != len(demo.Menu) {
		t.Errorf("%d slots, %d cells", slots, len(demo.Menu))
	}
}

func TestDinnersVary(t *testing.T) {
	demo := Trip()
	for _, group := range demo.Groups {
		last := map[trip.RecipeID]int{}
		staple := ""
		for day := 1; day <= len(demo.Days); day++ {
			cell := demo.Cell(day, trip.Dinner, group.ID)
			if cell == nil {
				continue
			}
			main := demo.Recipe(cell.Dishes[0].Recipe)
			if before, eaten := last[main.ID]; eaten && day-before <= 4 {
				t.Errorf("%s on day %d and again on day %d", main.Name, before, day)
			}
			last[main.ID] = day
			if main.Staple == staple {
				t.Errorf("%s two evenings running, day %d", staple, day)
			}
			staple = main.Staple
		}
	}
}

// Everything that may be eaten on a day, swaps included, bears its heat: the
// air and the sun on the pack.
func TestMenuRespectsTheHeat(t *testing.T) {
	demo := Trip()
	for _, cell := range demo.Menu {
		day := demo.Days[cell.Day-1]
		heat := float64(day.High) + demo.Settings.PackSunHeat
		for _, dish := range cell.Dishes {
			recipe := demo.Recipe(dish.Recipe)
			for _, part := range recipe.Ingredients {
				list := []trip.FoodID{part.Food}
				for _, swap := range part.Swaps {
					list = append(list, swap.Food)
				}
				for _, id := range list {
					food := demo.Food(id)
					if softens, melts := food.Storage.SoftensAt.Get(); melts && heat >= float64(softens) {
						t.Errorf("day %d, %s: %s softens at %g °C, the pack reaches %g", cell.Day, recipe.Name, food.Name, float64(softens), heat)
					}
					if food.Storage.TCS != trip.TCSNo {
						t.Errorf("day %d, %s: %s must be kept cold", cell.Day, recipe.Name, food.Name)
					}
					if days := food.Storage.ShelfDays.Or(0); days < 15 && cell.Day > 1 && day.High > 25 {
						t.Errorf("day %d, %s: %s keeps %g days", cell.Day, recipe.Name, food.Name, days)
					}
				}
			}
		}
	}
}

func TestNoFlameDayIsCold(t *testing.T) {
	demo := Trip()
	days := 0
	for i, day := range demo.Days {
		if !day.NoFlame {
			continue
		}
		days++
		for _, cell := range demo.Menu {
			if cell.Day != i+1 {
				continue
			}
			for _, dish := range cell.Dishes {
				if recipe := demo.Recipe(dish.Recipe); recipe.NeedsFlame() {
					t.Errorf("day %d: %s needs a flame", cell.Day, recipe.Name)
				}
			}
		}
	}
	if days != 1 {
		t.Errorf("%d days without flame, want one", days)
	}
}

// The demo is honest: it has something left to do.
func TestImperfections(t *testing.T) {
	demo := Trip()
	unpriced := 0
	for _, food := range demo.Foods {
		for _, sold := range food.Packages {
			if !sold.Price.Known() {
				unpriced++
			}
		}
	}
	if unpriced != 1 {
		t.Errorf("%d packages without a price, want one", unpriced)
	}
	if demo.Point(2).HoldDays.Known() {
		t.Error("the warden of the hut has answered")
	}
}
