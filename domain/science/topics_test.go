// Package science_test holds the published figures of testdata together: it
// fails when a topic of the science packages is no longer checked whole.
package science_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sumpter/domain/science/checkvalues"
)

// homes names the package whose test checks every row of a topic.
var homes = map[string]string{
	"boiling":     "boiling",
	"day_energy":  "dayenergy",
	"food_safety": "foodsafety",
	"fuel":        "stovefuel",
	"gpx":         "earth",
	"load":        "loadlimits",
	"macros":      "foodenergy",
	"rmr":         "metabolism",
	"shelf_life":  "shelflife",
	"tee":         "metabolism",
	"time":        "walktime",
	"units":       "dayenergy",
	"walk_power":  "walking",
	"water":       "water",
}

func TestEveryScienceTopicIsChecked(t *testing.T) {
	file, err := os.Open("../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := checkvalues.Read(file)
	if err != nil {
		t.Fatal(err)
	}
	count := map[string]int{}
	for _, row := range rows {
		count[row.Topic]++
	}
	for topic, home := range homes {
		if count[topic] == 0 {
			t.Errorf("topic %q has no rows left", topic)
		}
		if !checks(t, home, topic) {
			t.Errorf("no test of %s checks topic %q", home, topic)
		}
	}
}

// checks tells whether a test of a package names the topic to checkvalues,
// directly or through a function of its own that ends in a topic.
func checks(t *testing.T, home, topic string) bool {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(home, "*_test.go"))
	if err != nil || len(names) == 0 {
		t.Fatalf("%s: %v, %d test files", home, err, len(names))
	}
	for _, name := range names {
		source, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, call := range []string{"checkvalues.Check(t, file, ", "checkTopic(t, "} {
			if strings.Contains(string(source), call+`"`+topic+`"`) {
				return true
			}
		}
	}
	return false
}
