package compare

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"sumpter/domain/trip"
)

// Each copy numbers what is added to it by itself, so that both may have given
// one ID to two things. Nothing in a file tells such things from one that was
// renamed in one copy: they are taken for two if most of what is known of them
// differs as well, and people always. What is taken of theirs then gets a new
// ID, wherever it is named, so that a recipe never gets another food in silence.

// theirsOnly marks the key of their thing whose ID is that of another of mine.
const theirsOnly = " theirs"

// keysApart gives the keys of two lists, other ones for things that share
// nothing but their ID.
func keysApart(path string, a, b []json.RawMessage) (mine, theirs []string) {
	mine, theirs = keysOf(path, a, b)
	for j, key := range theirs {
		if i := slices.Index(mine, key); i >= 0 && apart(path, members(a[i]), members(b[j])) {
			theirs[j] = key + theirsOnly
		}
	}
	return mine, theirs
}

// apart tells whether two things with one ID are two things.
func apart(path string, a, b object) bool {
	if a["id"] == nil || bytes.Equal(a["name"], b["name"]) {
		return false
	}
	if path == "crew" {
		return true
	}
	known, differ := 0, 0
	for _, name := range names(a, b) {
		if name == "id" || name == "name" || blank(a[name]) && blank(b[name]) {
			continue
		}
		known++
		if !bytes.Equal(a[name], b[name]) {
			differ++
		}
	}
	return known == 0 || 2*differ > known
}

func blank(value json.RawMessage) bool {
	return slices.Contains([]string{"", "null", "0", "false", `""`, "[]", "{}"}, string(value))
}

// numbered lists the types of the IDs of the lists whose things have one.
var numbered = map[string]reflect.Type{
	"crew": reflect.TypeFor[trip.MemberID](), "groups": reflect.TypeFor[trip.GroupID](), "foods": reflect.TypeFor[trip.FoodID](),
	"recipes": reflect.TypeFor[trip.RecipeID](), "gear": reflect.TypeFor[trip.GearID](), "points": reflect.TypeFor[trip.PointID](),
}

// letters begin the IDs of these types in the keys of bags.
var letters = map[reflect.Type]string{
	numbered["crew"]: "m", numbered["groups"]: "g", numbered["foods"]: "f", numbered["recipes"]: "r",
}

// renumbering is new IDs by the type of the ID and the old one.
type renumbering map[reflect.Type]map[int64]int64

// collisions gives a free ID to each of their things whose ID another thing
// of mine has and keeps.
func collisions(a, b object, taken map[string]map[string]bool) renumbering {
	moved := renumbering{}
	for path, kind := range numbered {
		mine, theirs := elements(a[path]), elements(b[path])
		free := int64(1)
		for _, element := range append(slices.Clone(mine), theirs...) {
			free = max(free, idOf(element)+1)
		}
		_, keys := keysApart(path, mine, theirs)
		for j, key := range keys {
			if other, collides := strings.CutSuffix(key, theirsOnly); collides && !taken[path][other] {
				if moved[kind] == nil {
					moved[kind] = map[int64]int64{}
				}
				moved[kind][idOf(theirs[j])] = free
				free++
			}
		}
	}
	return moved
}

func idOf(element json.RawMessage) int64 {
	id, _ := strconv.ParseInt(string(members(element)["id"]), 10, 64) // it was encoded by this package
	return id
}

// applied gives the trip with the new IDs wherever a thing is named.
func (r renumbering) applied(t *trip.Trip) *trip.Trip {
	if len(r) == 0 {
		return t
	}
	changed := t.Clone()
	r.walk(reflect.ValueOf(changed).Elem())
	return changed
}

func (r renumbering) walk(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			r.walk(v.Elem())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			field := v.Field(i)
			if v.Type().Field(i).Name == "Bag" && field.Kind() == reflect.String {
				field.SetString(r.bag(field.String()))
			} else if field.CanSet() {
				r.walk(field)
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			r.walk(v.Index(i))
		}
	case reflect.Int64:
		if id, ok := r[v.Type()][v.Int()]; ok {
			v.SetInt(id)
		}
	}
}

// bag gives the key of a bag with the new IDs: "d3 dinner g1 r7 b1 pot 1".
func (r renumbering) bag(key string) string {
	words := strings.Fields(key)
	for i, word := range words {
		for kind, letter := range letters {
			if number, ok := strings.CutPrefix(word, letter); ok {
				if old, err := strconv.ParseInt(number, 10, 64); err == nil && r[kind][old] != 0 {
					words[i] = fmt.Sprint(letter, r[kind][old])
				}
			}
		}
	}
	return strings.Join(words, " ")
}
