// Package optional holds values that may be unknown. Unknown is a state of its
// own, never zero: a food whose fibre nobody measured is not free of fibre.
package optional

import (
	"bytes"
	"encoding/json"
)

// Value is a T that may be unknown. The zero Value is unknown.
type Value[T any] struct {
	value T
	known bool
}

// Of makes a known value.
func Of[T any](value T) Value[T] { return Value[T]{value: value, known: true} }

// Unknown makes a value nobody knows.
func Unknown[T any]() Value[T] { return Value[T]{} }

// Get gives the value and whether it is known.
func (v Value[T]) Get() (T, bool) { return v.value, v.known }

// Known tells whether there is a value.
func (v Value[T]) Known() bool { return v.known }

// Or gives the value, or the stated fallback where it is unknown.
func (v Value[T]) Or(fallback T) T {
	if v.known {
		return v.value
	}
	return fallback
}

// MarshalJSON writes null for unknown.
func (v Value[T]) MarshalJSON() ([]byte, error) {
	if !v.known {
		return []byte("null"), nil
	}
	return json.Marshal(v.value)
}

// UnmarshalJSON reads null as unknown.
func (v *Value[T]) UnmarshalJSON(data []byte) error {
	if bytes.Equal(bytes.TrimSpace(data), []byte("null")) {
		*v = Value[T]{}
		return nil
	}
	decoder := json.NewDecoder(bytes.NewReader(data))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&v.value); err != nil {
		return err
	}
	v.known = true
	return nil
}

// IsZero lets encoding/json leave out unknown values marked omitzero.
func (v Value[T]) IsZero() bool { return !v.known }
