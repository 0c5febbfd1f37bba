// Package translation holds what the program says in each language it speaks,
// for the window and for papers that are made without one.
package translation

import (
	"embed"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"sync"

	"sumpter/domain/prose"
)

// Files has the texts of each language, the files named as the toolkit wants
// them: by the bare language, since a region hides the toolkit's own words.
//
//go:embed *.json
var Files embed.FS

// English is the language of the texts in the source.
const English = "en"

// Languages lists the languages by their BCP 47 codes, in alphabetical order.
func Languages() []string {
	entries, err := Files.ReadDir(".")
	if err != nil {
		panic(fmt.Sprintf("translation: %v", err)) // the files are part of the program
	}
	var list []string
	for _, entry := range entries {
		list = append(list, strings.TrimSuffix(entry.Name(), ".json"))
	}
	return list
}

// Spoken gives the language to use for a locale such as "de", "de-AT" or
// "de_CH.UTF-8"; false if the program does not speak it.
func Spoken(locale string) (string, bool) {
	base := strings.ToLower(locale)
	if end := strings.IndexAny(base, "-_.@"); end >= 0 {
		base = base[:end]
	}
	return base, slices.Contains(Languages(), base)
}

// Reader is somebody who reads one of the Languages, in the units of the trip.
func Reader(language string) prose.Reader {
	texts := read(language)
	return prose.Reader{
		Words: func(english string) string {
			if text, ok := texts[english]; ok {
				return text
			}
			return english
		},
		DecimalSign: texts["decimal-sign"],
	}
}

var cached sync.Map // map[string]string by language

// read reads the texts of a language. A text whose key the format keeps for
// itself, such as "other", is written as {"other": {"other": "text"}}.
func read(language string) map[string]string {
	if texts, ok := cached.Load(language); ok {
		return texts.(map[string]string)
	}
	texts := map[string]string{}
	content, err := Files.ReadFile(language + ".json")
	if err != nil {
		return texts
	}
	var raw map[string]any
	if err := json.Unmarshal(content, &raw); err != nil {
		panic(fmt.Sprintf("translation: %s.json: %v", language, err)) // the file is part of the program
	}
	for key, value := range raw {
		if forms, ok := value.(map[string]any); ok {
			value = forms["other"]
		}
		if text, ok := value.(string); ok {
			texts[key] = text
		}
	}
	cached.Store(language, texts)
	return texts
}
