package menu

import (
	"context"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/domain/fill"
	"sumpter/domain/trial"
	"sumpter/domain/trip"
)

// choice is a recipe for the slot and what it would change.
type choice struct {
	recipe  trip.RecipeID
	name    string
	suits   bool // may be served in the slot
	served  bool // it is what the slot serves now
	days    []int
	unsafe  []trip.FoodID // would not be safe there, or are not known to be
	tried   bool
	outcome trial.Outcome
}

// chooser finds another dish for a slot: recipes that suit it, best first,
// each with what it would change.
type chooser struct {
	s       *Screen
	k       slot
	all     []choice
	found   []int // places in all that match the search
	now     trial.Outcome
	stopped context.CancelFunc
	search  *searchEntry
	ways    []arrangement
	way     *widget.Select // place in ways
	caption *look.Paragraph
	list    *widget.List
	at      int // place in found
	content fyne.CanvasObject
}

func newChooser(s *Screen) *chooser {
	c := &chooser{s: s, caption: note("")}
	c.search = newSearchEntry(c)
	c.search.SetPlaceHolder(lang.L("Find a recipe"))
	c.search.OnChanged = func(string) { c.filter() }
	c.way = widget.NewSelect(nil, func(string) { c.rank() })
	c.list = widget.NewList(func() int { return len(c.found) }, func() fyne.CanvasObject { return newChoiceRow() },
		func(i widget.ListItemID, object fyne.CanvasObject) { c.fill(i, object.(*choiceRow)) })
	c.list.OnSelected = func(i widget.ListItemID) {
		c.list.Unselect(i)
		c.take(i, c.chosenWay())
	}
	c.content = container.NewBorder(container.NewVBox(c.search, c.way, c.caption), nil, nil, nil, c.list)
	return c
}

// begin starts a search with what was typed so far.
func (c *chooser) begin(text string) {
	c.way.SetSelectedIndex(0)
	c.search.SetText(text)
	c.search.CursorColumn = len([]rune(text))
	c.at = 0
	c.filter()
	if canvas := fyne.CurrentApp().Driver().CanvasForObject(c.search); canvas != nil {
		canvas.Focus(c.search)
	}
}

// stop ends the work under way.
func (c *chooser) stop() {
	if c.stopped != nil {
		c.stopped()
		c.stopped = nil
	}
}

// show offers the recipes for a slot.
func (c *chooser) show(k slot) {
	if k != c.k {
		c.k, c.at = k, 0
		c.all, c.found = nil, nil
	}
	c.ways = c.s.seen.arrangements(k)
	words := make([]string, len(c.ways))
	for i := range c.ways {
		words[i] = c.ways[i].words
	}
	if !slices.Equal(words, c.way.Options) {
		changed := c.way.OnChanged
		c.way.OnChanged = nil
		c.way.Options = words
		c.way.SetSelectedIndex(0)
		c.way.OnChanged = changed
	}
	c.rank()
}

// chosenWay is how a recipe is served now.
func (c *chooser) chosenWay() arrangement { return c.ways[max(0, c.way.SelectedIndex())] }

// rank ranks the recipes for the slot and works out what each would change,
// the best first, away from the screen.
func (c *chooser) rank() {
	c.stop()
	o, k := c.s.seen, c.k
	if len(c.ways) == 0 {
		return
	}
	if o.plan == nil || k.day > len(o.plan.Trip.Days) {
		c.all = c.unranked(nil)
		c.filter()
		return
	}
	ctx, cancel := context.WithCancel(context.Background())
	c.stopped = cancel
	whole, n := o.wholeMenu(), o.plan.Needs
	served := o.dishes(k)
	var ranked []fill.Ranked
	var day *trial.Day
	var now trial.Outcome
	c.s.bench.Document.Background(func() {
		ranked = fill.Rank(whole, n, k.day, k.meal, k.group)
		day = trial.NewDay(whole, n, k.day, k.group)
		now = day.With(k.meal, served)
	}, func() {
		if ctx.Err() != nil {
			return
		}
		c.now, c.all = now, c.unranked(ranked)
		c.filter()
		c.try(ctx, day, c.chosenWay(), 0)
	})
}

// unranked lists the ranked recipes and, after them, all others.
func (c *chooser) unranked(ranked []fill.Ranked) []choice {
	o := c.s.seen
	days := o.daysOf(c.k)
	seen := map[trip.RecipeID]bool{}
	var list []choice
	add := func(id trip.RecipeID, suits bool, unsafe []trip.FoodID) {
		if recipe := o.recipes[id]; recipe != nil && !seen[id] {
			seen[id] = true
			served := slices.ContainsFunc(o.dishes(c.k), func(d trip.Dish) bool { return d.Recipe == id })
			list = append(list, choice{recipe: id, name: recipe.Name, suits: suits, served: served, days: days[id], unsafe: unsafe})
		}
	}
	for _, r := range ranked {
		add(r.Recipe, true, r.Unsafe)
	}
	for i := range o.trip.Recipes {
		add(o.trip.Recipes[i].ID, false, nil)
	}
	return list
}

// daysOf lists the other days on which the group has each recipe.
func (o *overview) daysOf(k slot) map[trip.RecipeID][]int {
	days := map[trip.RecipeID][]int{}
	for day := 1; day <= len(o.trip.Days); day++ {
		for _, meal := range trip.Meals() {
			other := slot{day, meal, k.group}
			if other == k {
				continue
			}
			for _, dish := range o.dishes(other) {
				if !slices.Contains(days[dish.Recipe], day) {
					days[dish.Recipe] = append(days[dish.Recipe], day)
				}
			}
		}
	}
	return days
}

// atOnce is how many recipes are tried before the list is shown again.
const atOnce = 8

// try works out some recipes, shows them and goes on with the next.
func (c *chooser) try(ctx context.Context, day *trial.Day, how arrangement, from int) {
	to := min(len(c.all), from+atOnce)
	if from >= to {
		return
	}
	part := slices.Clone(c.all[from:to])
	meal := c.k.meal
	c.s.bench.Document.Background(func() {
		for i := range part {
			part[i].outcome, part[i].tried = day.With(meal, how.with(part[i].recipe)), true
		}
	}, func() {
		if ctx.Err() != nil {
			return
		}
		for i := range part {
			c.all[from+i] = part[i]
		}
		c.list.Refresh()
		c.try(ctx, day, how, to)
	})
}

// filter shows the recipes whose names hold every word of the search.
func (c *chooser) filter() {
	c.found = nil
	wanted := strings.Fields(strings.ToLower(c.search.Text))
	for i := range c.all {
		name := strings.ToLower(c.all[i].name)
		if !slices.ContainsFunc(wanted, func(word string) bool { return !strings.Contains(name, word) }) {
			c.found = append(c.found, i)
		}
	}
	c.at = max(0, min(c.at, len(c.found)-1))
	switch {
	case len(c.found) == 0 && len(c.all) > 0:
		c.caption.SetContent(lang.L("No recipe is called that."))
	case c.s.seen.plan == nil:
		c.caption.SetContent(lang.L("What each would change comes with the plan."))
	case c.now.MealKcal == 0:
		c.caption.SetContent(lang.L("Food and energy of this meal for one eater, protein and cost of the whole day. Then minutes and fuel."))
	default:
		c.caption.SetContent(lang.L("What changes in an eater's day: food, energy, protein, cost. Then minutes and fuel of the meal."))
	}
	c.list.Refresh()
}

// step goes down or up the list.
func (c *chooser) step(by int) {
	c.at = max(0, min(c.at+by, len(c.found)-1))
	c.list.ScrollTo(c.at)
	c.list.Refresh()
}

// take serves a found recipe and goes back to the grid.
func (c *chooser) take(i int, how arrangement) {
	if i < 0 || i >= len(c.found) {
		return
	}
	if c.s.serve(c.k, c.all[c.found[i]].recipe, how) == nil {
		c.leave()
	}
}

// takeBeside serves a found recipe beside what is there.
func (c *chooser) takeBeside(i int) {
	for _, how := range c.ways {
		if how.key == addKey {
			c.take(i, how)
			return
		}
	}
	c.take(i, c.chosenWay())
}

// leave goes back to the grid.
func (c *chooser) leave() {
	c.s.side.showMeal()
	c.s.board.sheet.focus()
}

// without lists the eaters of a slot who are served nothing.
func (o *overview) without(k slot) []trip.MemberID {
	eaters := o.trip.Eaters(k.day, k.group)
	s := o.slots[k]
	if s == nil || !o.fresh(k) {
		return nil
	}
	for i := range s.Dishes {
		served := membersOf(&s.Dishes[i])
		eaters = slices.DeleteFunc(eaters, func(id trip.MemberID) bool { return slices.Contains(served, id) })
	}
	return eaters
}
