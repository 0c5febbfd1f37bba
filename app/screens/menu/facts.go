package menu

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/findings"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
)

// state is who filled a slot.
type state uint8

const (
	away     state = iota // nobody eats here from the packs
	open                  // nothing is served
	proposed              // by the program
	decided               // by the leader
)

// facts is everything a cell shows.
type facts struct {
	state    state
	locked   bool
	mark     string // word for what is not seen at once: locked, proposed
	dishes   string // names, one a line, or what is there instead
	figures  string
	severity findings.Severity // of the worst finding; empty: none
	word     string            // what is wrong
}

// facts gives what the cell of a slot shows.
func (o *overview) facts(k slot) facts {
	known, ok := o.known[k]
	if !ok {
		known = o.gather(k)
		o.known[k] = known
	}
	return known
}

func (o *overview) gather(k slot) facts {
	f := facts{state: decided, locked: o.locked(k)}
	dishes := o.dishes(k)
	var names []string
	for _, dish := range dishes {
		if recipe := o.recipes[dish.Recipe]; recipe != nil {
			names = append(names, recipe.Name)
		}
	}
	f.dishes = strings.Join(names, "\n")
	switch {
	case !o.eaten(k) && len(dishes) == 0:
		f.state, f.dishes = away, lang.L("not from the packs")
	case len(dishes) == 0 && f.locked:
		f.state, f.dishes = open, lang.L("Left empty")
	case len(dishes) == 0:
		f.state, f.dishes = open, lang.L("Nothing yet")
	case o.proposal(k) != nil:
		f.state, f.mark = proposed, lang.L("proposed")
	}
	if f.locked {
		f.mark = lang.L("locked")
	}
	if !o.fresh(k) {
		if len(dishes) > 0 {
			f.figures = "…"
		}
		return f
	}
	f.figures = o.figures(k)
	f.severity, f.word = o.worst(k)
	return f
}

// figures are the energy of the mean eater and the minutes until the last
// one eats.
func (o *overview) figures(k slot) string {
	s := o.slots[k]
	if s == nil || len(s.Eaters) == 0 || len(o.batches[k]) == 0 {
		return ""
	}
	kcal := 0.0
	for _, batch := range o.batches[k] {
		for _, portion := range batch.Portions {
			kcal += float64(portion.Kcal)
		}
	}
	text := fmt.Sprintf("%.0f kcal", kcal/float64(len(s.Eaters)))
	meal := o.cooked[k]
	switch {
	case meal == nil:
	case len(o.uncooked(k)) > 0:
		text += " · " + lang.L("no flame")
	case meal.Minutes > 0:
		text += fmt.Sprintf(" · %.0f min", float64(meal.Minutes))
	case meal.Cold:
		text += " · " + lang.L("cold")
	}
	return text
}

// uncooked names the dishes of a slot that need a flame where there is none:
// no stove or pot in the group, or none allowed that day.
func (o *overview) uncooked(k slot) []string {
	meal := o.cooked[k]
	if meal == nil || !meal.Cold {
		return nil
	}
	var names []string
	for _, batch := range o.batches[k] {
		recipe := o.recipes[batch.Recipe]
		if recipe != nil && recipe.NeedsFlame() && !slices.Contains(names, recipe.Name) {
			names = append(names, recipe.Name)
		}
	}
	return names
}

// worst gives the severity and the word of the worst thing wrong in a slot,
// and how much more there is. The plan tells of a food that is not safe once,
// where it is first eaten; the grid marks every slot that serves it.
func (o *overview) worst(k slot) (findings.Severity, string) {
	list := o.troubles[k] // the plan's order: worst first
	more := len(list)
	var severity findings.Severity
	var word string
	if len(list) > 0 {
		severity, word, more = list[0].Severity, troubleWord(list[0]), more-1
	}
	for _, fate := range o.fates[k] {
		if fate.Verdict == spoilage.Safe || toldOf(list, fate.Food) {
			continue
		}
		if severity == findings.MustFix {
			more++
			continue
		}
		if word != "" {
			more++
		}
		severity, word = findings.MustFix, lang.L("not known safe")
		if fate.Verdict == spoilage.NotSafe {
			word = lang.L("not safe")
		}
	}
	if more > 0 {
		word += fmt.Sprintf(" +%d", more)
	}
	return severity, word
}

func toldOf(list []*findings.Finding, food trip.FoodID) bool {
	return slices.ContainsFunc(list, func(f *findings.Finding) bool {
		return f.Stage == findings.Spoilage && f.Place.Food == food
	})
}

// troubleWord says in a word or two what a finding is about; what has no word
// of its own is named by its severity.
func troubleWord(f *findings.Finding) string {
	switch f.Code {
	case "slot-open":
		return lang.L("nothing to eat")
	case "slot-empty":
		return lang.L("stays empty")
	case "cannot-be-served", "nothing-served":
		return lang.L("goes without")
	case "danger-accepted":
		return lang.L("danger accepted")
	case "cooked-beside", "eaten-beside":
		return lang.L("traces nearby")
	case "dinner-again":
		return lang.L("again soon")
	case "disliked":
		return lang.L("disliked")
	case "other-meal":
		return lang.L("for other meals")
	case "dish-for-absent":
		return lang.L("somebody absent")
	case "cell-unused":
		return lang.L("not eaten")
	case "main-meal-small":
		return lang.L("small portion")
	case "food-not-safe":
		return lang.L("not safe")
	case "food-not-known":
		return lang.L("not known safe")
	case "food-warm":
		return lang.L("gets warm")
	case "food-melts":
		return lang.L("melts")
	case "needs-flame", "snack-needs-flame":
		return lang.L("needs a flame")
	case "no-stove", "no-pot":
		return lang.L("no stove or pot")
	case "pot-too-small":
		return lang.L("small pot")
	case "slow-at-height", "slow-meal":
		return lang.L("slow to cook")
	case "melting-snow":
		return lang.L("snow to melt")
	case "dry-camp":
		return lang.L("dry camp")
	default:
		return lang.L(string(f.Severity))
	}
}
