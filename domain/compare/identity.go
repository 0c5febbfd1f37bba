package compare

import (
	"encoding/json"
	"fmt"
)

// keysOf gives what tells the things of two lists apart: their ID or name
// where all have one, their slot for the menu, their day for what holds from a morning on, their place for days; else all
// that they are.
func keysOf(path string, a, b []json.RawMessage) (mine, theirs []string) {
	if path == "days" {
		return places(a), places(b)
	}
	for _, names := range [][]string{{"id"}, {"name"}, {"bag"}, {"day", "meal", "group"}, {"day"}} {
		mine, apart := keysBy(names, a)
		if !apart {
			continue
		}
		if theirs, apart = keysBy(names, b); apart {
			return mine, theirs
		}
	}
	return contents(a), contents(b)
}

func places(list []json.RawMessage) []string {
	keys := make([]string, len(list))
	for i := range list {
		keys[i] = fmt.Sprint(i + 1)
	}
	return keys
}

// keysBy reads the named fields of each thing; false if one lacks a field or
// two have the same.
func keysBy(names []string, list []json.RawMessage) (keys []string, apart bool) {
	seen := map[string]bool{}
	for _, element := range list {
		found := members(element)
		var parts []json.RawMessage
		for _, name := range names {
			if found[name] == nil {
				return nil, false
			}
			parts = append(parts, found[name])
		}
		key := string(encoded(parts))
		if seen[key] {
			return nil, false
		}
		seen[key] = true
		keys = append(keys, key)
	}
	return keys, true
}

// contents takes the whole thing as its key, and numbers those that are the
// same.
func contents(list []json.RawMessage) []string {
	count := map[string]int{}
	keys := make([]string, len(list))
	for i, element := range list {
		count[string(element)]++
		keys[i] = fmt.Sprintf("%d %s", count[string(element)], element)
	}
	return keys
}
