package menu

import "testing"

func TestOneEaterReadsAsOne(t *testing.T) {
	for count, want := range map[int]string{0: "0 eat", 1: "one eats", 5: "5 eat"} {
		if got := eatersWords(count); got != want {
			t.Errorf("%d: %q, want %q", count, got, want)
		}
	}
}
