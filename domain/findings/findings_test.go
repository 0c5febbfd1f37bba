package findings

import (
	"slices"
	"testing"
)

func TestEachStandsAtOnePlace(t *testing.T) {
	f := Finding{Code: "slot-open", Place: Place{Day: 1}, Also: []Place{{Day: 3}, {Day: 4}}}
	var days []int
	for one := range f.Each() {
		if one.Code != f.Code || one.Also != nil {
			t.Errorf("got %+v", one)
		}
		days = append(days, one.Place.Day)
	}
	if !slices.Equal(days, []int{1, 3, 4}) || len(f.Also) != 2 {
		t.Errorf("days %v of %+v", days, f)
	}
}
