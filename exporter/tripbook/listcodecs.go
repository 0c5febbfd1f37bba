package tripbook

import (
	"strings"

	"sumpter/domain/trip"
)

// listOf is several values in one cell, written with semicolons between. What
// holds one itself stands in double quotes, doubled inside, as in CSV.
// Reading also takes commas and line breaks between the values.
func listOf[T any](c codec[T], hint string) codec[[]T] {
	return codec[[]T]{
		look: asLine, allowed: func(s *scope) string { return hint + ", with ; between: " + c.allowed(s) },
		write: func(list []T, s *scope, u unit) content {
			items := make([]string, 0, len(list))
			for _, value := range list {
				items = append(items, c.write(value, s, u).text)
			}
			return textContent(joinList(items, "; "))
		},
		read: func(text string, s *scope, u unit) ([]T, string) {
			var list []T
			for _, item := range splitList(text, ";,\n") {
				value, wrong := c.read(item, s, u)
				if wrong != "" {
					return nil, "holds " + quoted(item) + ", which " + wrong
				}
				list = append(list, value)
			}
			return list, ""
		},
	}
}

// lines is a list of texts with one on each line of the cell.
func lines() codec[[]string] {
	return codec[[]string]{
		look: asText, allowed: says("one step on each line"),
		write: func(list []string, _ *scope, _ unit) content { return textContent(joinList(list, "\n")) },
		read:  func(text string, _ *scope, _ unit) ([]string, string) { return splitList(text, "\n"), "" },
	}
}

func joinList(items []string, between string) string {
	marks := "\n\""
	if between != "\n" {
		marks = ";,\n\""
	}
	written := make([]string, 0, len(items))
	for _, item := range items {
		if item == "" || item != strings.TrimSpace(item) || strings.ContainsAny(item, marks) {
			item = quoted(item)
		}
		written = append(written, item)
	}
	return strings.Join(written, between)
}

func quoted(text string) string { return `"` + strings.ReplaceAll(text, `"`, `""`) + `"` }

// splitList cuts a text at the separators outside of quotes, takes away blanks
// around the items and drops empty ones that are not quoted.
func splitList(text, separators string) []string {
	var items []string
	for text != "" {
		text = strings.TrimLeft(text, " \t\u00a0")
		if item, rest, ok := quotedItem(text, separators); ok {
			items, text = append(items, item), rest
			continue
		}
		item := text
		end := strings.IndexAny(text, separators)
		if end >= 0 {
			item, text = text[:end], text[end+1:]
		} else {
			text = ""
		}
		if item = strings.TrimSpace(item); item != "" {
			items = append(items, item)
		}
	}
	return items
}

// quotedItem reads an item in quotes and the separator behind it.
func quotedItem(text, separators string) (item, rest string, ok bool) {
	if !strings.HasPrefix(text, `"`) {
		return "", "", false
	}
	for i := 1; i < len(text); i++ {
		if text[i] != '"' {
			continue
		}
		if strings.HasPrefix(text[i+1:], `"`) {
			i++
			continue
		}
		rest = strings.TrimLeft(text[i+1:], " \t\u00a0")
		if rest != "" && !strings.ContainsAny(rest[:1], separators) {
			return "", "", false
		}
		if rest != "" {
			rest = rest[1:]
		}
		return strings.ReplaceAll(text[1:i], `""`, `"`), rest, true
	}
	return "", "", false
}

// reference is a thing of another sheet, by its name.
func reference[T ~int64](to func(*scope) *names) codec[T] {
	return codec[T]{
		look: asLine, refers: to, allowed: func(s *scope) string { return to(s).allowed() },
		write: func(id T, s *scope, _ unit) content { return textContent(to(s).name(int64(id))) },
		read: func(text string, s *scope, _ unit) (T, string) {
			id, ok := to(s).id(text)
			if !ok {
				return 0, "is not the name of a " + to(s).kind
			}
			return T(id), ""
		},
	}
}

// allergy is an allergen, with "(severe)" behind it where traces harm.
func allergy() codec[trip.Allergy] {
	const severe = "(severe)"
	return codec[trip.Allergy]{
		look: asLine, allowed: says("words such as " + string(trip.Peanuts) + ", each with " + severe + " behind it where traces harm"),
		write: func(value trip.Allergy, _ *scope, _ unit) content {
			if value.Severe {
				return textContent(string(value.Allergen) + " " + severe)
			}
			return textContent(string(value.Allergen))
		},
		read: func(text string, _ *scope, _ unit) (trip.Allergy, string) {
			name, isSevere := strings.CutSuffix(strings.TrimSpace(text), severe)
			name = strings.TrimSpace(name)
			// "peanuts severe" read as the name of an allergen would hide the severity.
			if strings.Contains(strings.ToLower(name), "severe") || name == "" {
				return trip.Allergy{}, "is not an allergen: write \"peanuts " + severe + "\""
			}
			return trip.Allergy{Allergen: known(trip.KnownAllergens(), name), Severe: isSevere}, ""
		},
	}
}

// openWord is a word of a list that the leader may add to.
func openWord[T ~string](list []T) codec[T] {
	c := word(list)
	c.strict = false
	c.allowed = says(strings.Join(c.choices, ", ") + ", or a word of your own")
	c.read = func(text string, _ *scope, _ unit) (T, string) { return known(list, strings.TrimSpace(text)), "" }
	return c
}

// known gives the word of the list that the text means, or the text itself.
func known[T ~string](list []T, text string) T {
	for _, item := range list {
		if wordKey(string(item)) == wordKey(text) {
			return item
		}
	}
	return T(text)
}
