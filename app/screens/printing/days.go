package printing

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2/lang"
)

// readDays reads days of a trip as a person lists them: "1-3, 5". No text, and
// "all", are every day: none is listed.
func readDays(text string, last int) ([]int, error) {
	text = strings.ToLower(strings.TrimSpace(text))
	if text == "" || text == "all" || text == strings.ToLower(lang.L("all")) {
		return nil, nil
	}
	var days []int
	for part := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == ',' || r == ';' || r == ' ' }) {
		from, to, isRange := strings.Cut(strings.ReplaceAll(part, "–", "-"), "-")
		first, err := strconv.Atoi(from)
		end := first
		if err == nil && isRange {
			end, err = strconv.Atoi(to)
		}
		if err != nil || first < 1 || end < first || end > last {
			return nil, errors.New(lang.X("days-wrong", "{{.Text}} is not a day or a range of days from 1 to {{.Last}}; write 1-3, 5", map[string]any{"Text": part, "Last": last}))
		}
		for day := first; day <= end; day++ {
			days = append(days, day)
		}
	}
	slices.Sort(days)
	return slices.Compact(days), nil
}
