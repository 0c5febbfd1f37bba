package bags

import (
	"slices"
	"strings"
	"testing"
)

// plan makes bags of so many a day.
func plan(counts ...int) []Bag {
	var list []Bag
	for d, n := range counts {
		for range n {
			list = append(list, Bag{Day: d + 1})
		}
	}
	giveCodes(list)
	return list
}

// Any one sign misread, misheard or left upside down, and any two neighbours
// swapped, never gives the code of another bag: the check letter tells.
func TestNoSingleMistakeNamesAnotherBag(t *testing.T) {
	for _, counts := range [][]int{{3, 12, 7}, {40, 99, 0, 10, 55, 1, 1, 1, 1, 30, 12}, {150, 310, 200}} {
		list := plan(counts...)
		codes := map[string]bool{}
		for _, b := range list {
			if codes[b.Code] {
				t.Fatalf("code %s is given twice", b.Code)
			}
			codes[b.Code] = true
		}
		for code := range codes {
			for _, wrong := range mistakes(code) {
				if ValidCode(wrong) || codes[wrong] {
					t.Fatalf("%s misread as %s names a bag", code, wrong)
				}
			}
		}
	}
}

// mistakes lists every code one slip away.
func mistakes(code string) []string {
	var list []string
	for i := range code {
		signs := "0123456789"
		if i == len(code)-1 {
			signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
		}
		for _, sign := range signs {
			if byte(sign) != code[i] && code[i] != '-' {
				list = append(list, code[:i]+string(sign)+code[i+1:])
			}
		}
	}
	digits := strings.ReplaceAll(code[:len(code)-1], "-", "")
	dash := strings.IndexByte(code, '-')
	for i := 1; i < len(digits); i++ {
		if digits[i] != digits[i-1] {
			d := []byte(digits)
			d[i], d[i-1] = d[i-1], d[i]
			list = append(list, string(d[:dash])+"-"+string(d[dash:])+code[len(code)-1:])
		}
	}
	return list
}

// Signs that are taken for each other in poor light, upside down, or over a
// bad line (common practice, no source).
func TestCheckLettersAreNotTakenForDigitsOrEachOther(t *testing.T) {
	if len(checkLetters) != 11 {
		t.Fatalf("%d check letters, want 11", len(checkLetters))
	}
	for _, alike := range []string{"0ODQ", "1ILN", "2Z", "3E", "5S", "6G", "8B", "9P", "MW", "MN", "UV", "CG", "EF", "PR", "TD", "BPDTVE", "SF"} {
		taken := 0
		for _, sign := range alike {
			if strings.ContainsRune(checkLetters, sign) {
				taken++
			}
		}
		digit := strings.ContainsAny(alike, "0123456789")
		if digit && taken > 0 || !digit && taken > 1 {
			t.Errorf("of %q %d are in use", alike, taken)
		}
	}
}

func TestCodesSortAsEaten(t *testing.T) {
	list := plan(9, 12, 3, 0, 0, 0, 0, 0, 0, 120)
	if !slices.IsSortedFunc(list, func(a, b Bag) int { return strings.Compare(a.Code, b.Code) }) {
		t.Error("codes do not sort in the order of eating")
	}
	if first := list[0].Code; first[:6] != "01-001" || len(first) != 7 {
		t.Errorf("first code %s", first)
	}
}

// ValidCode tells whether a code that was read or heard can be right: its
// letter fits its digits.
func ValidCode(code string) bool {
	n := len(code)
	if n < 5 || n > 11 {
		return false
	}
	var number []byte
	dash := false
	for i := range n - 1 {
		switch c := code[i]; {
		case c >= '0' && c <= '9':
			number = append(number, c)
		case c == '-' && !dash && i > 0:
			dash = true
		default:
			return false
		}
	}
	return dash && code[n-2] != '-' && checkLetter(string(number)) == code[n-1]
}
