package bench

import (
	"strings"

	"sumpter/app/typed"
)

// AddressText writes an address of several lines in one: commas part them.
func AddressText(address string) string {
	var lines []string
	for line := range strings.Lines(address) {
		if line = strings.TrimSpace(line); line != "" {
			lines = append(lines, line)
		}
	}
	return strings.Join(lines, ", ")
}

// ReadAddress takes a line apart at its commas.
func ReadAddress(text string) string { return strings.Join(typed.List(text), "\n") }
