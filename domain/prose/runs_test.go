package prose

import "testing"

func TestRuns(t *testing.T) {
	for _, c := range []struct {
		numbers []int
		want    string
	}{
		{nil, ""}, {[]int{4}, "4"}, {[]int{4, 5}, "4, 5"}, {[]int{3, 1, 2, 5, 2}, "1–3, 5"}, {[]int{1, 3, 4, 5, 9}, "1, 3–5, 9"},
	} {
		if got := Runs(c.numbers); got != c.want {
			t.Errorf("%v: %q, want %q", c.numbers, got, c.want)
		}
	}
}
