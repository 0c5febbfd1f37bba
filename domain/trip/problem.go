package trip

import "strconv"

// Problem is one thing that stops a trip from being planned.
type Problem struct {
	Where   Where  `json:"where"`
	What    string `json:"what"`    // what is wrong, with the value
	Allowed string `json:"allowed"` // what would be right
	Remedy  string `json:"remedy"`  // what to do about it
}

// String gives the problem as one line for people.
func (p Problem) String() string {
	return p.Where.String() + ": " + p.What + "; allowed: " + p.Allowed + ". " + p.Remedy
}

// Where is a place in the trip document, in the words of its JSON form.
type Where struct {
	List  string `json:"list"`            // "crew", "foods" ...; "trip" and "settings" are no lists
	Index int    `json:"index,omitempty"` // place in the list from 1; 0: the whole of it
	ID    int64  `json:"id,omitempty"`    // of the thing there, if its kind has IDs
	Name  string `json:"name,omitempty"`  // what the leader calls it
	Field string `json:"field,omitempty"` // path of the field: "age_years", "ingredients[2].amount_g"
}

// String gives the place for people: "crew 3 (Jo)".
func (w Where) String() string {
	text := w.List
	if w.Index > 0 {
		text += " " + strconv.Itoa(w.Index)
	}
	if w.Name != "" {
		text += " (" + w.Name + ")"
	}
	return text
}
