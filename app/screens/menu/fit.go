package menu

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"

	"sumpter/app/look"
)

// fitter breaks texts into lines of a width and remembers them: measuring is
// what costs when many cells are painted.
type fitter struct {
	width float32
	size  float32
	lines map[string]string
}

// set forgets what was measured for another width or size.
func (f *fitter) set(width, size float32) {
	if f.lines == nil || f.width != width || f.size != size {
		*f = fitter{width: width, size: size, lines: map[string]string{}}
	}
}

// fit gives at most most lines for the names of dishes: each begins a line,
// and the first take the lines that are left over.
func (f *fitter) fit(names string, most int, style fyne.TextStyle) string {
	key := fmt.Sprint(names, most, style.Italic)
	if known, ok := f.lines[key]; ok {
		return known
	}
	dishes := strings.Split(names, "\n")
	if len(dishes) > most {
		dishes = append(dishes[:most-1:most-1], "+ "+strings.Join(dishes[most-1:], ", "))
	}
	var list []string
	for i, dish := range dishes {
		left := most - len(list) - (len(dishes) - 1 - i)
		list = append(list, f.wrap(dish, left, style)...)
	}
	for i := range list {
		list[i] = f.cut(list[i], style)
	}
	f.lines[key] = strings.Join(list, "\n")
	return f.lines[key]
}

func (f *fitter) measure(text string, style fyne.TextStyle) float32 {
	return fyne.MeasureText(text, f.size, style).Width
}

// wrap breaks a text at its words; what is too much stays in the last line.
func (f *fitter) wrap(text string, most int, style fyne.TextStyle) []string {
	var lines []string
	for _, word := range strings.Fields(text) {
		last := len(lines) - 1
		if last >= 0 && (last == most-1 || f.measure(lines[last]+" "+word, style) <= f.width) {
			lines[last] += " " + word
		} else {
			lines = append(lines, word)
		}
	}
	return lines
}

// cut shortens a text with an ellipsis so that it fits.
func (f *fitter) cut(text string, style fyne.TextStyle) string {
	return look.Cut(text, f.size, style, f.width)
}
