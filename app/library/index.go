package library

import (
	"slices"
	"strings"
)

// index is the library by word.
type index struct {
	words    []word
	standing []float32 // what speaks for or against a food before anything is typed
	cooked   []bool    // no longer dry or raw
	length   []float32 // words in the name of a food; of a trail food before the first comma
}

// word is one word of the library and the foods it stands for.
type word struct {
	text    string
	letters uint64 // which letters and digits it has
	uses    []use
	trail   bool // a trail food uses it
}

// use is a word in a food.
type use struct {
	food   int
	weight float32 // where it stands: in the name, at its head, in another name, further back
	inName bool
	aside  bool // in the name, but past the first comma of a trail food: "wheat flour, white"
}

// How much a word counts by where it stands, and what speaks for a food as
// such. Only the order they lead to matters; the tests hold that.
const (
	nameWeight        = 1.0
	headBonus         = 0.15 // the word that says what it is: rice in "white rice"
	otherNameWeight   = 0.85
	bothNamesBonus    = 0.05
	laterWeight       = 0.55 // past the first comma of a description
	descriptionWeight = 0.4  // a word of the dataset's description that the name leaves out
	trailStanding     = 1.0
	cookedStanding    = -0.3 // unless one is asked for
	babyStanding      = -0.6
	rareStanding      = -0.3
	wordStanding      = -0.01 // per word of the description
)

// cookedWords tell a food that is no longer dry or raw.
var cookedWords = []string{"cooked", "prepared", "boiled", "canned", "drained", "stewed", "baked", "roasted", "fried", "frozen", "braised", "broiled"}

func newIndex(entries []Entry) *index {
	x := &index{
		standing: make([]float32, len(entries)), cooked: make([]bool, len(entries)), length: make([]float32, len(entries)),
	}
	byText := map[string]*word{}
	for i := range entries {
		weights := weigh(&entries[i])
		x.standing[i], x.cooked[i] = standing(&entries[i])
		for text, w := range weights {
			if w.inName && !w.aside {
				x.length[i]++
			}
			at := byText[text]
			if at == nil {
				at = &word{text: text, letters: lettersOf(text)}
				byText[text] = at
			}
			w.food = i
			at.uses = append(at.uses, w)
			at.trail = at.trail || entries[i].Trail != nil
		}
	}
	for _, w := range byText {
		x.words = append(x.words, *w)
	}
	slices.SortFunc(x.words, func(a, b word) int { return strings.Compare(a.text, b.text) })
	return x
}

// weigh gives the words of one food with the best place each stands in.
func weigh(e *Entry) map[string]use {
	weights := map[string]use{}
	put := func(text string, weight float32, inName bool) {
		old, ok := weights[text]
		weights[text] = use{weight: max(old.weight, weight), inName: old.inName || inName && (!ok || old.inName), aside: old.aside}
	}
	first, rest, _ := strings.Cut(e.Name, ",")
	head := wordsOf(first)
	for i, text := range head {
		// A cook's name ends in what the food is; a description begins with it.
		if (e.Trail != nil && i == len(head)-1) || (e.Trail == nil && i == 0) {
			put(text, nameWeight+headBonus, true)
		} else {
			put(text, nameWeight, true)
		}
	}
	restWeight := float32(nameWeight)
	if e.Trail == nil {
		restWeight = laterWeight
	}
	for _, text := range wordsOf(rest) {
		_, before := weights[text]
		put(text, restWeight, true)
		if e.Trail != nil && !before {
			w := weights[text]
			w.aside = true
			weights[text] = w
		}
	}
	if e.Trail == nil {
		return weights
	}
	for _, text := range wordsOf(e.Trail.also) {
		if old, ok := weights[text]; ok {
			put(text, old.weight+bothNamesBonus, old.inName)
		} else {
			put(text, otherNameWeight, false)
		}
	}
	for _, text := range wordsOf(e.Description) {
		put(text, descriptionWeight, false)
	}
	return weights
}

func standing(e *Entry) (score float32, cooked bool) {
	if e.Trail != nil {
		return trailStanding, false
	}
	description := wordsOf(e.Description)
	score = float32(len(description)) * wordStanding
	cooked = slices.ContainsFunc(description, func(word string) bool { return slices.Contains(cookedWords, word) })
	switch e.Group {
	case "Baby Foods":
		score += babyStanding
	case "American Indian/Alaska Native Foods":
		score += rareStanding
	}
	return score, cooked
}
