package checkvalues

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Inputs is the free text that says what a row's figure was computed from,
// such as "mass=70 kg; age=35 y" or "15 km; 900 m ascent".
type Inputs string

// a number that is not the tail of a name such as Q10
var numbers = regexp.MustCompile(`(^|[^A-Za-z0-9_.])(-?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)`)

// Numbers returns every number of the text in order; the digits of a name
// such as Q10 are not among them.
func (in Inputs) Numbers() []float64 {
	var found []float64
	for text := string(in); ; {
		at := numbers.FindStringSubmatchIndex(text)
		if at == nil {
			return found
		}
		if value, err := strconv.ParseFloat(text[at[4]:at[5]], 64); err == nil {
			found = append(found, value)
		}
		text = text[at[5]:]
		// what follows a number directly is part of it, not a new one
		text = strings.TrimLeft(text, "0123456789.")
	}
}

// Number returns the number at a place, counted from 0, or NaN if there are
// not so many; NaN agrees with no expected figure.
func (in Inputs) Number(place int) float64 {
	found := in.Numbers()
	if place < 0 || place >= len(found) {
		return math.NaN()
	}
	return found[place]
}

// Value returns the number in "name=number", or NaN if it is not there.
func (in Inputs) Value(name string) float64 {
	text := in.after(name)
	if text == "" {
		return math.NaN()
	}
	return Inputs(text).Number(0)
}

// Word returns the text in "name=text" up to the next semicolon, without
// spaces around it, or "" if it is not there.
func (in Inputs) Word(name string) string {
	text, _, _ := strings.Cut(in.after(name), ";")
	return strings.TrimSpace(text)
}

// after returns the text behind "name=", where name is a whole name.
func (in Inputs) after(name string) string {
	text := string(in)
	for from := 0; ; {
		at := strings.Index(text[from:], name+"=")
		if at < 0 {
			return ""
		}
		at += from
		if at == 0 || !isNamePart(text[at-1]) {
			return text[at+len(name)+1:]
		}
		from = at + 1
	}
}

func isNamePart(b byte) bool {
	return b == '_' || b >= '0' && b <= '9' || b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z'
}
