// Package compare tells in what two copies of one trip differ, and takes
// chosen differences from one into the other. A trip file is copied, mailed
// and edited by two people; neither's work is to be lost unseen.
//
// It works on the JSON form of a trip, so that a field added to the trip is
// compared from its first day.
package compare

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Kind is how a thing differs.
type Kind string

// The kinds of difference, seen from my trip.
const (
	OnlyMine   Kind = "only mine"
	OnlyTheirs Kind = "only theirs"
	Changed    Kind = "changed"
)

// Difference is one thing that is not the same in both trips.
type Difference struct {
	List   string // JSON name of its list, such as "crew" or "progress.packed"; "" for what stands in no list
	Key    string // which thing of the list: stable for both trips
	Name   string // what the leader calls it
	Kind   Kind
	Fields []Field // what is changed in it; empty unless Kind is Changed
}

// Field is one field of a thing that has another value in each trip.
type Field struct {
	Name         string // JSON name
	Mine, Theirs string // as JSON; empty where it is not given
}

// Between lists in what two trips differ, in the order of the trip's lists.
func Between(mine, theirs *trip.Trip) ([]Difference, error) {
	a, err := tree(mine)
	if err != nil {
		return nil, err
	}
	b, err := tree(theirs)
	if err != nil {
		return nil, err
	}
	return between("", a, b), nil
}

// between compares two objects: their plain fields, their lists, and the
// objects in them.
func between(path string, a, b object) []Difference {
	var plain []Field
	var rest []Difference
	for _, name := range names(a, b) {
		inner := joined(path, name)
		switch {
		case isList(a[name]) || isList(b[name]):
			rest = append(rest, betweenLists(inner, elements(a[name]), elements(b[name]))...)
		case path == "" && (isObject(a[name]) || isObject(b[name])):
			rest = append(rest, between(inner, members(a[name]), members(b[name]))...)
		case !bytes.Equal(a[name], b[name]):
			plain = append(plain, Field{name, string(a[name]), string(b[name])})
		}
	}
	var all []Difference
	for _, field := range plain {
		all = append(all, Difference{List: path, Key: field.Name, Name: field.Name, Kind: Changed, Fields: []Field{field}})
	}
	return append(all, rest...)
}

func betweenLists(path string, a, b []json.RawMessage) []Difference {
	mine, theirs := keysApart(path, a, b)
	var all []Difference
	for i, key := range mine {
		difference := Difference{List: path, Key: key, Name: called(a[i], i), Kind: OnlyMine}
		if j := slices.Index(theirs, key); j >= 0 {
			if bytes.Equal(a[i], b[j]) {
				continue
			}
			difference.Kind, difference.Fields = Changed, fields(members(a[i]), members(b[j]))
		}
		all = append(all, difference)
	}
	for j, key := range theirs {
		if !slices.Contains(mine, key) {
			all = append(all, Difference{List: path, Key: key, Name: called(b[j], j), Kind: OnlyTheirs})
		}
	}
	return all
}

func fields(a, b object) []Field {
	var list []Field
	for _, name := range names(a, b) {
		if !bytes.Equal(a[name], b[name]) {
			list = append(list, Field{name, string(a[name]), string(b[name])})
		}
	}
	return list
}

// Take gives my trip with the chosen differences as they are in theirs. The
// choice comes from Between of the same two trips. It fails if the result
// would be no trip: something taken needs something that was not.
func Take(mine, theirs *trip.Trip, chosen []Difference) (*trip.Trip, error) {
	a, err := tree(mine)
	if err != nil {
		return nil, err
	}
	b, err := tree(theirs)
	if err != nil {
		return nil, err
	}
	taken := map[string]map[string]bool{}
	for _, difference := range chosen {
		if taken[difference.List] == nil {
			taken[difference.List] = map[string]bool{}
		}
		taken[difference.List][difference.Key] = true
	}
	moved, err := tree(collisions(a, b, taken).applied(theirs))
	if err != nil {
		return nil, err
	}
	merged, err := json.Marshal(take("", a, b, moved, taken))
	if err != nil {
		return nil, err
	}
	var result trip.Trip
	if err := json.Unmarshal(merged, &result); err != nil {
		return nil, prose.Errorf("the two trips could not be put together: %s", err)
	}
	if problems := trip.Validate(&result); len(problems) > 0 {
		return nil, prose.Errorf("what was chosen does not hold together: %s Choose the things it needs as well", problems[0])
	}
	return &result, nil
}

// take puts two objects together. Moved is b with the IDs that its things get.
func take(path string, a, b, moved object, taken map[string]map[string]bool) object {
	merged := object{}
	for _, name := range names(a, b) {
		inner := joined(path, name)
		value := a[name]
		switch {
		case isList(a[name]) || isList(b[name]):
			value = takeList(inner, elements(a[name]), elements(b[name]), elements(moved[name]), taken[inner])
		case path == "" && (isObject(a[name]) || isObject(b[name])):
			value = encoded(take(inner, members(a[name]), members(b[name]), members(moved[name]), taken))
		case taken[path][name]:
			value = moved[name]
		}
		if value != nil {
			merged[name] = value
		}
	}
	return merged
}

// takeList keeps my order and puts what is only theirs at the end.
func takeList(path string, a, b, moved []json.RawMessage, taken map[string]bool) json.RawMessage {
	mine, theirs := keysApart(path, a, b)
	var merged []json.RawMessage
	for i, key := range mine {
		element := a[i]
		if taken[key] {
			j := slices.Index(theirs, key)
			if j < 0 {
				continue
			}
			element = moved[j]
		}
		merged = append(merged, element)
	}
	for j, key := range theirs {
		if taken[key] && !slices.Contains(mine, key) {
			merged = append(merged, moved[j])
		}
	}
	if merged == nil && a == nil {
		return nil
	}
	return encoded(merged)
}

type object = map[string]json.RawMessage

func tree(t *trip.Trip) (object, error) {
	data, err := json.Marshal(t)
	if err != nil {
		return nil, prose.Errorf("the trip cannot be compared: %s", err)
	}
	return members(data), nil
}

// encoded is the JSON of what came out of JSON, which cannot fail.
func encoded(value any) json.RawMessage {
	data, err := json.Marshal(value)
	if err != nil {
		panic(err)
	}
	return data
}

func isList(value json.RawMessage) bool   { return len(value) > 0 && value[0] == '[' }
func isObject(value json.RawMessage) bool { return len(value) > 0 && value[0] == '{' }

func elements(value json.RawMessage) []json.RawMessage {
	var list []json.RawMessage
	if isList(value) {
		_ = json.Unmarshal(value, &list) // it was encoded by this package
	}
	return list
}

func members(value json.RawMessage) object {
	var found object
	if isObject(value) {
		_ = json.Unmarshal(value, &found) // it was encoded by this package
	}
	maps.DeleteFunc(found, func(_ string, inner json.RawMessage) bool { return string(inner) == "null" })
	return found
}

func names(a, b object) []string {
	var all []string
	for name := range a {
		all = append(all, name)
	}
	for name := range b {
		if _, both := a[name]; !both {
			all = append(all, name)
		}
	}
	slices.SortFunc(all, func(x, y string) int { return cmp.Or(cmp.Compare(order(x), order(y)), cmp.Compare(x, y)) })
	return all
}

// order puts the lists as the leader works through them.
func order(name string) int {
	return slices.Index([]string{"groups", "crew", "days", "foods", "recipes", "menu", "gear", "fuels", "bag_types", "points", "pins", "kept_packs", "progress"}, name)
}

func joined(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

func called(element json.RawMessage, place int) string {
	found := members(element)
	for _, name := range []string{"name", "bag"} {
		var text string
		if json.Unmarshal(found[name], &text) == nil && text != "" {
			return text
		}
	}
	if meal, ok := found["meal"]; ok {
		return strings.Trim(string(found["day"]), `"`) + " " + strings.Trim(string(meal), `"`)
	}
	return fmt.Sprint(place + 1)
}
