package grid

import "strings"

// alignDecimals counts the decimals of each column of numbers, so that all its
// figures stand with the same: 60 below 60.5 is shown as 60.0. What is edited
// and copied stays as it was.
func (g *Grid[R]) alignDecimals() {
	g.decimals = make([]int, len(g.columns))
	for i, column := range g.columns {
		if !column.Right {
			continue
		}
		for _, row := range g.rows {
			if decimals, ok := decimalsOf(column.Text(row)); ok {
				g.decimals[i] = max(g.decimals[i], decimals)
			}
		}
	}
}

// decimalsOf counts the digits behind the decimal sign; false for what is no
// bare number.
func decimalsOf(text string) (int, bool) {
	digits, decimals, signed := 0, 0, false
	for _, r := range strings.TrimLeft(text, "-−+") {
		switch {
		case r >= '0' && r <= '9':
			digits++
			if signed {
				decimals++
			}
		case (r == '.' || r == ',') && digits > 0 && !signed:
			signed = true
		default:
			return 0, false
		}
	}
	return decimals, digits > 0 && (!signed || decimals > 0)
}

// withDecimals writes a number with so many decimals at least.
func withDecimals(text string, decimals int, sign string) string {
	have, ok := decimalsOf(text)
	if !ok || have >= decimals {
		return text
	}
	if have == 0 {
		text += sign
	}
	return text + strings.Repeat("0", decimals-have)
}
