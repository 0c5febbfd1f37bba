package trip_test

import (
	"reflect"
	"strings"
	"testing"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// numberAt is one number of the settings, found by reflection so that a new
// one cannot be forgotten.
type numberAt struct {
	name string // of its JSON form
	set  func(s *trip.Settings, value float64)
}

// settingNumbers lists every number of the settings that is neither a date, an
// ID nor an amount of money.
func settingNumbers(of reflect.Type, prefix string, field func(s *trip.Settings) reflect.Value) []numberAt {
	var numbers []numberAt
	for i := range of.NumField() {
		name, _, _ := strings.Cut(of.Field(i).Tag.Get("json"), ",")
		at := func(s *trip.Settings) reflect.Value { return field(s).Field(i) }
		switch of.Field(i).Type {
		case reflect.TypeFor[units.Date](), reflect.TypeFor[trip.RecipeID]():
			continue
		case reflect.TypeFor[trip.MealShares]():
			numbers = append(numbers, settingNumbers(of.Field(i).Type, name+".", at)...)
			continue
		}
		set := func(s *trip.Settings, value float64) { at(s).SetFloat(value) }
		switch of.Field(i).Type.Kind() {
		case reflect.Float64:
		case reflect.Int, reflect.Int64:
			scale := 1.0
			if strings.HasSuffix(name, "_g") || strings.HasSuffix(name, "_ml") {
				scale = 1000 // kept in milligrams and microlitres
			}
			set = func(s *trip.Settings, value float64) { at(s).SetInt(int64(value * scale)) }
		default:
			continue
		}
		numbers = append(numbers, numberAt{prefix + name, set})
	}
	return numbers
}

func TestEveryNumberOfTheSettingsHasTheRangeThatIsTold(t *testing.T) {
	numbers := settingNumbers(reflect.TypeFor[trip.Settings](), "", func(s *trip.Settings) reflect.Value { return reflect.ValueOf(s).Elem() })
	if len(numbers) < 26 {
		t.Fatalf("only %d numbers were found", len(numbers))
	}
	for _, number := range numbers {
		bound, known := trip.SettingBound(number.name)
		if !known || bound.Low >= bound.High {
			t.Errorf("%s: the range is %+v", number.name, bound)
			continue
		}
		refused := func(value float64) bool {
			tr := plain()
			number.set(&tr.Settings, value)
			for _, problem := range trip.Validate(tr) {
				if problem.Where.Path() == "settings."+number.name && !strings.Contains(problem.What.String(), "above the highest") {
					return true
				}
			}
			return false
		}
		for _, c := range []struct {
			value float64
			want  bool
		}{
			{bound.Low, bound.AboveLow}, {bound.High, false}, {bound.Low - 1, true}, {bound.High + 1, true}, {(bound.Low + bound.High) / 2, false},
		} {
			if refused(c.value) != c.want {
				t.Errorf("%s: %v is refused: %v; the range is %+v", number.name, c.value, !c.want, bound)
			}
		}
	}
}
