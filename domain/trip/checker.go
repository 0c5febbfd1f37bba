package trip

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"sumpter/domain/prose"
)

// checker gathers the problems of one trip. It writes text only for what is
// wrong, since every planning begins with it.
type checker struct {
	trip     *Trip
	groups   map[GroupID]bool
	members  map[MemberID]bool
	foods    map[FoodID]bool
	recipes  map[RecipeID]bool
	gear     map[GearID]bool
	pointIDs map[PointID]bool
	where    Where  // the thing being looked at
	inside   []step // the lists within it that lead to the part being looked at
	problems []Problem
}

// step is one item of a list within a thing.
type step struct {
	list  string
	index int // from 0
}

// enter goes to an item of a list within the thing; leave comes back.
func (c *checker) enter(list string, index int) { c.inside = append(c.inside, step{list, index}) }

func (c *checker) leave() { c.inside = c.inside[:len(c.inside)-1] }

// path writes where a field is: "ingredients[2].swaps[1].amount_g".
func (c *checker) path(field string) string {
	if len(c.inside) == 0 {
		return field
	}
	text := ""
	for _, s := range c.inside {
		text += s.list + "[" + strconv.Itoa(s.index+1) + "]."
	}
	return strings.TrimSuffix(text+field, ".")
}

// at moves to a thing; index counts from 0.
func (c *checker) at(list string, index int, id int64, name string) {
	c.where = Where{List: list, Index: index + 1, ID: id, Name: shown(name)}
}

func (c *checker) add(field string, what, allowed, remedy prose.Text) {
	where := c.where
	where.Field = c.path(field)
	c.problems = append(c.problems, Problem{Where: where, What: what, Allowed: allowed, Remedy: remedy})
}

// within checks a number against a range, both ends included. What is not a
// number at all is in no range.
func (c *checker) within(field, label string, value, low, high float64, unit string) bool {
	if value >= low && value <= high {
		return true
	}
	allowed := prose.Say("from %g to %s", low, measure(high, unit))
	c.add(field, prose.Say("%s is %s", prose.Word(label), measure(value, unit)), allowed, prose.Say("Enter the %s %s.", prose.Word(label), allowed))
	return false
}

// above checks a number that must be more than zero.
func (c *checker) above(field, label string, value, high float64, unit string) bool {
	if value > 0 && value <= high {
		return true
	}
	allowed := prose.Say("more than 0 and at most %s", measure(high, unit))
	c.add(field, prose.Say("%s is %s", prose.Word(label), measure(value, unit)), allowed, prose.Say("Enter the %s, %s.", prose.Word(label), allowed))
	return false
}

// count checks the size of a list. A list that is too long is not looked into.
func (c *checker) count(field, label string, length, low, high int) bool {
	if length >= low && length <= high {
		return true
	}
	allowed := prose.Say("%d to %d", low, high)
	remedy := prose.Say("Take some out.")
	if length < low {
		remedy = prose.Say("Add one.")
	}
	c.add(field, prose.Say("there are %d %s", length, prose.Word(label)), allowed, remedy)
	return false
}

// word checks a value that must be one of a few.
func word[T ~string](c *checker, field, label string, value T, allowed ...T) {
	if slices.Contains(allowed, value) {
		return
	}
	names := make([]string, len(allowed))
	for i, one := range allowed {
		names[i] = string(one)
	}
	list := strings.Join(names, ", ")
	c.add(field, prose.Say("%s is %q", prose.Word(label), shown(string(value))), prose.Say("one of: %s", list), prose.Say("Choose one of: %s.", list))
}

// line checks a text of one line that may be empty.
func (c *checker) line(field, label, value string) bool {
	return c.text(field, label, value, MaxNameRunes, "")
}

// notes checks a text of several lines that may be empty.
func (c *checker) notes(field, label, value string) {
	c.text(field, label, value, MaxTextRunes, "\n\t\r")
}

func (c *checker) text(field, label, value string, runes int, controls string) bool {
	if !utf8.ValidString(value) {
		c.add(field, prose.Say("%s is not valid text", prose.Word(label)), prose.Say("UTF-8 text"), prose.Say("Type the %s anew.", prose.Word(label)))
		return false
	}
	if len(value) > runes && utf8.RuneCountInString(value) > runes {
		allowed := prose.Say("at most %d characters", runes)
		c.add(field, prose.Say("%s has %d characters", prose.Word(label), utf8.RuneCountInString(value)), allowed, prose.Say("Shorten the %s.", prose.Word(label)))
		return false
	}
	for _, r := range value {
		if unicode.IsControl(r) && !strings.ContainsRune(controls, r) {
			c.add(field, prose.Say("%s holds the control character %s", prose.Word(label), fmt.Sprintf("%U", r)), prose.Say("letters, digits and signs"), prose.Say("Type the %s anew.", prose.Word(label)))
			return false
		}
	}
	return true
}

// name checks what a thing is called. Names are how sheets and people refer
// to things: each is one line, without blanks around it.
func (c *checker) name(value string) {
	if strings.TrimSpace(value) == "" {
		c.add("name", prose.Say("the name is empty"), prose.Say("1 to %d characters", MaxNameRunes), prose.Say("Give it a name."))
		return
	}
	if c.line("name", "name", value) && strings.TrimSpace(value) != value {
		c.add("name", prose.Say("the name %q begins or ends with a blank", shown(value)), prose.Say("a name without blanks around it"), prose.Say("Take the blanks away."))
	}
}

// measure writes a number without needless digits, and its unit if it has one.
func measure(value float64, unit string) prose.Text {
	if unit == "" {
		return prose.Say("%g", value)
	}
	return prose.Say("%g %s", value, prose.Word(unit))
}

// shown cuts a text that may be hostile down to what fits a message.
func shown(text string) string {
	const most = 40
	text = strings.ToValidUTF8(text, "\uFFFD")
	text = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}, text[:min(len(text), 4*most)])
	if runes := []rune(text); len(runes) > most {
		return string(runes[:most]) + "…"
	}
	return text
}
