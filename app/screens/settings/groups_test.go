package settings

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/domain/trip"
)

func TestCookGroupsComeAndGo(t *testing.T) {
	s := open(t)
	before := s.Document.Trip()
	s.Do("Add a cook group")
	s.WantUndo("add a cook group")
	groups := s.Document.Trip().Groups
	if len(groups) != len(before.Groups)+1 {
		t.Fatalf("groups %+v; said %q", groups, s.Said)
	}
	made := groups[len(groups)-1]
	if got := s.groups.members(made.ID); got != "nobody yet" {
		t.Errorf("a new group has %q", got)
	}
	s.Press(fyne.KeyReturn)
	s.Overwrite("South")
	s.Press(fyne.KeyReturn)
	if got := s.Document.Trip().Group(made.ID); got == nil || got.Name != "South" {
		t.Errorf("renamed it is %+v; said %q", got, s.Said)
	}
	if err := s.Document.Edit("put something into it", func(t *trip.Trip) error {
		t.Gear[0].Group = made.ID
		t.Menu = append(t.Menu, trip.Cell{Day: 1, Meal: trip.Dinner, Group: made.ID})
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	s.Do("Remove the cook group")
	now := s.Document.Trip()
	if now.Group(made.ID) != nil || now.Gear[0].Group != 0 || now.Cell(1, trip.Dinner, made.ID) != nil {
		t.Errorf("something of it is left; said %q", s.Said)
	}
	s.groups.table.MoveCursor(0, 0)
	s.Do("Remove the cook group")
	if len(s.Document.Trip().Groups) != len(before.Groups) || !strings.Contains(s.Said, "has members") {
		t.Errorf("a group with members was removed; said %q", s.Said)
	}
}
