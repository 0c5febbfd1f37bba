package daytemp

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestFlatDay(t *testing.T) {
	cellar := Day{12, 12}
	if cellar.At(3) != 12 || cellar.HoursAbove(12) != 0 || cellar.HoursAbove(11.9) != 24 {
		t.Errorf("at 3: %v, above 12: %v, above 11.9: %v", cellar.At(3), cellar.HoursAbove(12), cellar.HoursAbove(11.9))
	}
}

func TestCourse(t *testing.T) {
	d := Day{14, 36}
	for hour, want := range map[float64]float64{15: 36, 3: 14, 9: 25, 21: 25, 27: 14, -9: 36} {
		if have := d.At(hour); math.Abs(have-want) > 1e-9 {
			t.Errorf("%v h: have %v, want %v", hour, have, want)
		}
	}
	if have := d.Warmer(5); have != (Day{19, 41}) {
		t.Errorf("warmer: %v", have)
	}
}

// A day of 14 to 36 degrees is above 25 degrees from 9 to 21 o'clock.
func TestHoursAboveBetween(t *testing.T) {
	d := Day{14, 36}
	for _, c := range []struct{ from, to, want float64 }{
		{0, 24, 12}, {0, 9, 0}, {8, 10, 1}, {20, 32, 1}, {20, 34, 2}, {9, 57, 24}, {-24, 0, 12}, {10, 10, 0},
	} {
		if have := d.HoursAboveBetween(c.from, c.to, 25); math.Abs(have-c.want) > 1e-9 {
			t.Errorf("%v to %v: have %v, want %v", c.from, c.to, have, c.want)
		}
	}
}

func TestHoursAgreeWithCounting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-10, 30).Draw(t, "low")
		d := Day{low, low + rapid.Float64Range(0, 25).Draw(t, "range")}
		limit := rapid.Float64Range(-15, 60).Draw(t, "limit")
		from := rapid.Float64Range(0, 24).Draw(t, "from")
		to := from + rapid.Float64Range(0, 60).Draw(t, "hours")
		const step = 0.01
		counted := 0.0
		for hour := from + step/2; hour < to; hour += step {
			if d.At(hour) > limit {
				counted += step
			}
		}
		have := d.HoursAboveBetween(from, to, limit)
		if math.Abs(have-counted) > 0.1 {
			t.Errorf("%v from %v to %v above %v: have %v h, counted %v", d, from, to, limit, have, counted)
		}
		if d.HoursAboveBetween(from, to, limit+1) > have+1e-9 || d.Warmer(1).HoursAboveBetween(from, to, limit) < have-1e-9 {
			t.Error("a higher limit cannot be passed longer, a hotter day not shorter")
		}
	})
}
