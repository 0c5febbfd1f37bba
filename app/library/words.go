package library

import "strings"

// fillers are words that say nothing about which food is meant.
var fillers = map[string]bool{
	"a": true, "and": true, "as": true, "for": true, "from": true, "in": true, "of": true,
	"or": true, "the": true, "to": true, "with": true, "without": true, "all": true, "types": true,
}

// plainLetters takes accents off, for those who type them and those who do not.
var plainLetters = strings.NewReplacer(
	"à", "a", "á", "a", "â", "a", "ä", "a", "å", "a", "ç", "c", "è", "e", "é", "e", "ê", "e", "ë", "e",
	"ì", "i", "í", "i", "î", "i", "ï", "i", "ñ", "n", "ò", "o", "ó", "o", "ô", "o", "ö", "o", "ø", "o",
	"ù", "u", "ú", "u", "û", "u", "ü", "u", "ß", "ss", "æ", "ae", "œ", "oe",
)

// wordsOf cuts a text into the words that search compares: lower case, no
// accents, no fillers, singular.
func wordsOf(text string) []string {
	fields := strings.FieldsFunc(plainLetters.Replace(strings.ToLower(text)), func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < '0' || r > '9')
	})
	words := fields[:0]
	for _, word := range fields {
		if !fillers[word] {
			words = append(words, alike(singular(word)))
		}
	}
	return words
}

// alike maps words that mean the same, where one hides in the other.
func alike(word string) string {
	switch word {
	case "uncooked", "unprepared":
		return "raw"
	default:
		return word
	}
}

// singular takes the plural off an English word, roughly: it only has to treat
// the query and the library alike.
func singular(word string) string {
	switch n := len(word); {
	case n > 4 && strings.HasSuffix(word, "ies"):
		return word[:n-3] + "y"
	case n > 4 && (strings.HasSuffix(word, "oes") || strings.HasSuffix(word, "shes") || strings.HasSuffix(word, "ches")):
		return word[:n-2]
	case n > 3 && strings.HasSuffix(word, "s") && !strings.HasSuffix(word, "ss") && !strings.HasSuffix(word, "us"):
		return word[:n-1]
	default:
		return word
	}
}

// lettersOf gives the set of letters and digits of a word of wordsOf.
func lettersOf(word string) uint64 {
	var letters uint64
	for _, r := range []byte(word) {
		letters |= 1 << (r & 63) // digits at 48 to 57, small letters at 33 to 58: a few share a bit, which only lets more pass
	}
	return letters
}

// within tells whether two words differ by at most limit slips of the hand: a
// letter missing, doubled, wrong, or swapped with its neighbour (the optimal
// string alignment distance of Damerau and Levenshtein). Words longer than
// longestWord are never within.
func within(a, b string, limit int) bool {
	if len(a)-len(b) > limit || len(b)-len(a) > limit || len(a) > longestWord || len(b) > longestWord {
		return false
	}
	var rows [3][longestWord + 1]int
	before, last, now := &rows[0], &rows[1], &rows[2]
	for j := range len(b) + 1 {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		now[0] = i
		least := i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			now[j] = min(last[j]+1, now[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				now[j] = min(now[j], before[j-2]+1)
			}
			least = min(least, now[j])
		}
		if least > limit {
			return false
		}
		before, last, now = last, now, before
	}
	return last[len(b)] <= limit
}

const longestWord = 24
