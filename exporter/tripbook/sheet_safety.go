package tripbook

import (
	"maps"
	"slices"
	"strings"

	"sumpter/domain/trip"
)

// safetyRow is what one food declares.
type safetyRow struct {
	food      trip.FoodID
	allergens map[trip.Allergen]trip.Presence
	diets     map[trip.Diet]trip.Suitability
}

func safetySheet() sheet {
	type R = safetyRow
	columns := []column[R]{
		col("Food", "food", func(r *R) *trip.FoodID { return &r.food }, toFood(), "A food of sheet Foods.").must().wide(28),
	}
	const help = "Contains, may contain (traces), free, or unknown. Read the label. Empty and unknown are never served to somebody allergic."
	for _, allergen := range trip.KnownAllergens() {
		columns = append(columns, fact(string(allergen), "allergens."+string(allergen), allergen,
			func(r *R) *map[trip.Allergen]trip.Presence { return &r.allergens }, word(trip.Presences()), help))
	}
	columns = append(columns, otherFacts("Other allergens", "allergens", trip.KnownAllergens(), trip.Presences(),
		func(r *R) *map[trip.Allergen]trip.Presence { return &r.allergens }, "Any further one with its state: kiwi: contains; maize: free."))
	for _, diet := range trip.KnownDiets() {
		columns = append(columns, fact(string(diet), "diets."+string(diet), diet,
			func(r *R) *map[trip.Diet]trip.Suitability { return &r.diets }, word(trip.Suitabilities()), "Suits, does not suit, or unknown. Empty and unknown are not served to who keeps this diet."))
	}
	columns = append(columns, otherFacts("Other diets", "diets", trip.KnownDiets(), trip.Suitabilities(),
		func(r *R) *map[trip.Diet]trip.Suitability { return &r.diets }, "Any further one: low salt: suits."))
	return &table[R]{
		name: sheetSafety, list: "allergens",
		about: "What each food declares. One row a food. A mistake here can hurt somebody: copy the label, do not guess.",
		fresh: func() R { return R{} },
		from: func(t *trip.Trip) []R {
			rows := make([]R, len(t.Foods))
			for i := range t.Foods {
				rows[i] = R{t.Foods[i].ID, t.Foods[i].Allergens, t.Foods[i].Diets}
			}
			return rows
		},
		into:    gatherSafety,
		columns: columns,
	}
}

// fact is the column of one allergen or diet.
func fact[K ~string, V ~string](title, field string, key K, at func(*safetyRow) *map[K]V, c codec[V], help string) column[safetyRow] {
	return colOf(capital(title), field,
		func(r *safetyRow) V { return (*at(r))[key] },
		func(r *safetyRow, state V) { put(at(r), key, state) },
		c, help).wide(12)
}

// otherFacts is the column of the words the leader added: "kiwi: contains".
func otherFacts[K ~string, V ~string](title, field string, own []K, states []V, at func(*safetyRow) *map[K]V, help string) column[safetyRow] {
	state := word(states)
	type pair struct {
		key   K
		state V
	}
	c := listOf(codec[pair]{
		look: asLine, allowed: func(s *scope) string { return "a word, a colon, and one of " + state.allowed(s) },
		write: func(p pair, _ *scope, _ unit) content { return textContent(string(p.key) + ": " + string(p.state)) },
		read: func(text string, s *scope, u unit) (pair, string) {
			colon := strings.LastIndex(text, ":")
			if colon <= 0 {
				return pair{}, "has no colon"
			}
			value, wrong := state.read(text[colon+1:], s, u)
			return pair{known(own, strings.TrimSpace(text[:colon])), value}, wrong
		},
	}, "words with their state")
	return colOf(title, field,
		func(r *safetyRow) []pair {
			var others []pair
			for _, key := range slices.Sorted(maps.Keys(*at(r))) {
				if !slices.Contains(own, key) {
					others = append(others, pair{key, (*at(r))[key]})
				}
			}
			return others
		},
		func(r *safetyRow, others []pair) {
			for _, p := range others {
				put(at(r), p.key, p.state)
			}
		}, c, help).wide(24)
}

func put[K comparable, V any](facts *map[K]V, key K, value V) {
	if *facts == nil {
		*facts = map[K]V{}
	}
	(*facts)[key] = value
}

func capital(text string) string { return strings.ToUpper(text[:1]) + text[1:] }

func gatherSafety(g *gathered[safetyRow]) {
	places := placesOf(g.trip.Foods, func(f *trip.Food) trip.FoodID { return f.ID })
	seen := map[trip.FoodID]bool{}
	for i := range g.rows {
		row := &g.rows[i]
		place, ok := places[row.food]
		if !ok {
			continue // its food is a fault already
		}
		if seen[row.food] {
			g.fault(i, "Food", "has a row already", "one row for each food")
			continue
		}
		seen[row.food] = true
		g.trip.Foods[place].Allergens, g.trip.Foods[place].Diets = row.allergens, row.diets
		g.comes(i, "foods[%d].allergens", place)
		g.comes(i, "foods[%d].diets", place)
	}
}
