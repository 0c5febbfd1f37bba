package calendar

import (
	"bytes"
	"encoding/csv"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"pgregory.net/rapid"

	"sumpter/domain/plan"
	"sumpter/domain/units"
	"sumpter/exporter/plantest"
)

var stamp = time.Date(2026, 3, 4, 5, 6, 7, 0, time.UTC)

func written(t interface{ Fatal(...any) }, p *plan.Plan) string {
	var buffer bytes.Buffer
	if err := Write(&buffer, p, stamp); err != nil {
		t.Fatal(err)
	}
	return buffer.String()
}

// unfolded gives the logical lines of a calendar (RFC 5545, 3.1), read apart
// from the library that writes them.
func unfolded(text string) []string {
	return strings.Split(strings.TrimSuffix(strings.ReplaceAll(text, "\r\n ", ""), "\r\n"), "\r\n")
}

// titled writes a calendar whose only text of interest is one summary.
func titled(t interface{ Fatal(...any) }, title string) string {
	p := plantest.Empty()
	p.Trip.Title = title
	p.Trip.Settings.PackingNight = plantest.Start
	return written(t, p)
}

// physical gives the folded lines of the property that begins so.
func physical(text, begin string) []string {
	lines := strings.Split(text, "\r\n")
	for i, line := range lines {
		if strings.HasPrefix(line, begin) {
			end := i + 1
			for end < len(lines) && strings.HasPrefix(lines[end], " ") {
				end++
			}
			return lines[i:end]
		}
	}
	return nil
}

func checkRows(t *testing.T) map[string][]string {
	t.Helper()
	file, err := os.Open("../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	rows := map[string][]string{}
	for _, record := range records {
		if record[0] == "ical" {
			rows[record[1]] = record
		}
	}
	return rows
}

// The rows of topic ical in testdata/check_values.csv (RFC 5545, 3.1, 3.3.11
// and 3.6.1). The calendar's own name takes the letters of the row, so that
// the property is as long as SUMMARY: in the row plus the length of its name.
func TestCheckValues(t *testing.T) {
	rows := checkRows(t)
	if len(rows) != 5 {
		t.Fatalf("%d rows of topic ical, want 5", len(rows))
	}
	const longer = len("X-WR-CALNAME:") - len("SUMMARY:")
	ascii := physical(titled(t, strings.Repeat("a", 200-longer)), "X-WR-CALNAME:")
	if want, _ := strconv.Atoi(rows["folded lines, ASCII"][3]); len(ascii) != want {
		t.Errorf("208 octets make %d lines, want %d", len(ascii), want)
	}
	// 13 octets of name and 60 letters of two: the row's SUMMARY: has 8, so that
	// its first line ends at 74 (8 + 66); here at 75 (13 + 62).
	accents := physical(titled(t, strings.Repeat("é", 60)), "X-WR-CALNAME:")
	if want, _ := strconv.Atoi(rows["folded lines, two-byte letters"][3]); len(accents) != want || len(accents[0]) != 75 {
		t.Errorf("%d lines, the first of %d octets, want %d and 75", len(accents), len(accents[0]), want)
	}
	// With one letter of one octet before them the first line must stop at 74.
	odd := physical(titled(t, "a"+strings.Repeat("é", 60)), "X-WR-CALNAME:")
	if want, _ := strconv.Atoi(rows["octets of the first folded line, two-byte letters"][3]); len(odd[0]) != want {
		t.Errorf("the first line has %d octets, want %d", len(odd[0]), want)
	}
	all := titled(t, `a,b;c\d`)
	if want := "X-WR-CALNAME:" + rows["TEXT escape"][3]; !strings.Contains(all, want+"\r\n") {
		t.Errorf("no %q in %q", want, all)
	}
	if want := rows["all-day event end is exclusive"][3]; !strings.Contains(all, want+"\r\n") {
		t.Errorf("no %q in %q", want, all)
	}
}

func TestDatesOfTheSmallTrip(t *testing.T) {
	lines := unfolded(written(t, plantest.Small()))
	var got []string
	for i, line := range lines {
		if summary, ok := strings.CutPrefix(line, "SUMMARY:"); ok {
			got = append(got, find(lines, i, "DTSTART;VALUE=DATE:")+"-"+find(lines, i, "DTEND;VALUE=DATE:")+" "+summary)
		}
	}
	want := []string{
		"20260706-20260707 Three & a box: buy food",
		"20260708-20260709 Three & a box: packing night",
		"20260630-20260711 Three & a box: post the box to Valley post",
		"20260721-20260722 Three & a box: pick up the box at Valley post",
		"20260720-20260723 Three & a box: on the trail",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// find looks for a property in the event that holds line i.
func find(lines []string, i int, begin string) string {
	for i > 0 && lines[i] != "BEGIN:VEVENT" {
		i--
	}
	for ; i < len(lines) && lines[i] != "END:VEVENT"; i++ {
		if value, ok := strings.CutPrefix(lines[i], begin); ok {
			return value
		}
	}
	return ""
}

func identities(text string) []string {
	var found []string
	for _, line := range unfolded(text) {
		if uid, ok := strings.CutPrefix(line, "UID:"); ok {
			found = append(found, uid)
		}
	}
	return found
}

func TestIdentitiesStayWhenDatesAndNamesChange(t *testing.T) {
	before := identities(written(t, plantest.Small()))
	p := plantest.Small()
	p.Trip.Start = p.Trip.Start.AddDays(7)
	p.Trip.Title, p.Trip.Points[0].Name, p.Trip.Crew[0].Name = "Renamed", "Other post", "Somebody"
	p.Resupply.Boxes[0].PickUp = p.Resupply.Boxes[0].PickUp.AddDays(7)
	if after := identities(written(t, p)); strings.Join(before, " ") != strings.Join(after, " ") {
		t.Errorf("before %v, after %v", before, after)
	}
	p.Trip.Identity = "another trip"
	if other := identities(written(t, p)); slices.ContainsFunc(other, func(uid string) bool { return slices.Contains(before, uid) }) {
		t.Errorf("two trips share an event: %v and %v", before, other)
	}
	seen := map[string]bool{}
	for _, uid := range before {
		if seen[uid] {
			t.Errorf("two events are %s", uid)
		}
		seen[uid] = true
	}
}

func TestEveryEventIsComplete(t *testing.T) {
	lines := unfolded(written(t, plantest.Small()))
	if lines[0] != "BEGIN:VCALENDAR" || lines[len(lines)-1] != "END:VCALENDAR" {
		t.Errorf("first %q, last %q", lines[0], lines[len(lines)-1])
	}
	events := 0
	for i, line := range lines {
		if line != "BEGIN:VEVENT" {
			continue
		}
		events++
		for _, property := range []string{"UID:", "DTSTAMP:20260304T050607Z", "SUMMARY:", "DTSTART;VALUE=DATE:", "DTEND;VALUE=DATE:"} {
			begin := strings.SplitAfter(property, ":")[0]
			if value := find(lines, i, begin); value == "" || property != begin && begin+value != property {
				t.Errorf("event %d: %s is %q", events, property, value)
			}
		}
	}
	if events != 5 {
		t.Errorf("%d events, want 5", events)
	}
}

func TestWindowWithoutABeginIsItsLastDay(t *testing.T) {
	p := plantest.Small()
	p.Resupply.Boxes[0].PostFrom = 0
	if !strings.Contains(written(t, p), "DTSTART;VALUE=DATE:20260710\r\nDTEND;VALUE=DATE:20260711\r\n") {
		t.Error("the posting day is not the latest day")
	}
}

func TestTheDayTheLeaderChoseForABoxStands(t *testing.T) {
	p := plantest.Small()
	p.Resupply.Boxes[0].SendOn, p.Resupply.Boxes[0].SendChosen = plantest.Start-14, true
	text := written(t, p)
	if !strings.Contains(text, "DTSTART;VALUE=DATE:20260706\r\nDTEND;VALUE=DATE:20260707\r\nSUMMARY:Three & a box: post the box to Valley post\r\n") {
		t.Errorf("the posting day is not the chosen one: %s", text)
	}
}

// Whoever brings a box needs a day too, and no window of any post.
func TestABoxThatIsBroughtHasItsDay(t *testing.T) {
	p := plantest.Small()
	box := &p.Resupply.Boxes[0]
	box.Posted, box.PostFrom, box.PostBy = false, 0, 0
	text := written(t, p)
	if !strings.Contains(text, "DTSTART;VALUE=DATE:20260710\r\nDTEND;VALUE=DATE:20260711\r\nSUMMARY:Three & a box: take the box to Valley post\r\n") || strings.Contains(text, "post the box") {
		t.Errorf("%s", text)
	}
}

func TestFoodForALaterDayHasItsOwnDeadline(t *testing.T) {
	p := plantest.Small()
	p.Shopping.Lines[1].Deadline = plantest.Start - 3
	text := written(t, p)
	for _, want := range []string{"SUMMARY:Three & a box: buy food\r\n", "DESCRIPTION:Foods to buy: 2.", "DTSTART;VALUE=DATE:20260717\r\n",
		"SUMMARY:Three & a box: last day to have food at home\r\n", "DESCRIPTION:Foods that must be at home by this day: 1.\r\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("nothing says %q", want)
		}
	}
}

func TestNothingDatedGivesAnEmptyCalendar(t *testing.T) {
	for name, p := range map[string]*plan.Plan{"empty": plantest.Empty(), "none": {}} {
		if text := written(t, p); strings.Contains(text, "VEVENT") || !strings.HasPrefix(text, "BEGIN:VCALENDAR\r\n") {
			t.Errorf("%s: %q", name, text)
		}
	}
}

// Whatever the trip is called, no line is longer than 75 octets, none breaks a
// letter, and the name comes back.
func TestAnyTitleComesThrough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		title := rapid.StringN(1, 200, -1).Draw(t, "title")
		if strings.TrimSpace(title) == "" {
			return
		}
		text := titled(t, title)
		for _, line := range strings.Split(text, "\r\n") {
			if len(line) > 75 || !utf8.ValidString(line) || strings.ContainsAny(line, "\r\n") {
				t.Fatalf("line %q of %d octets", line, len(line))
			}
		}
		for _, line := range unfolded(text) {
			if name, ok := strings.CutPrefix(line, "X-WR-CALNAME:"); ok {
				back := strings.NewReplacer(`\\`, `\`, `\;`, `;`, `\,`, `,`, `\n`, "\n").Replace(name)
				if back != plain(title) {
					t.Fatalf("%q came back as %q", title, back)
				}
			}
		}
	})
}

func TestDays(t *testing.T) {
	date, err := units.NewDate(2028, 2, 29)
	if err != nil {
		t.Fatal(err)
	}
	if got := day(date).Format("2006-01-02"); got != "2028-02-29" {
		t.Errorf("got %s", got)
	}
}
