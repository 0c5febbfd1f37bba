package foods

import "testing"

func TestOneDayOnTheShelfReadsAsOne(t *testing.T) {
	for days, want := range map[float64]string{1: "1 day", 0.6: "1 day", 2: "2 days", 365: "365 days"} {
		if got := shelfDays(days); got != want {
			t.Errorf("%g: %q, want %q", days, got, want)
		}
	}
}
