package units

import (
	"encoding/json"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// Every day the program may touch, counted one by one from a known Friday,
// with leap years by the rule of the Gregorian calendar (Inter gravissimas,
// 1582) written out anew, and against the standard library's calendar.
func TestDateAgainstCountingAndTheStandardLibrary(t *testing.T) {
	date := Date(365) // 1971-01-01, a Friday
	weekday := Friday
	reference := time.Date(1971, 1, 1, 0, 0, 0, 0, time.UTC)
	for year := 1971; year <= 2199; year++ {
		leap := year%400 == 0 || year%4 == 0 && year%100 != 0
		for month, days := range []int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31} {
			if month == 1 && leap {
				days++
			}
			for day := 1; day <= days; day++ {
				made, err := NewDate(year, month+1, day)
				if err != nil || made != date {
					t.Fatalf("%04d-%02d-%02d: have %d, %v; want %d", year, month+1, day, made, err, date)
				}
				if y, m, d := made.Civil(); y != year || m != month+1 || d != day {
					t.Fatalf("%d is %04d-%02d-%02d, want %04d-%02d-%02d", date, y, m, d, year, month+1, day)
				}
				if made.Weekday() != weekday || made.String() != reference.Format(time.DateOnly) {
					t.Fatalf("%s: weekday %s; the library says %s", made, made.Weekday().Short(), reference.Format("2006-01-02 Mon"))
				}
				if made.Weekday().Short() != reference.Format("Mon") {
					t.Fatalf("%s: %s, the library says %s", made, made.Weekday().Short(), reference.Format("Mon"))
				}
				date, weekday, reference = date+1, (weekday+1)%7, reference.AddDate(0, 0, 1)
			}
		}
	}
}

func TestDatesThatAreNot(t *testing.T) {
	for _, c := range []struct{ year, month, day int }{
		{2026, 2, 29}, {2100, 2, 29}, {2024, 2, 30}, {2026, 4, 31}, {2026, 0, 1}, {2026, 13, 1},
		{2026, 1, 0}, {2026, 1, 32}, {1970, 12, 31}, {2200, 1, 1}, {-1, 1, 1},
	} {
		if date, err := NewDate(c.year, c.month, c.day); err == nil || date.IsSet() {
			t.Errorf("%v: have %v, %v; want an error", c, date, err)
		}
	}
	for _, text := range []string{"", "2026", "2026-7-20", "20.07.2026", "2026/07/20", "2026-07-20T00:00", "+026-07-20", "2026-02-29", "２０26-07-20"} {
		if date, err := ParseDate(text); err == nil {
			t.Errorf("%q: have %v, want an error", text, date)
		}
	}
}

// Leap days of century years are where calendars go wrong (2000 was one, 2100
// will not be).
func TestLeapCenturies(t *testing.T) {
	day, err := ParseDate("2000-02-28")
	if err != nil {
		t.Fatal(err)
	}
	if next := day.AddDays(1).String(); next != "2000-02-29" {
		t.Errorf("the day after 2000-02-28 is %s", next)
	}
	if day, err = ParseDate("2100-02-28"); err != nil || day.AddDays(1).String() != "2100-03-01" {
		t.Errorf("the day after 2100-02-28 is %s, %v", day.AddDays(1), err)
	}
}

func TestUnsetDate(t *testing.T) {
	var unset Date
	if unset.IsSet() || unset.AddDays(5).IsSet() || unset.String() != "" || unset.Spoken() != "" {
		t.Errorf("an unset date became %q, %q, %v", unset.String(), unset.Spoken(), unset.AddDays(5))
	}
	text, err := json.Marshal(unset)
	if err != nil || string(text) != `""` {
		t.Errorf("an unset date is written %s, %v", text, err)
	}
	read := Date(20_000)
	if err := json.Unmarshal(text, &read); err != nil || read.IsSet() {
		t.Errorf("empty text is read as %v, %v", read, err)
	}
}

func TestSpoken(t *testing.T) {
	date, err := ParseDate("2026-07-20")
	if err != nil || date.Spoken() != "Mon 20 Jul 2026" {
		t.Errorf("have %q, %v", date.Spoken(), err)
	}
}

func TestDateSurvivesText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		date := Date(rapid.Int32Range(365, 84_005).Draw(t, "date"))
		text, err := json.Marshal(date)
		if err != nil {
			t.Fatal(err)
		}
		var back Date
		if err := json.Unmarshal(text, &back); err != nil || back != date {
			t.Fatalf("%d became %s became %d, %v", date, text, back, err)
		}
	})
}

func FuzzParseDate(f *testing.F) {
	for _, text := range []string{"2026-07-20", "2024-02-29", "2100-02-29", "0000-00-00", "2026-7-20", "9999999999"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		date, err := ParseDate(text)
		if err != nil {
			return
		}
		if date.String() != text {
			t.Errorf("%q was read as %s", text, date)
		}
		if _, err := time.Parse(time.DateOnly, text); err != nil {
			t.Errorf("%q was read, the standard library says %v", text, err)
		}
	})
}
