package menu

import (
	"strings"
	"testing"

	"sumpter/domain/findings"
	"sumpter/domain/trip"
)

// TestOneCauseIsOneFinding: what goes wrong at meal after meal for one reason is told once, with all its meals.
func TestOneCauseIsOneFinding(t *testing.T) {
	empty := trip.New("Empty", 0)
	for len(empty.Days) < 4 {
		empty.Days = append(empty.Days, trip.NewDay())
	}
	result := Resolve(empty, nil).Findings
	var open []findings.Finding
	for _, f := range result {
		if f.Code == "slot-open" {
			open = append(open, f)
		}
	}
	if len(open) != len(trip.Meals()) || !strings.Contains(open[0].What.String(), "nothing for breakfast on days 1–4") || len(open[0].Also) != 3 {
		t.Errorf("got %+v", open)
	}
}
