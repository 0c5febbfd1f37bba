package checkvalues

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Reporter is what Check needs of a *testing.T.
type Reporter interface {
	Helper()
	Errorf(format string, args ...any)
	Fatalf(format string, args ...any)
}

// Not is an answer that must miss the expected figure by more than its
// tolerance: some rows hold a known misprint.
type Not float64

// Answers gives, for the case names of one topic, what our code makes of a
// row's inputs: a float64, a string or a Not. A key matches the case of that
// name, or every case that begins with the key; the longest match answers.
type Answers map[string]func(in Row) any

// Check reads the file and holds every row of the topic against the answers.
// It fails on a figure off by more than the row's tolerance, on a row that no
// answer matches, on an answer that no row asks for, and on a topic without
// rows. A failure names the line, the inputs and the source.
func Check(t Reporter, file io.Reader, topic string, answers Answers) {
	t.Helper()
	rows, err := Read(file)
	if err != nil {
		t.Fatalf("%v", err)
		return
	}
	asked := map[string]bool{}
	count := 0
	for _, row := range rows {
		if row.Topic != topic {
			continue
		}
		count++
		key, ok := match(answers, row.Case)
		if !ok {
			t.Errorf("line %d: no answer for %s %q", row.Line, topic, row.Case)
			continue
		}
		asked[key] = true
		if err := row.compare(answers[key](row)); err != nil {
			t.Errorf("line %d: %s, %s (%s): %v\n\tsource: %s [%s]",
				row.Line, topic, row.Case, row.Inputs, err, row.Source, row.Confidence)
		}
	}
	if count == 0 {
		t.Errorf("topic %q has no rows", topic)
	}
	for _, key := range sortedKeys(answers) {
		if !asked[key] {
			t.Errorf("answer %q of topic %q matches no row", key, topic)
		}
	}
}

func match(answers Answers, name string) (string, bool) {
	best, found := "", false
	for key := range answers {
		if strings.HasPrefix(name, key) && (!found || len(key) > len(best)) {
			best, found = key, true
		}
	}
	return best, found
}

func sortedKeys(answers Answers) []string {
	var keys []string
	for key := range answers {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	return keys
}

// compare returns an error that tells have and want if the answer is off.
func (row Row) compare(answer any) error {
	if text, ok := answer.(string); ok {
		if text != row.Expected {
			return fmt.Errorf("have %q, want %q", text, row.Expected)
		}
		return nil
	}
	want, err := strconv.ParseFloat(row.Expected, 64)
	if err != nil {
		return fmt.Errorf("expected %q is no number", row.Expected)
	}
	allowed, err := row.allowed(want)
	if err != nil {
		return err
	}
	switch have := answer.(type) {
	case float64:
		if !(math.Abs(have-want) <= allowed) { // not >, so that NaN fails
			return fmt.Errorf("have %.10g %s, want %s within %s", have, row.Unit, row.Expected, row.Tolerance)
		}
	case Not:
		if !(math.Abs(float64(have)-want) > allowed) {
			return fmt.Errorf("have %.10g %s, which must not be returned", float64(have), row.Unit)
		}
	default:
		return fmt.Errorf("answer of type %T cannot be compared", answer)
	}
	return nil
}

// allowed returns the tolerance as an absolute figure. A remark may follow
// the number: "5 (report rounds to 2410)".
func (row Row) allowed(want float64) (float64, error) {
	if row.Tolerance == "exact" {
		return 0, nil
	}
	number, remark, _ := strings.Cut(row.Tolerance, " ")
	value, err := strconv.ParseFloat(number, 64)
	if err != nil || !(value >= 0) {
		return 0, fmt.Errorf("tolerance %q is no number", row.Tolerance)
	}
	if strings.HasPrefix(remark, "%") {
		value *= math.Abs(want) / 100
	}
	return value, nil
}
