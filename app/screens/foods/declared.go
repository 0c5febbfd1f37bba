package foods

import (
	"cmp"
	"maps"
	"regexp"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// stateWords are what sheets write before or behind an allergen, in the reader's
// language and in English. A single letter is that of the keys of the label, and
// the E of a German one.
func stateWords() map[string]trip.Presence {
	words := map[string]trip.Presence{}
	for state, list := range map[trip.Presence]string{
		trip.Contains:   lang.X("states-contains", "contains, contain, c, e"),
		trip.MayContain: lang.X("states-may-contain", "may contain, may contain traces of, may contain traces, can contain, may, traces of, traces, trace, m"),
		trip.Free:       lang.X("states-free", "free of, free from, free, no, without, f"),
		trip.NotKnown:   lang.X("states-unknown", "unknown, not known, u, ?"),
	} {
		for _, word := range append(typed.List(list), presenceWord(state)) {
			words[strings.ToLower(word)] = state
		}
	}
	return words
}

// noneWords say of the whole label that it names no allergen.
func noneWords() []string {
	return typed.List(strings.ToLower(lang.X("states-none", "none, none declared, nothing, nil") + ", " + lang.L("none declared")))
}

// setDeclared reads what a label says of allergens, as sheets write it: "milk,
// soya; may contain nuts", "M: nuts", "milk (traces)", "free of gluten",
// "none". A bare name is contained; what is free is said for each by the word
// of the label. What was contained and is no longer named is not known; nothing
// that was contained becomes free by a list.
func setDeclared(food *trip.Food, text string, system units.System) error {
	whole := strings.ToLower(strings.Trim(strings.TrimSpace(text), "."))
	if whole == strings.ToLower(lang.L("not known, so not safe")) {
		return nil // what the cell showed
	}
	if slices.Contains(noneWords(), whole) {
		return noneDeclared(food, system)
	}
	said, err := readDeclared(text)
	if err != nil {
		return err
	}
	for allergen, state := range said {
		if was := food.Presence(allergen); state == trip.Free && isIn(was) {
			return stillIn(allergen)
		}
	}
	states := maps.Clone(food.Allergens)
	if states == nil {
		states = map[trip.Allergen]trip.Presence{}
	}
	for allergen, state := range states {
		if !isIn(state) || namedIn(said, allergen) {
			continue
		}
		delete(states, allergen)
	}
	for allergen, state := range said {
		if food.Presence(allergen) != state {
			states[allergen] = state
		}
	}
	food.Allergens = states
	return nil
}

func isIn(state trip.Presence) bool { return state == trip.Contains || state == trip.MayContain }

// namedIn tells whether an allergen or the wider one it is a kind of was said.
func namedIn(said map[trip.Allergen]trip.Presence, allergen trip.Allergen) bool {
	_, named := said[allergen]
	if parent, ok := allergen.Parent(); ok && !named {
		_, named = said[parent]
	}
	return named
}

// noneDeclared has the label name none of what it must declare where people think
// in those units. What need not be declared there stays as it was.
func noneDeclared(food *trip.Food, system units.System) error {
	for _, allergen := range trip.DeclaredAllergens() {
		if isIn(food.Presence(allergen)) {
			return stillIn(allergen)
		}
	}
	states := map[trip.Allergen]trip.Presence{}
	maps.Copy(states, food.Allergens)
	for _, allergen := range trip.DeclaredWith(system) {
		states[allergen] = trip.Free
	}
	food.Allergens = states
	return nil
}

func stillIn(allergen trip.Allergen) error {
	return prose.Errorf("%s is in it by what was read before: if the label says otherwise, change it in the label at the side", allergen)
}

// readDeclared reads the list of a cell. A state holds for the names behind it,
// up to the next; only being free is said for each name, since "free of gluten,
// milk" may mean that milk is in it.
func readDeclared(text string) (map[trip.Allergen]trip.Presence, error) {
	said := map[trip.Allergen]trip.Presence{}
	state, alone := trip.Contains, false // a state that holds for one name only
	after := ""
	for _, piece := range pieces(text) {
		name, own, given := cutState(piece)
		switch {
		case given:
			state, alone = own, own == trip.Free
		case alone:
			return nil, prose.Errorf("“%s” behind “%s” can mean both: write “contains %s” or “free of %s”", piece, after, piece, piece)
		}
		after = piece
		if name == "" {
			continue
		}
		allergen, whole, ok := bench.FindAllergen(name)
		if !ok {
			return nil, prose.Errorf("“%s” is no allergen that a label must declare: write names such as milk or peanuts, with “may contain” or “free of” before them where it is so", name)
		}
		if state == trip.Free && !whole {
			return nil, prose.Errorf("“%s” is not said free by that word: lactose-free food still has milk in it, for instance. Use the word of the label, such as “free of %s”", piece, allergen)
		}
		if before, twice := said[allergen]; twice {
			said[allergen] = trip.Worse(before, state)
		} else {
			said[allergen] = state
		}
		if _, behind := behindName(piece); behind { // "milk (traces)" tells of milk alone
			state, alone = trip.Contains, false
		}
	}
	return said, nil
}

var between = regexp.MustCompile(`[,;\n]|\.\s|\s(?:and|und|&)\s`)

// pieces parts a list at its signs and at "and".
func pieces(text string) []string {
	var list []string
	for _, piece := range between.Split(text, -1) {
		if piece = strings.ToLower(strings.Trim(strings.TrimSpace(piece), ".•")); piece != "" {
			list = append(list, strings.TrimSpace(piece))
		}
	}
	return list
}

// cutState parts the state from a name, before it or behind it.
func cutState(piece string) (name string, state trip.Presence, given bool) {
	if state, given = behindName(piece); given {
		return nameBefore(piece), state, true
	}
	words := stateWords()
	for _, word := range slices.SortedFunc(maps.Keys(words), func(a, b string) int { // "may contain" before "may"
		return cmp.Or(len(b)-len(a), strings.Compare(a, b))
	}) {
		if rest, ok := cutWord(piece, word); ok {
			if words[word] == trip.MayContain {
				rest = strings.TrimSuffix(rest, " enthalten") // German says it at the end
			}
			return rest, words[word], true
		}
	}
	return piece, trip.Contains, false
}

func presenceWord(state trip.Presence) string {
	switch state {
	case trip.Contains:
		return lang.L("contains")
	case trip.MayContain:
		return lang.L("may contain")
	case trip.Free:
		return lang.L("free")
	default:
		return lang.L("unknown")
	}
}

// cutWord cuts a word off the beginning, with the colon behind it.
func cutWord(piece, word string) (rest string, ok bool) {
	rest, ok = strings.CutPrefix(piece, word)
	if !ok || rest != "" && !strings.ContainsAny(rest[:1], " :=") {
		return piece, false
	}
	return strings.TrimLeft(rest, " :="), true
}

var (
	inBrackets = regexp.MustCompile(`^(.+?)\s*\((.+)\)$`)
	afterColon = regexp.MustCompile(`^(.+?)\s*[:=]\s*(.+)$`)
	freeBehind = regexp.MustCompile(`^(.+?)(?:[\s-]+free|[\s-]*frei)$`)
)

// behindName finds the state behind a name: "milk (traces)", "milk: contains",
// "gluten-free".
func behindName(piece string) (trip.Presence, bool) {
	for _, form := range []*regexp.Regexp{inBrackets, afterColon} {
		if found := form.FindStringSubmatch(piece); found != nil {
			if state, ok := stateWords()[found[2]]; ok {
				return state, true
			}
		}
	}
	if freeBehind.MatchString(piece) {
		return trip.Free, true
	}
	return trip.NotKnown, false
}

func nameBefore(piece string) string {
	for _, form := range []*regexp.Regexp{inBrackets, afterColon, freeBehind} {
		if found := form.FindStringSubmatch(piece); found != nil {
			return strings.TrimSpace(found[1])
		}
	}
	return piece
}
