package library

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestSearchFindsWhatACookMeans(t *testing.T) {
	cases := []struct{ query, first string }{
		{"oats", "rolled oats"},
		{"oat", "rolled oats"},
		{"porridge", "rolled oats"},
		{"rice", "white rice"},
		{"brown rice", "brown rice"},
		{"Pasta", "pasta"},
		{"lentils", "lentils, brown"},
		{"lentil red", "red lentils"},
		{"butter", "butter"},
		{"peanut butter", "peanut butter, crunchy"},
		{"olive oil", "olive oil"},
		{"sugar", "sugar"},
		{"crisps", "potato chips"},
		{"mash", "potato flakes"},
		{"couscous", "couscous"},
		{"tomato powder", "tomato powder"},
		{"wraps", "flour tortillas"},
		{"tvp", "textured soya protein"},
		{"cinnamon", "cinnamon, ground"},
		{"whole milk", "whole milk powder"},
		// Typing errors: swapped, doubled, missing and wrong letters.
		{"lentlis", "lentils, brown"},
		{"wallnuts", "walnuts"},
		{"couscuos", "couscous"},
		{"parmesn", "parmesan, grated"},
		{"qinoa", "quinoa"},
		{"chedar", "cheddar"},
		{"red lentl", "red lentils"},
		{"broccolli", "broccoli, fresh"},
		{"Müsli", "granola"},
		{"honey", "honey"},
		{"almonds", "almonds"},
		{"walnut", "walnuts"},
		{"raisins", "raisins"},
		{"milk powder", "whole milk powder"},
		{"chocolate", "dark chocolate, 45-59 %"},
		{"tuna", "tuna in oil"},
		{"jerky", "beef jerky"},
		{"cocoa", "cocoa powder"},
		{"ghee", "ghee"},
		{"coconut", "desiccated coconut"},
		{"tahini", "tahini"},
		{"trail mix", "trail mix"},
		{"stock cube", "beef stock cubes"},
		{"dried tomatoes", "sun-dried tomatoes"},
		{"egg powder", "whole egg powder"},
		{"salt", "salt"},
		{"noodles", "ramen noodles"},
		{"soy sauce", "soya sauce"},
		{"flour", "wheat flour, wholemeal"},
		{"prunes", "prunes"},
		{"dried mango", "dried mango"},
		{"appricots", "dried apricots"},
		{"chedar chese", "cheddar"},
		{"peanut buter", "peanut butter, crunchy"},
		{"mayonaise", "mayonnaise"},
	}
	for _, k := range cases {
		found := Search(k.query, 5)
		if len(found) == 0 {
			t.Errorf("%q finds nothing", k.query)
			continue
		}
		if found[0].Name != k.first {
			t.Errorf("%q finds %q first, want %q", k.query, found[0].Name, k.first)
		}
	}
}

func TestSearchPutsTrailFoodsAndDryFoodsFirst(t *testing.T) {
	for _, query := range []string{"oats", "rice", "beans", "milk", "chicken", "potato", "egg"} {
		others := false
		for _, e := range Search(query, 30) {
			if e.Trail == nil {
				others = true
			} else if others && slices.Contains(wordsOf(e.Name), wordsOf(query)[0]) {
				t.Errorf("%q: %s stands behind foods that are not for the trail", query, e.Name)
			}
		}
	}
	place := func(query, id string) int {
		return slices.IndexFunc(Search(query, 1000), func(e Entry) bool { return e.ID == id })
	}
	raw, cooked := place("lentils", "16069"), place("lentils", "16070")
	if raw < 0 || cooked < 0 || raw > cooked {
		t.Errorf("raw lentils at %d, cooked at %d", raw, cooked)
	}
}

func TestSearchGoesPastTheTrailFoods(t *testing.T) {
	for query, want := range map[string]string{"venison": "venison", "cooked rice": ", cooked", "raw salmon": "raw", "lasagne": "lasagna"} {
		found := Search(query, 5)
		if len(found) == 0 {
			t.Errorf("%q finds nothing", query)
		}
		for _, e := range found {
			if !strings.Contains(strings.ToLower(e.Name), want) {
				t.Errorf("%q finds %q", query, e.Name)
			}
		}
	}
}

func TestSearchOfNothing(t *testing.T) {
	for _, query := range []string{"", "  ", "with", "xqzzvv", "!?"} {
		if found := Search(query, 5); len(found) != 0 {
			t.Errorf("%q finds %q", query, found[0].Name)
		}
	}
	if len(Search("oats", 0)) != 0 || len(Search("oats", -1)) != 0 {
		t.Error("no limit, yet results")
	}
}

// Every food is found by its own name, and typing a word to its end never
// loses the food it was on the way to.
func TestEveryTrailFoodIsFoundByItsName(t *testing.T) {
	for _, e := range All() {
		if e.Trail == nil {
			continue
		}
		found := Search(e.Name, 3)
		if !slices.ContainsFunc(found, func(f Entry) bool { return f.ID == e.ID }) {
			t.Errorf("%q does not find itself among the first 3", e.Name)
		}
	}
}

func TestSearchProperties(t *testing.T) {
	all := All()
	rapid.Check(t, func(t *rapid.T) {
		query := rapid.OneOf(rapid.String(), rapid.StringMatching(`[a-z]{1,9}( [a-z]{1,6}){0,3}`)).Draw(t, "query")
		limit := rapid.IntRange(0, 50).Draw(t, "limit")
		found := Search(query, limit)
		if len(found) > limit {
			t.Fatalf("%d results for limit %d", len(found), limit)
		}
		if again := Search(strings.ToUpper(strings.ToLower(query)), limit); len(again) != len(found) && isASCII(query) {
			t.Fatalf("capitals change the number of results: %d, %d", len(found), len(again))
		}
		more := Search(query, limit+10)
		for i := range found {
			if more[i].ID != found[i].ID {
				t.Fatalf("a larger limit changes the order at %d", i)
			}
		}
		// One swapped pair of letters inside a long word still finds the food.
		e := all[rapid.IntRange(0, len(all)-1).Draw(t, "food")]
		words := wordsOf(e.Name)
		word := words[rapid.IntRange(0, len(words)-1).Draw(t, "word")]
		if len(word) >= 6 && len(word) <= longestWord {
			at := rapid.IntRange(1, len(word)-2).Draw(t, "at")
			slipped := word[:at] + word[at+1:at+2] + word[at:at+1] + word[at+2:]
			if !within(word, slipped, 1) {
				t.Fatalf("%q and %q are more than a slip apart", word, slipped)
			}
		}
	})
}

func isASCII(text string) bool {
	for _, r := range text {
		if r > 127 {
			return false
		}
	}
	return true
}

func TestWithin(t *testing.T) {
	for _, k := range []struct {
		a, b  string
		limit int
		want  bool
	}{
		{"oats", "oats", 0, true}, {"oats", "oast", 1, true}, {"oats", "oast", 0, false}, {"oats", "oat", 1, true},
		{"oats", "boats", 1, true}, {"oats", "nuts", 1, false}, {"oats", "nuts", 2, true}, {"lentil", "lentlis", 2, true},
		{"a", "", 1, true}, {"", "", 0, true}, {"kasha", "casha", 1, true}, {strings.Repeat("a", 30), strings.Repeat("a", 30), 2, false},
	} {
		if got := within(k.a, k.b, k.limit); got != k.want {
			t.Errorf("%q, %q within %d: %v", k.a, k.b, k.limit, got)
		}
		if got := within(k.b, k.a, k.limit); got != k.want {
			t.Errorf("%q, %q within %d: %v the other way round", k.b, k.a, k.limit, got)
		}
	}
}

func FuzzSearch(f *testing.F) {
	for _, seed := range []string{"oats", "pürée", "\xff\xfe", strings.Repeat("very long ", 99), "a b c d e f g h i j"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, query string) {
		if found := Search(query, 10); len(found) > 10 {
			t.Fatalf("%d results", len(found))
		}
	})
}

// One keystroke is to take less than 2 ms.
func BenchmarkSearch(b *testing.B) {
	for _, query := range []string{"o", "oats", "red lentils", "lentlis tomtao cheddra"} {
		b.Run(query, func(b *testing.B) {
			Search(query, 20)
			b.ReportAllocs()
			for b.Loop() {
				Search(query, 20)
			}
		})
	}
}

func BenchmarkRead(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := readEntries(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkIndex(b *testing.B) {
	entries := All()
	b.ReportAllocs()
	for b.Loop() {
		newIndex(entries)
	}
}
