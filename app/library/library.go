// Package library is the built-in food library: every food of an open
// composition dataset with its nutrients, refuse, household measures and bulk
// density, and for a few hundred trail foods what a planner must also know:
// storage, allergens, diets, cooking. Every value says what it rests on.
//
// Search finds foods as a cook types; Food gives one as the trip keeps it. The
// data is read on first use, and only once. data/SOURCES.md tells origin and
// licence.
package library

import "sync"

// Lookup finds a food by its five-digit number in the dataset.
func Lookup(id string) (Entry, bool) {
	shelf := loaded()
	at, ok := shelf.byID[id]
	if !ok {
		return Entry{}, false
	}
	return shelf.entries[at], true
}

// All gives every food in the order of the dataset's numbers. The entries
// share their lists with the library: they are to be read only.
func All() []Entry {
	return append([]Entry(nil), loaded().entries...)
}

// Search gives at most limit foods for what was typed so far, best first: trail
// foods before others, dry before cooked, whole words before beginnings, and
// typing errors forgiven where nothing else fits. Every typed word must fit;
// nothing typed finds nothing.
func Search(query string, limit int) []Entry {
	shelf := loaded()
	hits := searchIndex().search(query, limit)
	found := make([]Entry, len(hits))
	for i, hit := range hits {
		found[i] = shelf.entries[hit]
	}
	return found
}

type shelf struct {
	entries []Entry
	byID    map[string]int
}

// loaded panics if the embedded tables cannot be read: that is a broken build,
// which the tests of this package refuse, and no input can cause it.
var loaded = sync.OnceValue(func() *shelf {
	entries, err := readEntries()
	if err != nil {
		panic("library: the built-in food data is damaged: " + err.Error())
	}
	s := &shelf{entries: entries, byID: make(map[string]int, len(entries))}
	for i := range entries {
		s.byID[entries[i].ID] = i
	}
	return s
})

// searchIndex is made when somebody first searches: making a trip from known
// numbers does not need it.
var searchIndex = sync.OnceValue(func() *index { return newIndex(loaded().entries) })
