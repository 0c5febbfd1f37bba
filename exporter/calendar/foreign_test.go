package calendar

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"sumpter/exporter/plantest"
)

// Another library (Python's icalendar, as Debian packages it) finds the same
// days and texts. Skipped where it is not installed; .ci installs it.
func TestAnotherLibraryReadsTheSame(t *testing.T) {
	const python = "/usr/bin/python3"
	if exec.Command(python, "-c", "import icalendar").Run() != nil {
		t.Skip("icalendar for Python is not installed")
	}
	path := filepath.Join(t.TempDir(), "a.ics")
	if err := os.WriteFile(path, []byte(written(t, plantest.Small())), 0o644); err != nil {
		t.Fatal(err)
	}
	const script = `
import sys, icalendar
for event in icalendar.Calendar.from_ical(open(sys.argv[1], "rb").read()).walk("VEVENT"):
    print(event.decoded("dtstart"), event.decoded("dtend"), event["summary"])
`
	out, err := exec.Command(python, "-c", script, path).CombinedOutput()
	want := []string{
		"2026-07-06 2026-07-07 Three & a box: buy food",
		"2026-07-08 2026-07-09 Three & a box: packing night",
		"2026-06-30 2026-07-11 Three & a box: post the box to Valley post",
		"2026-07-21 2026-07-22 Three & a box: pick up the box at Valley post",
		"2026-07-20 2026-07-23 Three & a box: on the trail",
	}
	if got := strings.TrimSpace(string(out)); err != nil || got != strings.Join(want, "\n") {
		t.Errorf("%v:\n%s\nwant\n%s", err, got, strings.Join(want, "\n"))
	}
}
