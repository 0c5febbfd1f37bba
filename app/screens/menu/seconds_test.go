package menu

import (
	"strings"
	"testing"

	"sumpter/domain/trip"
)

// Second helpings that the settings ask for are told where the pot is.
func TestSecondsAreTold(t *testing.T) {
	s := openDemo(t)
	s.at(dinner3)
	if strings.Contains(s.text(), "second helpings") {
		t.Error("seconds that nobody asked for")
	}
	if err := s.Bench.Edit("seconds", func(on *trip.Trip) error { on.Settings.Seconds = 0.1; return nil }); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(s.text(), "in the pot for second helpings") {
		t.Errorf("nothing tells of the seconds:\n%s", s.text())
	}
}
