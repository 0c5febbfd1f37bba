package menu

import (
	"context"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/fill"
	"sumpter/domain/needs"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// filler lets the program choose dishes: what the menu should be best at, the command, how far the work is, and what came of it.
type filler struct {
	s        *Screen
	aim      *widget.Slider
	aimWord  *look.Text
	fill     *widget.Button
	anew     *widget.Button
	progress *widget.ProgressBar
	known    *look.Text // how good the menu is while the work goes on
	working  *fyne.Container
	result   *look.Paragraph
	resultOf *trip.Trip // the trip that the result is about
	content  fyne.CanvasObject

	cancel context.CancelFunc // of the run under way; nil: none
	run    int                // number of the last run
	steps  func(days int) int64
}

// aimStep is how finely the aim can be set.
const aimStep = 0.25

func newFiller(s *Screen) *filler {
	f := &filler{s: s, aim: widget.NewSlider(-1, 1), aimWord: look.NewText("", look.Body, look.Ink), known: look.NewText("", look.Caption, look.Quiet), steps: fill.Thorough}
	f.aim.Step = aimStep
	f.aim.OnChanged = func(to float64) { f.aimWord.SetContent(aimWords(to)) }
	f.aim.OnChangeEnded = f.aimAt
	f.fill = widget.NewButton(lang.L("Fill the open slots"), func() { f.start(false) })
	f.fill.Importance = widget.HighImportance
	f.anew = widget.NewButton(lang.L("Choose all anew"), func() { f.start(true) })
	f.progress = widget.NewProgressBar()
	enough := widget.NewButton(lang.L("Enough: take the best so far"), f.enough)
	stop := widget.NewButton(lang.L("Stop"), f.stop)
	f.working = container.NewBorder(nil, nil, nil, container.NewHBox(f.known, enough, stop), f.progress)
	f.working.Hide()
	f.result = note("")
	f.result.Hide()
	quiet := func(text string) fyne.CanvasObject { return look.NewText(text, look.Caption, look.Quiet) }
	gap := container.New(layout.NewGridWrapLayout(fyne.NewSize(look.Space, 1)))
	slider := container.NewHBox(quiet(lang.L("cheap")), wide(look.Tracked(f.aim), 140), quiet(lang.L("varied")), gap, f.aimWord)
	f.content = bench.Headed(f.result, bench.Head(slider, f.anew, f.fill), f.working)
	return f
}

// aimWords says what a menu is best at.
func aimWords(aim float64) string {
	switch {
	case aim <= -0.9:
		return lang.L("as cheap as can be")
	case aim <= -0.4:
		return lang.L("light and cheap")
	case aim < -0.1:
		return lang.L("light, not dear")
	case aim < 0.1:
		return lang.L("as light as can be")
	case aim < 0.4:
		return lang.L("light, with some variety")
	case aim < 0.9:
		return lang.L("light and varied")
	default:
		return lang.L("as varied as can be")
	}
}

// show shows the aim of the trip.
func (f *filler) show() {
	if aim := f.s.seen.trip.Settings.MenuAim; f.aim.Value != aim {
		f.aim.Value = aim
		f.aim.Refresh()
	}
	f.aimWord.SetContent(aimWords(f.aim.Value))
	show(f.result, f.resultOf == f.s.seen.trip)
}

// aimAt stores what the menu should be best at; what is chosen already stays until the leader asks.
func (f *filler) aimAt(aim float64) {
	if aim == f.s.bench.Trip().Settings.MenuAim {
		return
	}
	_ = f.s.bench.Edit(lang.X("menu-aim", "make menus {{.Aim}}", map[string]any{"Aim": aimWords(aim)}), func(t *trip.Trip) error {
		t.Settings.MenuAim = aim
		return nil
	})
}

// start fills the open slots away from the screen, or all that are not locked.
func (f *filler) start(anew bool) {
	if f.cancel != nil {
		return
	}
	asked := f.s.bench.Trip().Clone()
	if anew {
		empty(asked)
	}
	asked = asked.Canonical()
	n, beside := f.needsOf(asked), f.beside()
	ctx, cancel := context.WithCancel(context.Background())
	f.cancel = cancel
	f.run++
	run := f.run
	f.begin()
	var found fill.Proposal
	var failed error
	f.s.bench.Document.Background(func() {
		found, failed = fill.Menu(ctx, asked, n, fill.Options{Steps: f.steps(len(asked.Days)), Beside: beside, Progress: f.hear(run)})
	}, func() {
		cancel()
		if run != f.run {
			return
		}
		f.end()
		if failed == nil {
			f.store(found, anew)
		}
	})
}

// needsOf gives the needs of the plan, or works them out where the plan is of another crew or route.
func (f *filler) needsOf(t *trip.Trip) needs.Result {
	if p := f.s.bench.Plan(); p != nil && len(p.Needs.Members) == len(t.Crew) && len(p.Needs.Walks) == len(t.Days) {
		return p.Needs
	}
	return needs.Compute(t, nil)
}

// beside is what the budget pays for besides the food of meals, as the plan has it; nothing before the first.
func (f *filler) beside() units.Money {
	p := f.s.bench.Plan()
	if p == nil {
		return 0
	}
	return fill.Beside(p.Trip, p.Portions, p.Summary().Cost)
}

// shownEvery is how often progress is shown.
const shownEvery = 100 * time.Millisecond

// hear shows progress now and then.
func (f *filler) hear(run int) func(fill.Progress) {
	var last time.Time
	return func(p fill.Progress) {
		if time.Since(last) < shownEvery {
			return
		}
		last = time.Now()
		f.s.bench.Document.OnScreen(func() {
			if run != f.run || f.cancel == nil {
				return
			}
			f.progress.SetValue(p.Share)
			text := ""
			if g := f.s.seen.trip.Group(p.Group); g != nil {
				text = g.Name
			}
			if p.Found {
				text = lang.X("menu-so-far", "{{.Group}}: found one, at most {{.Gap}} from the best", map[string]any{"Group": text, "Gap": percent(p.Gap)})
			}
			f.known.SetContent(text)
		})
	}
}

func (f *filler) begin() {
	f.progress.SetValue(0)
	f.known.SetContent("")
	f.resultOf = nil
	f.result.Hide()
	f.working.Show()
	f.fill.Disable()
	f.anew.Disable()
}

func (f *filler) end() {
	f.cancel = nil
	f.working.Hide()
	f.fill.Enable()
	f.anew.Enable()
}

// enough ends the work; what is best so far is taken.
func (f *filler) enough() {
	if f.cancel != nil {
		f.cancel()
	}
}

// stop ends the work and leaves the menu as it is.
func (f *filler) stop() {
	if f.cancel != nil {
		f.cancel()
		f.run++
		f.end()
	}
}

// store makes what was found one step of undo. What the leader decided meanwhile stays.
func (f *filler) store(found fill.Proposal, anew bool) {
	name, n := lang.L("fill the open slots"), 0
	if anew {
		name = lang.L("choose all dishes anew")
	}
	if len(found.Cells) > 0 {
		_ = f.s.bench.Edit(name, func(t *trip.Trip) error {
			if anew {
				empty(t)
			}
			n = put(t, found.Cells)
			tidy(t)
			return nil
		})
	}
	if n == 0 {
		f.s.bench.Say(lang.L("No open slot could be filled: all are decided or locked, or no recipe suits them."))
		return
	}
	words := resultWords(n, &found)
	if open := openSlots(f.s.bench.Trip()); open > 0 {
		words += " " + lang.X("menu-left-open", "Still open: {{.N}}. No recipe is meant for that meal and safe there; “Choose a dish” says why of each.", map[string]any{"N": open})
	}
	f.result.SetContent(words)
	f.resultOf = f.s.bench.Trip()
	f.result.Show()
}

// openSlots counts the meals that somebody eats from the packs and that have no
// dish.
func openSlots(t *trip.Trip) int {
	open := 0
	for _, group := range t.Groups {
		for day := range t.Days {
			if len(t.Eaters(day+1, group.ID)) == 0 {
				continue
			}
			for _, meal := range trip.Meals() {
				cell := t.Cell(day+1, meal, group.ID)
				if t.Days[day].Eats(meal) && (cell == nil || len(cell.Dishes) == 0 && !cell.Locked) {
					open++
				}
			}
		}
	}
	return open
}

// resultWords says what was filled and how good it is.
func resultWords(n int, found *fill.Proposal) string {
	data := map[string]any{"N": n, "Gap": percent(found.Gap())}
	proven := !slices.ContainsFunc(found.Groups, func(o fill.Outcome) bool { return !o.Proven })
	switch {
	case found.Stopped():
		return lang.X("menu-filled-stopped", "Meals filled: {{.N}}, ended early. By this aim a choice from these recipes could be at most {{.Gap}} better.", data)
	case proven:
		return lang.X("menu-filled-best", "Meals filled: {{.N}}. By this aim no choice from these recipes is better.", data)
	default:
		return lang.X("menu-filled", "Meals filled: {{.N}}. By this aim no choice from these recipes is better by more than {{.Gap}}.", data)
	}
}

// empty takes the dishes out of all slots that are not locked.
func empty(t *trip.Trip) {
	t.Menu = slices.DeleteFunc(t.Menu, func(c trip.Cell) bool { return !c.Locked })
}

// put stores cells where nothing is decided or locked and counts them.
func put(t *trip.Trip, cells []trip.Cell) int {
	n := 0
	for _, proposal := range cells {
		cell := cellFor(t, slotOfCell(&proposal))
		if cell.Locked || len(cell.Dishes) > 0 {
			continue
		}
		cell.Dishes = cloneDishes(proposal.Dishes)
		n++
	}
	return n
}

// emptyAll takes everything out that is not locked.
func (s *Screen) emptyAll() {
	before := len(s.bench.Trip().Menu)
	trial := s.bench.Trip().Clone()
	if empty(trial); len(trial.Menu) == before {
		s.bench.Say(lang.L("Nothing of yours is there to clear."))
		return
	}
	_ = s.bench.Edit(lang.L("empty the menu"), func(t *trip.Trip) error {
		empty(t)
		return nil
	})
}
