package rows

import (
	"errors"
	"fmt"
	"slices"

	"sumpter/domain/trip"
)

// single is a noun of which a trip has one.
func single[T any](name string, at func(*trip.Trip) *T, fields func(*T) []field) Table {
	var none T
	return Table{
		Name: name, Columns: append([]string{"id"}, columnsOf(fields(&none))...), Keys: 1, Order: []string{"id"},
		dump: func(t *trip.Trip, emit func(Row, error)) { emit(put(Row{int64(1)}, fields(at(t)))) },
		load: func(t *trip.Trip, rows []Row) error {
			if len(rows) != 1 {
				return fmt.Errorf("%d rows instead of one", len(rows))
			}
			return take(rows[0][1:], fields(at(t)))
		},
	}
}

// list is things that have keys of their own; their place in the list comes
// last and may have gaps.
func list[T any](name string, keys int, at func(*trip.Trip) *[]T, fields func(*T) []field) Table {
	var none T
	return Table{
		Name: name, Columns: append(columnsOf(fields(&none)), "place"), Keys: keys, Order: []string{"place"}, placed: true,
		dump: func(t *trip.Trip, emit func(Row, error)) {
			things := *at(t)
			for i := range things {
				row, err := put(nil, fields(&things[i]))
				emit(append(row, int64(i+1)), err)
			}
		},
		load: func(t *trip.Trip, rows []Row) error {
			things := at(t)
			for _, row := range rows {
				var thing T
				if err := take(row[:len(row)-1], fields(&thing)); err != nil {
					return err
				}
				*things = append(*things, thing)
			}
			return nil
		},
	}
}

// parents visits the things that hold a list, each with its key.
type parents[P any] struct {
	columns []string
	visit   func(t *trip.Trip, found func(key Row, parent *P))
}

// theTrip is the parent of lists that the trip itself holds.
func theTrip() parents[trip.Trip] {
	return parents[trip.Trip]{visit: func(t *trip.Trip, found func(Row, *trip.Trip)) { found(nil, t) }}
}

// those are the things of a list of the trip, by the columns of their key.
func those[P any](columns []string, at func(*trip.Trip) *[]P, key func(*P) Row) parents[P] {
	return parents[P]{columns: columns, visit: func(t *trip.Trip, found func(Row, *P)) {
		things := *at(t)
		for i := range things {
			found(key(&things[i]), &things[i])
		}
	}}
}

// within are the items of a list that other parents hold, by their place.
func within[P, C any](outer parents[P], column string, at func(*P) *[]C) parents[C] {
	return parents[C]{columns: append(slices.Clone(outer.columns), column), visit: func(t *trip.Trip, found func(Row, *C)) {
		outer.visit(t, func(key Row, parent *P) {
			items := *at(parent)
			for i := range items {
				found(append(slices.Clone(key), int64(i+1)), &items[i])
			}
		})
	}}
}

// index finds parents by their key.
func (p parents[P]) index(t *trip.Trip) map[Key]*P {
	found := map[Key]*P{}
	p.visit(t, func(row Row, parent *P) {
		var key Key
		copy(key[:], row)
		found[key] = parent
	})
	return found
}

var errNoParent = errors.New("a row belongs to nothing")

// items is a list within other things, told apart by their place in it.
func items[P, C any](name, place string, of parents[P], at func(*P) *[]C, fields func(*C) []field) Table {
	var none C
	keys := append(slices.Clone(of.columns), place)
	return Table{
		Name: name, Columns: append(slices.Clone(keys), columnsOf(fields(&none))...), Keys: len(keys), Order: keys,
		dump: func(t *trip.Trip, emit func(Row, error)) {
			of.visit(t, func(key Row, parent *P) {
				list := *at(parent)
				key = append(slices.Clone(key), nil)
				for i := range list {
					key[len(key)-1] = int64(i + 1)
					emit(put(key, fields(&list[i])))
				}
			})
		},
		load: func(t *trip.Trip, rows []Row) error {
			found := of.index(t)
			for _, row := range rows {
				var key Key
				copy(key[:], row[:len(of.columns)])
				parent := found[key]
				if parent == nil {
					return errNoParent
				}
				list := at(parent)
				if row[len(keys)-1] != int64(len(*list)+1) {
					return fmt.Errorf("column %s holds %v, not %d", place, row[len(keys)-1], len(*list)+1)
				}
				var item C
				if err := take(row[len(keys):], fields(&item)); err != nil {
					return err
				}
				*list = append(*list, item)
			}
			return nil
		},
	}
}

// states is a map of words to states within other things.
func states[P any, K, V ~string](name, word, state string, of parents[P], at func(*P) *map[K]V) Table {
	keys := append(slices.Clone(of.columns), word)
	return Table{
		Name: name, Columns: append(slices.Clone(keys), state), Keys: len(keys), Order: keys,
		dump: func(t *trip.Trip, emit func(Row, error)) {
			of.visit(t, func(key Row, parent *P) {
				known := *at(parent)
				for _, word := range sortedKeys(known) {
					emit(append(slices.Clone(key), string(word), string(known[word])), nil)
				}
			})
		},
		load: func(t *trip.Trip, rows []Row) error {
			found := of.index(t)
			for _, row := range rows {
				var key Key
				copy(key[:], row[:len(of.columns)])
				parent := found[key]
				if parent == nil {
					return errNoParent
				}
				var k K
				var v V
				if err := take(row[len(of.columns):], []field{textOf(word, &k), textOf(state, &v)}); err != nil {
					return err
				}
				if known := at(parent); *known == nil {
					*known = map[K]V{k: v}
				} else {
					(*known)[k] = v
				}
			}
			return nil
		},
	}
}

func sortedKeys[K ~string, V any](m map[K]V) []K {
	keys := make([]K, 0, len(m))
	for key := range m {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	return keys
}
