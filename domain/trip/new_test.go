package trip_test

import (
	"testing"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func TestANewTripHasAMeaning(t *testing.T) {
	start, err := units.NewDate(2026, 7, 1)
	if err != nil {
		t.Fatal(err)
	}
	fresh := trip.New("Summer walk", start)
	if problems := trip.Validate(fresh); len(problems) > 0 {
		t.Errorf("a new trip has problems: %v", problems)
	}
	fresh.Crew = append(fresh.Crew, trip.NewMember(2, "Member 2", 1))
	fresh.Days = append(fresh.Days, trip.NewDay())
	if problems := trip.Validate(fresh); len(problems) > 0 {
		t.Errorf("with a member and a day: %v", problems)
	}
}

func TestNextIDIsFree(t *testing.T) {
	crew := []trip.Member{{ID: 7}, {ID: 3}}
	if got := trip.NextID(crew, func(m *trip.Member) trip.MemberID { return m.ID }); got != 8 {
		t.Errorf("got %d", got)
	}
	if got := trip.NextID(nil, func(m *trip.Member) trip.MemberID { return m.ID }); got != 1 {
		t.Errorf("in an empty list: %d", got)
	}
}
