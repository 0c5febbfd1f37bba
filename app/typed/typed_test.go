package typed

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/units"
)

func TestMassIsReadAsPeopleWriteIt(t *testing.T) {
	cases := []struct {
		text   string
		system units.System
		large  bool
		want   units.Mass
	}{
		{"70", units.Metric, true, 70 * units.Kilogram},
		{"70,5", units.Metric, true, 70500 * units.Gram},
		{"70.5 kg", units.US, true, 70500 * units.Gram},
		{"150", units.US, true, 68038856},
		{"250", units.Metric, false, 250 * units.Gram},
		{"1 kg", units.Metric, false, units.Kilogram},
		{"8oz", units.Metric, false, 226796},
	}
	for _, c := range cases {
		got, err := Mass(c.text, c.system, c.large)
		if err != nil || math.Abs(float64(got-c.want)) > 1 {
			t.Errorf("%q (%s): got %d mg, %v; want %d", c.text, c.system, got, err, c.want)
		}
	}
}

func TestWhatHasNoMeaningIsRefusedInWords(t *testing.T) {
	for _, text := range []string{"", "heavy", "12 stone", "0x10", "1e400", "NaN", "inf", "1_000", "--2", "-3"} {
		if got, err := Mass(text, units.Metric, true); err == nil {
			t.Errorf("%q is read as %v", text, got)
		}
	}
	if _, err := Whole("3.5", 0, 10); err == nil {
		t.Error("half a day is read as a whole number")
	}
	if _, err := Yes("maybe"); err == nil {
		t.Error("maybe is read as yes or no")
	}
}

func TestTemperatureSaysItsOwnUnit(t *testing.T) {
	for text, want := range map[string]units.Celsius{"30": 30, "86 F": 30, "-4 °C": -4, "-4,5": -4.5} {
		if got, err := Temperature(text, units.Metric); err != nil || math.Abs(float64(got-want)) > 1e-9 {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
	if got, _ := Temperature("86", units.US); math.Abs(float64(got-30)) > 1e-9 {
		t.Errorf("86 in US units: %v", got)
	}
}

func TestStatureInFeetAndInches(t *testing.T) {
	if got, err := Stature(`5'10"`, units.US); err != nil || math.Abs(float64(got)-1.778) > 1e-9 {
		t.Errorf("got %v, %v", got, err)
	}
	if got, err := Stature("178", units.Metric); err != nil || math.Abs(float64(got)-1.78) > 1e-9 {
		t.Errorf("got %v, %v", got, err)
	}
}

func TestHoursAsClock(t *testing.T) {
	for text, want := range map[string]units.Hours{"6:30": 6.5, "6.5": 6.5, "90 min": 1.5} {
		if got, err := Hours(text); err != nil || math.Abs(float64(got-want)) > 1e-9 {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
}

// What a field starts from is read back as the same amount, to its decimals.
func TestTextIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		system := rapid.SampledFrom([]units.System{units.Metric, units.US}).Draw(t, "system")
		large := rapid.Bool().Draw(t, "large")
		mass := units.Mass(rapid.Int64Range(0, 200_000_000).Draw(t, "mg"))
		got, err := Mass(MassText(mass, system, large), system, large)
		if err != nil || math.Abs(float64(got-mass)) > 6e6 {
			t.Fatalf("%v is written %q and read %v (%v)", mass, MassText(mass, system, large), got, err)
		}
		metres := units.Metres(rapid.Float64Range(0, 90_000).Draw(t, "metres"))
		if way, err := Distance(DistanceText(metres, system), system); err != nil || math.Abs(float64(way-metres)) > 90 {
			t.Fatalf("%v is written %q and read %v (%v)", metres, DistanceText(metres, system), way, err)
		}
	})
}

func FuzzNumber(f *testing.F) {
	for _, text := range []string{"1", "1,5", "-2.5", "1e3", "", "1.2.3", "９"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if value, err := Number(text); err == nil && (math.IsNaN(value) || math.IsInf(value, 0) || math.Abs(value) > largest) {
			t.Errorf("%q is read as %v", text, value)
		}
	})
}

// What is shown and read again unchanged is shown the same: else a field that
// was only looked at would change the trip.
func TestShownQuantitiesReadBackAsShown(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		system := rapid.SampledFrom([]units.System{units.Metric, units.US}).Draw(rt, "units")
		mass := units.Mass(rapid.OneOf(rapid.Int64Range(0, 30_000_000), rapid.SampledFrom([]int64{453_591, 453_593, 9_999_700, 9_950, 9_949})).Draw(rt, "mass"))
		read, err := Mass(mass.Format(system), system, false)
		if err != nil || read.Format(system) != mass.Format(system) {
			rt.Fatalf("%d mg is shown as %q and read as %q, %v", int64(mass), mass.Format(system), read.Format(system), err)
		}
		volume := units.Volume(rapid.OneOf(rapid.Int64Range(0, 30_000_000), rapid.SampledFrom([]int64{946_352, 946_353, 999_600})).Draw(rt, "volume"))
		again, err := Volume(volume.Format(system), system, false)
		if err != nil || again.Format(system) != volume.Format(system) {
			rt.Fatalf("%d uL is shown as %q and read as %q, %v", int64(volume), volume.Format(system), again.Format(system), err)
		}
	})
}

func TestDaysAreReadAsTheyAreWritten(t *testing.T) {
	want, err := units.NewDate(2026, 7, 9)
	if err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{
		"2026-07-09", "09.07.2026", " 9.7.2026 ", "9.7.26", "9 Jul 2026", "July 9, 2026", "Thu 9 Jul 2026", "9. Juli 2026",
		"9th july 2026", "2026 Jul 9", "Do, 9. Juli 2026",
	} {
		for _, system := range []units.System{units.Metric, units.US} {
			if got, err := Date(text, system); got != want || err != nil {
				t.Errorf("%q is %v (%v)", text, got, err)
			}
		}
	}
	if got, err := Date("7/9/2026", units.US); got != want || err != nil {
		t.Errorf("in the US 7/9/2026 is %v (%v)", got, err)
	}
	for _, text := range []string{"9/7/2026", "9.7.", "31.2.2026", "7.2026", "a.b.c", "9 Foo 2026", "Jul 2026", "31 Jun 2026", "9/7", "12 12 Jul 2026"} {
		if got, err := Date(text, units.Metric); err == nil {
			t.Errorf("%q is %v", text, got)
		}
	}
	late, err := units.NewDate(2026, 7, 20)
	if err != nil {
		t.Fatal(err)
	}
	for _, system := range []units.System{units.Metric, units.US} {
		if got, err := Date("20/7/2026", system); got != late || err != nil {
			t.Errorf("20/7/2026 can be one day only, and is %v (%v)", got, err)
		}
	}
}
