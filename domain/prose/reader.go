package prose

import (
	"errors"
	"fmt"
	"reflect"
	"strings"

	"sumpter/domain/units"
)

// Reader is how somebody reads: the zero Reader reads English, metric units
// and a decimal point.
type Reader struct {
	// Words gives what stands in the reader's language for an English format or
	// word, and the English where it has nothing. Nil: English.
	Words func(english string) string
	// Units the reader thinks in; none: metric.
	Units units.System
	// DecimalSign parts whole from fraction; none: a point.
	DecimalSign string
}

// In writes the text for a reader.
func (t Text) In(r Reader) string {
	switch t.kind {
	case verbatim:
		return t.form
	case listed:
		parts := make([]string, len(t.args))
		for i, arg := range t.args {
			parts[i] = fmt.Sprint(r.written(arg))
		}
		return strings.Join(parts, t.form)
	default:
		if t.form == "" {
			return ""
		}
		args := make([]any, len(t.args))
		for i, arg := range t.args {
			args[i] = r.written(arg)
		}
		return fmt.Sprintf(r.words(t.form), args...)
	}
}

// Quantity writes a quantity with its unit.
func (r Reader) Quantity(q Quantity) string {
	system := r.Units
	if system == "" {
		system = units.Metric
	}
	text := r.decimal(q.Format(system))
	if number, found := strings.CutSuffix(text, " cups"); found { // the one unit that is a word
		return number + " " + r.words("cups")
	}
	return text
}

// Number writes a number with the given decimals.
func (r Reader) Number(value float64, decimals int) string {
	return r.decimal(fmt.Sprintf("%.*f", decimals, value))
}

// Date writes a date as people say it: "Mon 20 Jul 2026".
func (r Reader) Date(d units.Date) string {
	if !d.IsSet() {
		return ""
	}
	year, month, day := d.Civil()
	return Say("%s %d %s %d", Word(d.Weekday().Short()), day, Word(units.MonthName(month)), year).In(r)
}

// Error writes an error: one that has a Text for the reader, any other as it
// is.
func (r Reader) Error(err error) string {
	var told interface{ Text() Text }
	if errors.As(err, &told) {
		return told.Text().In(r)
	}
	return err.Error()
}

// Quantity is a value with a unit that depends on what the reader thinks in.
type Quantity interface {
	Format(system units.System) string
}

// written turns an argument into what package fmt can write.
func (r Reader) written(arg any) any {
	switch value := arg.(type) {
	case string:
		return value
	case interface{ OwnWord() bool }:
		if value.OwnWord() {
			return arg
		}
		if named, ok := arg.(interface{ Named(units.System) string }); ok {
			return r.words(named.Named(r.Units))
		}
	case Text:
		return value.In(r)
	case interface{ Text() Text }:
		return value.Text().In(r)
	case error:
		return r.Error(value)
	case units.Date:
		return r.Date(value)
	case Quantity:
		return r.Quantity(value)
	}
	switch value := reflect.ValueOf(arg); value.Kind() {
	case reflect.String:
		return r.words(value.String())
	case reflect.Float64:
		if r.DecimalSign != "" {
			return fraction{value.Float(), r}
		}
	}
	return arg
}

func (r Reader) words(english string) string {
	if r.Words == nil || english == "" {
		return english
	}
	return r.Words(english)
}

func (r Reader) decimal(number string) string {
	if r.DecimalSign == "" {
		return number
	}
	return strings.Replace(number, ".", r.DecimalSign, 1)
}

// fraction is a number that is written by its verb with another decimal sign.
type fraction struct {
	value  float64
	reader Reader
}

// Format implements fmt.Formatter.
func (f fraction) Format(state fmt.State, verb rune) {
	text := fmt.Sprintf(fmt.FormatString(state, verb), f.value)
	_, _ = state.Write([]byte(f.reader.decimal(text)))
}
