package tripbook

import "sumpter/domain/units"

// look is how a cell is shown and edited.
type look int

const (
	asLine look = iota // one line of text
	asText             // several lines
	asNumber
	asDate
)

// content is what is written into a cell: a number as its decimal digits, or text.
type content struct {
	text    string
	numeric bool
}

// codec writes a T into a cell and reads it from the text of one that is not
// blank. Both see the unit of the column.
type codec[T any] struct {
	look     look
	quantity *quantity // nil: no unit
	choices  []string  // of the drop-down; or
	refers   func(*scope) *names
	strict   bool // the drop-down refuses all else
	money    bool // shown with the decimals of the currency
	write    func(T, *scope, unit) content
	read     func(string, *scope, unit) (T, string)
	allowed  func(*scope) string
}

// head is what a column has whatever its rows are.
type head struct {
	title    string
	field    string // name in the trip's JSON, by which problems of the whole trip find their cell
	help     string
	width    float64
	look     look
	quantity *quantity
	choices  []string
	refers   func(*scope) *names
	strict   bool
	money    bool
	needed   bool // a blank cell is a fault
	allowed  func(*scope) string
}

// in gives the heading for readers of the system, "Body mass (kg)".
func (h *head) in(system units.System) string {
	if symbol := h.unit(system).symbol; symbol != "" {
		return h.title + " (" + symbol + ")"
	}
	return h.title
}

func (h *head) unit(system units.System) unit {
	if h.quantity == nil {
		return unit{}
	}
	return h.quantity.in(system)
}

// column is one column of a sheet whose rows are of type R.
type column[R any] struct {
	head
	get func(*R, *scope, unit) content
	set func(*R, string, *scope, unit) string // gives what is wrong, or nothing
}

// col makes a column of a field.
func col[R, T any](title, field string, at func(*R) *T, c codec[T], help string) column[R] {
	return colOf(title, field, func(r *R) T { return *at(r) }, func(r *R, value T) { *at(r) = value }, c, help)
}

// colOf makes a column of what get and set make of a row.
func colOf[R, T any](title, field string, get func(*R) T, set func(*R, T), c codec[T], help string) column[R] {
	width := map[look]float64{asLine: 16, asText: 34, asNumber: 11, asDate: 12}[c.look]
	return column[R]{
		head: head{
			title: title, field: field, help: help, width: width, look: c.look, quantity: c.quantity,
			choices: c.choices, refers: c.refers, strict: c.strict, money: c.money, allowed: c.allowed,
		},
		get: func(r *R, s *scope, u unit) content { return c.write(get(r), s, u) },
		set: func(r *R, text string, s *scope, u unit) string {
			value, wrong := c.read(text, s, u)
			if wrong == "" {
				set(r, value)
			}
			return wrong
		},
	}
}

// must makes a blank cell a fault.
func (c column[R]) must() column[R] {
	c.needed = true
	return c
}

// wide sets the width in characters.
func (c column[R]) wide(characters float64) column[R] {
	c.width = characters
	return c
}
