package bags

import (
	"strconv"
	"strings"
)

// checkLetters end a bag code. A bag is named by its day, its place in the
// order of eating that day, and a letter that follows from these digits, so
// that no single misread or misheard sign, and no two neighbours swapped,
// gives the name of another bag: the letter would have to be another one. If
// it does not fit, the code is asked for again.
//
// There are eleven, a prime, as in the check digits of ISBN-10 (ISO 2108:1992,
// from memory). None looks like a digit or like another upside down; of the
// letters whose English names end alike, at most three are used.
const checkLetters = "AFHJKRTUWXY"

// giveCodes names bags that stand in the order of eating. All codes of a trip
// have one length, so that sorted as text they stand in that order too.
func giveCodes(bags []Bag) {
	days, most := 1, 1
	for i, count := 0, 0; i < len(bags); i++ {
		if i == 0 || bags[i].Day != bags[i-1].Day {
			count = 0
		}
		count++
		days, most = max(days, bags[i].Day), max(most, count)
	}
	dayDigits, countDigits := digits(days), max(2, digits(most))
	for i, count := 0, 0; i < len(bags); i++ {
		if i == 0 || bags[i].Day != bags[i-1].Day {
			count = 0
		}
		count++
		day, place := padded(bags[i].Day, dayDigits), padded(count, countDigits)
		bags[i].Code = day + "-" + place + string(checkLetter(day+place))
	}
}

func digits(n int) int { return len(strconv.Itoa(n)) }

// padded writes n with leading zeros.
func padded(n, width int) string {
	text := strconv.Itoa(n)
	return strings.Repeat("0", width-len(text)) + text
}

// checkLetter weighs the digits 2, 3, 4 .. from the right and takes the sum
// modulo 11. No weight is a multiple of 11 and neighbours differ by one.
func checkLetter(digits string) byte {
	sum := 0
	for i := range len(digits) {
		sum += int(digits[i]-'0') * (len(digits) - i + 1)
	}
	return checkLetters[sum%len(checkLetters)]
}
