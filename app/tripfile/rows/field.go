package rows

import (
	"errors"
	"fmt"
	"math"

	"sumpter/domain/optional"
	"sumpter/domain/units"
)

// field ties one column to one value of a trip, for both directions.
type field interface {
	column() string
	value() (any, error)
	scan(stored any) error
}

type whole interface{ ~int | ~int32 | ~int64 }

// integer is a whole number.
type integer[T whole] struct {
	name string
	to   *T
}

func wholeOf[T whole](name string, to *T) field { return integer[T]{name, to} }

func (f integer[T]) column() string      { return f.name }
func (f integer[T]) value() (any, error) { return int64(*f.to), nil }
func (f integer[T]) scan(stored any) error {
	n, ok := stored.(int64)
	if !ok || int64(T(n)) != n {
		return misfit(f.name, stored, "a whole number")
	}
	*f.to = T(n)
	return nil
}

// reference is the ID of another thing; none is NULL, so that the database
// can check the others.
type reference[T ~int64] struct {
	name string
	to   *T
}

func referenceTo[T ~int64](name string, to *T) field { return reference[T]{name, to} }

func (f reference[T]) column() string { return f.name }
func (f reference[T]) value() (any, error) {
	if *f.to == 0 {
		return nil, nil
	}
	return int64(*f.to), nil
}
func (f reference[T]) scan(stored any) error {
	if stored == nil {
		*f.to = 0
		return nil
	}
	return integer[T](f).scan(stored)
}

// number is a number that may have a fraction.
type number[T ~float64] struct {
	name string
	to   *T
}

func numberOf[T ~float64](name string, to *T) field { return number[T]{name, to} }

func (f number[T]) column() string { return f.name }
func (f number[T]) value() (any, error) {
	value := float64(*f.to)
	if math.IsNaN(value) || math.IsInf(value, 0) {
		return nil, fmt.Errorf("%s is %v, which is no number", f.name, value)
	}
	return value, nil
}
func (f number[T]) scan(stored any) error {
	value, ok := stored.(float64)
	if !ok || math.IsNaN(value) || math.IsInf(value, 0) {
		return misfit(f.name, stored, "a number")
	}
	*f.to = T(value)
	return nil
}

// text is words.
type text[T ~string] struct {
	name string
	to   *T
}

func textOf[T ~string](name string, to *T) field { return text[T]{name, to} }

func (f text[T]) column() string      { return f.name }
func (f text[T]) value() (any, error) { return string(*f.to), nil }
func (f text[T]) scan(stored any) error {
	value, ok := stored.(string)
	if !ok {
		return misfit(f.name, stored, "text")
	}
	*f.to = T(value)
	return nil
}

// flag is yes or no, as 1 or 0.
type flag struct {
	name string
	to   *bool
}

func flagOf(name string, to *bool) field { return flag{name, to} }

func (f flag) column() string { return f.name }
func (f flag) value() (any, error) {
	if *f.to {
		return int64(1), nil
	}
	return int64(0), nil
}
func (f flag) scan(stored any) error {
	n, ok := stored.(int64)
	if !ok || n != 0 && n != 1 {
		return misfit(f.name, stored, "0 or 1")
	}
	*f.to = n == 1
	return nil
}

// day is a date as YYYY-MM-DD, or NULL if it is not set.
type day struct {
	name string
	to   *units.Date
}

func dateOf(name string, to *units.Date) field { return day{name, to} }

func (f day) column() string { return f.name }
func (f day) value() (any, error) {
	if !f.to.IsSet() {
		return nil, nil
	}
	written := f.to.String()
	if back, err := units.ParseDate(written); err != nil || back != *f.to {
		return nil, fmt.Errorf("%s is %s, which is out of range", f.name, written)
	}
	return written, nil
}
func (f day) scan(stored any) error {
	if stored == nil {
		*f.to = 0
		return nil
	}
	written, ok := stored.(string)
	if !ok {
		return misfit(f.name, stored, "a date")
	}
	date, err := units.ParseDate(written)
	if err != nil {
		return fmt.Errorf("column %s: %w", f.name, err)
	}
	*f.to = date
	return nil
}

// perhaps is a value that may be unknown, as NULL.
type perhaps[T any] struct {
	name  string
	to    *optional.Value[T]
	known func(name string, to *T) field
}

func maybeWhole[T whole](name string, to *optional.Value[T]) field {
	return perhaps[T]{name, to, wholeOf[T]}
}

func maybeNumber[T ~float64](name string, to *optional.Value[T]) field {
	return perhaps[T]{name, to, numberOf[T]}
}

func (f perhaps[T]) column() string { return f.name }
func (f perhaps[T]) value() (any, error) {
	value, known := f.to.Get()
	if !known {
		return nil, nil
	}
	return f.known(f.name, &value).value()
}
func (f perhaps[T]) scan(stored any) error {
	if stored == nil {
		*f.to = optional.Unknown[T]()
		return nil
	}
	var value T
	if err := f.known(f.name, &value).scan(stored); err != nil {
		return err
	}
	*f.to = optional.Of(value)
	return nil
}

func misfit(column string, stored any, want string) error {
	return fmt.Errorf("column %s holds %v, not %s", column, stored, want)
}

func columnsOf(fields []field) []string {
	names := make([]string, len(fields))
	for i, f := range fields {
		names[i] = f.column()
	}
	return names
}

// put makes a row of a key and the values of fields; one more value fits.
func put(key Row, fields []field) (Row, error) {
	row := append(make(Row, 0, len(key)+len(fields)+1), key...)
	var failed error
	for _, f := range fields {
		value, err := f.value()
		if err != nil && failed == nil {
			failed = err
		}
		row = append(row, value)
	}
	return row, failed
}

// take reads the values of a row into fields.
func take(row Row, fields []field) error {
	if len(row) != len(fields) {
		return errors.New("the row has a column too many or too few")
	}
	for i, f := range fields {
		if err := f.scan(row[i]); err != nil {
			return err
		}
	}
	return nil
}
