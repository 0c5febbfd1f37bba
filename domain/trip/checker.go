package trip

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
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

func (c *checker) add(field, what, allowed, remedy string) {
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
	allowed := "from " + plain(low) + " to " + measure(high, unit)
	c.add(field, label+" is "+measure(value, unit), allowed, "Enter the "+label+" "+allowed+".")
	return false
}

// above checks a number that must be more than zero.
func (c *checker) above(field, label string, value, high float64, unit string) bool {
	if value > 0 && value <= high {
		return true
	}
	allowed := "more than 0 and at most " + measure(high, unit)
	c.add(field, label+" is "+measure(value, unit), allowed, "Enter the "+label+", "+allowed+".")
	return false
}

// count checks the size of a list. A list that is too long is not looked into.
func (c *checker) count(field, label string, length, low, high int) bool {
	if length >= low && length <= high {
		return true
	}
	allowed := fmt.Sprintf("%d to %d", low, high)
	remedy := "Take some out."
	if length < low {
		remedy = "Add one."
	}
	c.add(field, fmt.Sprintf("there are %d %s", length, label), allowed, remedy)
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
	c.add(field, fmt.Sprintf("%s is %q", label, shown(string(value))), "one of: "+list, "Choose one of: "+list+".")
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
		c.add(field, label+" is not valid text", "UTF-8 text", "Type the "+label+" anew.")
		return false
	}
	if len(value) > runes && utf8.RuneCountInString(value) > runes {
		allowed := fmt.Sprintf("at most %d characters", runes)
		c.add(field, fmt.Sprintf("%s has %d characters", label, utf8.RuneCountInString(value)), allowed, "Shorten the "+label+".")
		return false
	}
	for _, r := range value {
		if unicode.IsControl(r) && !strings.ContainsRune(controls, r) {
			c.add(field, fmt.Sprintf("%s holds the control character %U", label, r), "letters, digits and signs", "Type the "+label+" anew.")
			return false
		}
	}
	return true
}

// name checks what a thing is called. Names are how sheets and people refer
// to things: each is one line, without blanks around it.
func (c *checker) name(value string) {
	if strings.TrimSpace(value) == "" {
		c.add("name", "the name is empty", fmt.Sprintf("1 to %d characters", MaxNameRunes), "Give it a name.")
		return
	}
	if c.line("name", "name", value) && strings.TrimSpace(value) != value {
		c.add("name", fmt.Sprintf("the name %q begins or ends with a blank", shown(value)), "a name without blanks around it", "Take the blanks away.")
	}
}

// plain writes a number without needless digits.
func plain(value float64) string { return strconv.FormatFloat(value, 'g', -1, 64) }

func measure(value float64, unit string) string {
	return strings.TrimSuffix(plain(value)+" "+unit, " ")
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
