package loadlimits

import (
	"fmt"
	"os"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/science/checkvalues"
)

func TestLoadsAgainstPublishedFigures(t *testing.T) {
	file, err := os.Open("../../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	share := func(of float64) func(checkvalues.Row) any {
		return func(row checkvalues.Row) any { return of * row.Inputs.Number(0) }
	}
	checkvalues.Check(t, file, "load", checkvalues.Answers{
		"30 % of body mass":      share(FightingLoad),
		"45 % of body mass":      share(ApproachMarch),
		"one third of body mass": share(Mountaineer),
		"school-bag caution 10 % and 20 %": func(row checkvalues.Row) any {
			return fmt.Sprintf("%.1f to %.1f", SchoolBagLeast*row.Inputs.Number(0), SchoolBagMost*row.Inputs.Number(0))
		},
	})
}

func TestAllowanceMass(t *testing.T) {
	for _, c := range []struct{ kg, cm, want float64 }{
		{70, 175, 70}, {110, 180, 27 * 1.8 * 1.8}, {87.48, 180, 87.48}, {110, 0, 110}, {110, -1, 110},
	} {
		if have := AllowanceMass(c.kg, c.cm); have != c.want {
			t.Errorf("%v kg, %v cm: have %v, want %v", c.kg, c.cm, have, c.want)
		}
	}
}

func TestMinorsAreCautionedEarlier(t *testing.T) {
	adult, minor := Cautions(false), Cautions(true)
	if minor.Amber >= adult.Amber || minor.Red >= adult.Red || adult.Amber >= adult.Red || minor.Amber >= minor.Red {
		t.Errorf("adult %+v, minor %+v", adult, minor)
	}
}

func TestAllowanceNeverGrowsWithFat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kg, cm := rapid.Float64Range(25, 200).Draw(t, "kg"), rapid.Float64Range(120, 210).Draw(t, "cm")
		at := AllowanceMass(kg, cm)
		if at > kg || AllowanceMass(kg+10, cm) < at || AllowanceMass(kg, cm+1) < at {
			t.Errorf("have %v", at)
		}
		if bmi := at / (cm / 100) / (cm / 100); bmi > 27+1e-9 {
			t.Errorf("allowance at a BMI of %v", bmi)
		}
	})
}
