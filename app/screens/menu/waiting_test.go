package menu

import (
	"strings"
	"testing"
)

// What waits for the other slot is named, so that nobody copies the wrong
// dish.
func TestWhatWaitsIsNamed(t *testing.T) {
	for _, how := range []transfer{copying, moving, swapping} {
		if said := waitWords(how, "Miso noodle soup", "lunch on day 7"); !strings.Contains(said, "Miso noodle soup") || !strings.Contains(said, "lunch on day 7") {
			t.Errorf("it says %q", said)
		}
	}
}
