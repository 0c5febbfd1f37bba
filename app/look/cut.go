package look

import "fyne.io/fyne/v2"

// Cut shortens a text with an ellipsis so that it is no wider than that, the
// way every table and picture does.
func Cut(content string, size float32, style fyne.TextStyle, width float32) string {
	measure := func(s string) float32 { return fyne.MeasureText(s, size, style).Width }
	if content == "" || measure(content) <= width {
		return content
	}
	runes := []rune(content)
	low, high := 0, len(runes)-1
	for low < high {
		middle := (low + high + 1) / 2
		if measure(string(runes[:middle])+"…") <= width {
			low = middle
		} else {
			high = middle - 1
		}
	}
	if low == 0 {
		return ""
	}
	return string(runes[:low]) + "…"
}
