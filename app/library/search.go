package library

import (
	"cmp"
	"math/bits"
	"slices"
	"strings"
)

// How well a typed word fits a word of the library.
const (
	whole        = 1.0
	beginning    = 0.5 // plus up to restOfWord, the more of the word is typed
	restOfWord   = 0.25
	inside       = 0.4
	slip         = 0.5 // one typing error
	twoSlips     = 0.35
	coverage     = 0.3 // for the share of the name that was typed
	mostTyped    = 8   // words; more are not read
	shortestSlip = 4   // letters: shorter words have too many neighbours
)

// search gives the places of the best foods. Every typed word must fit.
func (x *index) search(query string, limit int) []int {
	typed := wordsOf(query)
	if len(typed) == 0 || limit <= 0 {
		return nil
	}
	typed = typed[:min(len(typed), mostTyped)]
	hits := x.rank(x.count(typed), typed)
	slices.SortFunc(hits, func(a, b hit) int {
		return cmp.Or(cmp.Compare(b.score, a.score), cmp.Compare(a.food, b.food))
	})
	places := make([]int, min(limit, len(hits)))
	for i := range places {
		places[i] = hits[i].food
	}
	return places
}

type hit struct {
	food  int
	score float32
}

// tally is how the typed words fit one food.
type tally struct {
	sum    float32 // over the typed words, of the best fit of each
	named  float32 // typed words found in the name, each by its fit
	fitted int     // typed words found so far
	last   int     // the typed word that touched it last, from 1
	best   float32 // fit of that word
	inName float32 // the same, if it stands in the name
}

// count goes through the typed words in order; a food that an earlier word
// does not fit is out.
func (x *index) count(typed []string) []tally {
	tallies := make([]tally, len(x.standing))
	for i, text := range typed {
		var touched []int
		for _, fit := range x.fits(text) {
			for _, use := range x.words[fit.word].uses {
				t := &tallies[use.food]
				if t.fitted < i {
					continue
				}
				if t.last != i+1 {
					t.last, t.best, t.inName = i+1, 0, 0
					touched = append(touched, use.food)
				}
				if score := fit.quality * use.weight; score > t.best {
					t.best, t.inName = score, 0
					if use.inName {
						t.inName = fit.quality
					}
				}
			}
		}
		for _, food := range touched {
			t := &tallies[food]
			t.sum += t.best
			t.fitted++
			t.named += t.inName
		}
	}
	return tallies
}

// rank scores the foods that every typed word fits.
func (x *index) rank(tallies []tally, typed []string) []hit {
	wantsCooked := slices.ContainsFunc(typed, func(word string) bool { return slices.Contains(cookedWords, word) })
	var hits []hit
	for food := range tallies {
		t := &tallies[food]
		if t.fitted < len(typed) {
			continue
		}
		score := t.sum/float32(len(typed)) + x.standing[food]
		if x.length[food] > 0 {
			score += coverage * min(1, t.named/x.length[food])
		}
		if x.cooked[food] && !wantsCooked {
			score += cookedStanding
		}
		hits = append(hits, hit{food, score})
	}
	return hits
}

// fit is a word of the library that a typed word may mean.
type fit struct {
	word    int
	quality float32
}

// fits lists the words a typed word may mean. Typing errors are thought of
// only where no trail food has the word as typed.
func (x *index) fits(typed string) []fit {
	var fits []fit
	trail := false
	for i := range x.words {
		text := x.words[i].text
		at := strings.Index(text, typed)
		switch {
		case at < 0 || at > 0 && len(typed) < shortestSlip:
			continue
		case len(text) == len(typed):
			fits = append(fits, fit{i, whole})
		case at == 0:
			fits = append(fits, fit{i, beginning + restOfWord*float32(len(typed))/float32(len(text))})
		default:
			fits = append(fits, fit{i, inside})
			continue
		}
		trail = trail || x.words[i].trail
	}
	if trail || len(typed) < shortestSlip {
		return fits
	}
	letters := lettersOf(typed)
	for i := range x.words {
		// Each slip brings in one foreign letter at most.
		if bits.OnesCount64(letters&^x.words[i].letters) > 2 {
			continue
		}
		text := x.words[i].text
		// The word may not be typed to its end.
		started := text[:min(len(text), len(typed))]
		switch {
		case within(typed, text, 1) || within(typed, started, 1):
			fits = append(fits, fit{i, slip})
		case len(typed) > shortestSlip+1 && (within(typed, text, 2) || within(typed, started, 2)):
			fits = append(fits, fit{i, twoSlips})
		}
	}
	return fits
}
