package trip

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"sumpter/domain/prose"
)

// Problem is one thing that stops a trip from being planned.
type Problem struct {
	Where   Where      `json:"where"`
	What    prose.Text `json:"what"`    // what is wrong, with the value
	Allowed prose.Text `json:"allowed"` // what would be right
	Remedy  prose.Text `json:"remedy"`  // what to do about it
}

// String gives the problem as one line in English.
func (p Problem) String() string { return p.Text().String() }

// Text gives the problem as one line for people.
func (p Problem) Text() prose.Text {
	return prose.Say("%s: %s; allowed: %s. %s", p.Where.Text(), p.What, p.Allowed, p.Remedy)
}

// Where is a place in the trip document, in the words of its JSON form.
type Where struct {
	List  string `json:"list"`            // "crew", "foods" ...; "trip" and "settings" are no lists
	Index int    `json:"index,omitempty"` // place in the list from 1; 0: the whole of it
	ID    int64  `json:"id,omitempty"`    // of the thing there, if its kind has IDs
	Name  string `json:"name,omitempty"`  // what the leader calls it
	Field string `json:"field,omitempty"` // path of the field: "age_years", "ingredients[2].amount_g"
}

// String gives the place in English: "crew 3 (Jo)".
func (w Where) String() string { return w.Text().String() }

// Text gives the place for people.
func (w Where) Text() prose.Text {
	list := prose.Word(w.List)
	switch {
	case w.Index > 0 && w.Name != "":
		return prose.Say("%s %d (%s)", list, w.Index, w.Name)
	case w.Index > 0:
		return prose.Say("%s %d", list, w.Index)
	case w.Name != "":
		return prose.Say("%s (%s)", list, w.Name)
	default:
		return prose.Say("%s", list)
	}
}

var countedStep = regexp.MustCompile(`\[\d+\]`)

// Path gives the place as a path through the trip's JSON, where lists are
// counted from 0: "title", "settings.day_low", "recipes[0].ingredients[2].food".
func (w Where) Path() string {
	field := countedStep.ReplaceAllStringFunc(w.Field, func(step string) string {
		number, err := strconv.Atoi(strings.Trim(step, "[]"))
		if err != nil {
			return step
		}
		return fmt.Sprintf("[%d]", number-1)
	})
	path := w.List
	switch {
	case w.List == "trip":
		return field
	case w.Index > 0:
		path += fmt.Sprintf("[%d]", w.Index-1)
	}
	if field == "" {
		return path
	}
	return path + "." + field
}
