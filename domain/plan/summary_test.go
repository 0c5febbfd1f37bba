package plan

import (
	"slices"
	"testing"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

func TestADayWithoutFoodFromThePacksIsNobodysWorst(t *testing.T) {
	on := triptest.Large(4, 3, 3)
	left := func(days ...int) Summary {
		empty := on.Clone()
		empty.Menu = slices.DeleteFunc(empty.Menu, func(c trip.Cell) bool { return slices.Contains(days, c.Day) })
		for _, day := range days {
			for _, meal := range trip.Meals() {
				for _, group := range empty.Groups {
					empty.Menu = append(empty.Menu, trip.Cell{Day: day, Meal: meal, Group: group.ID, Locked: true})
				}
			}
		}
		return mustMake(t, empty).Summary()
	}
	if s := left(2); s.LeastFed == 0 || s.LeastFedDay == 2 || s.LeastFedShare <= 0 {
		t.Errorf("member %d is least fed on day %d with %.2f", s.LeastFed, s.LeastFedDay, s.LeastFedShare)
	}
	if s := left(1, 2, 3); s.LeastFed != 0 {
		t.Errorf("without food member %d is least fed with %.2f", s.LeastFed, s.LeastFedShare)
	}
}

func TestWhoGetsNothingWhileOthersEatIsLeastFed(t *testing.T) {
	on := triptest.Large(4, 3, 3)
	fasting := on.Crew[0].ID
	for c := range on.Menu {
		for d := range on.Menu[c].Dishes {
			on.Menu[c].Dishes[d].For = nil
			for i := range on.Crew[1:] {
				on.Menu[c].Dishes[d].For = append(on.Menu[c].Dishes[d].For, on.Crew[1+i].ID)
			}
		}
	}
	if s := mustMake(t, on).Summary(); s.LeastFed != fasting || s.LeastFedShare != 0 {
		t.Errorf("member %d is least fed with %.2f", s.LeastFed, s.LeastFedShare)
	}
}
