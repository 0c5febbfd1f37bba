package tripjson

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"sumpter/domain/prose"
)

const (
	maxProblems = 200 // enough for anybody to mend at once
	maxDepth    = 100 // of lists and objects where neither belongs
)

// walker reads JSON along a Go type. Unlike encoding/json alone it names every
// fault at once, and sees names given twice, in another case, or not at all.
type walker struct {
	decoder  *json.Decoder
	problems []Problem
	entries  int
	members  map[reflect.Type][]member // by type, once each
}

// errWrongAllOver ends the reading once maxProblems are found.
var errWrongAllOver = prose.Errorf("more faults than anybody mends at once")

// report adds a fault. Its error is fatal.
func (w *walker) report(path string, found []byte, wrong, allowed string) error {
	w.problems = append(w.problems, Problem{Path: path, Found: shown(found), Wrong: wrong, Allowed: allowed})
	if len(w.problems) >= maxProblems {
		return errWrongAllOver
	}
	return nil
}

// value reads one value. Its error is fatal; faults of contents are reported.
func (w *walker) value(into reflect.Value, path string) error {
	switch {
	case readsItself(into.Type()):
		return w.leaf(into, path)
	case into.Kind() == reflect.Slice:
		return w.enter(into, path, '[', w.list)
	case into.Kind() == reflect.Map:
		return w.enter(into, path, '{', w.dictionary)
	default:
		return w.enter(into, path, '{', w.object)
	}
}

// leaf reads a value that is not walked. The null that encoding/json would
// take for "leave it as it is" is a fault unless unknown is a state.
func (w *walker) leaf(into reflect.Value, path string) error {
	var raw json.RawMessage
	if err := w.decoder.Decode(&raw); err != nil {
		return err
	}
	kind := into.Type()
	_, mayBeUnknown := optionalOf(kind)
	if string(raw) == "null" && !mayBeUnknown {
		return w.report(path, raw, "is no value", allowed(kind))
	}
	if err := json.Unmarshal(raw, into.Addr().Interface()); err != nil {
		return w.report(path, raw, "is not allowed here", allowed(kind))
	}
	if list, closed := choices[kind]; closed && !slices.Contains(list, into.String()) {
		return w.report(path, raw, "is not known", allowed(kind))
	}
	return nil
}

// enter reads the opening bracket of a list or object, or reports what stands
// there instead and skips it.
func (w *walker) enter(into reflect.Value, path string, bracket json.Delim, inside func(reflect.Value, string) error) error {
	token, err := w.decoder.Token()
	if err != nil {
		return err
	}
	if token == bracket {
		return inside(into, path)
	}
	if err := w.report(path, []byte(fmt.Sprint(token)), "is not allowed here", allowed(into.Type())); err != nil {
		return err
	}
	if delimiter, ok := token.(json.Delim); ok && (delimiter == '[' || delimiter == '{') {
		return w.skipRest()
	}
	return nil
}

// skipRest reads on to the end of the list or object just entered.
func (w *walker) skipRest() error {
	for depth := 1; depth > 0; {
		token, err := w.decoder.Token()
		if err != nil {
			return err
		}
		switch token {
		case json.Delim('['), json.Delim('{'):
			if depth++; depth > maxDepth {
				return prose.Errorf("%s: lists or objects nested more than %d deep", ErrTooLarge, maxDepth)
			}
		case json.Delim(']'), json.Delim('}'):
			depth--
		}
	}
	return nil
}

func (w *walker) list(into reflect.Value, path string) error {
	for i := 0; w.decoder.More(); i++ {
		if err := w.count(path); err != nil {
			return err
		}
		into.Grow(1)
		into.SetLen(i + 1)
		into.Index(i).SetZero()
		if err := w.value(into.Index(i), indexed(path, i)); err != nil {
			return err
		}
	}
	return w.close()
}

func (w *walker) dictionary(into reflect.Value, path string) error {
	into.Set(reflect.MakeMap(into.Type()))
	for w.decoder.More() {
		if err := w.count(path); err != nil {
			return err
		}
		name, err := w.name()
		if err != nil {
			return err
		}
		at := joined(path, name)
		key := reflect.ValueOf(name).Convert(into.Type().Key())
		if into.MapIndex(key).IsValid() {
			if err := w.report(at, nil, "stands there twice", "each name once"); err != nil {
				return err
			}
		}
		entry := reflect.New(into.Type().Elem()).Elem()
		if err := w.value(entry, at); err != nil {
			return err
		}
		into.SetMapIndex(key, entry)
	}
	if into.Len() == 0 {
		into.SetZero()
	}
	return w.close()
}

func (w *walker) object(into reflect.Value, path string) error {
	members, ok := w.members[into.Type()]
	if !ok {
		members = membersOf(into.Type())
		w.members[into.Type()] = members
	}
	seen := make([]bool, len(members))
	for w.decoder.More() {
		name, err := w.name()
		if err != nil {
			return err
		}
		at := joined(path, name)
		place := slices.IndexFunc(members, func(m member) bool { return m.name == name })
		if place < 0 {
			if err := w.unknown(at, members); err != nil {
				return err
			}
			continue
		}
		if seen[place] {
			if err := w.report(at, nil, "stands there twice", "each name once"); err != nil {
				return err
			}
		}
		seen[place] = true
		field := into.FieldByIndex(members[place].index)
		field.SetZero()
		if err := w.value(field, at); err != nil {
			return err
		}
	}
	for i, m := range members {
		if !m.required || seen[i] {
			continue
		}
		if err := w.report(joined(path, m.name), nil, "is missing", allowed(into.FieldByIndex(m.index).Type())); err != nil {
			return err
		}
	}
	return w.close()
}

// unknown reports and skips a name the object does not have.
func (w *walker) unknown(path string, members []member) error {
	var skipped json.RawMessage
	if err := w.decoder.Decode(&skipped); err != nil {
		return err
	}
	var names []string
	for _, m := range members {
		names = append(names, m.name)
	}
	return w.report(path, nil, "is not a known name", strings.Join(names, ", "))
}

func (w *walker) name() (string, error) {
	token, err := w.decoder.Token()
	if err != nil {
		return "", err
	}
	name, ok := token.(string)
	if !ok {
		return "", prose.Errorf("%v where a name should stand", token)
	}
	return name, nil
}

func (w *walker) close() error {
	_, err := w.decoder.Token()
	return err
}

// count bounds the memory that a small file of many empty entries could take.
func (w *walker) count(path string) error {
	if w.entries++; w.entries > maxEntries {
		return prose.Errorf("%s: more than %d entries, at %s", ErrTooLarge, maxEntries, path)
	}
	return nil
}
