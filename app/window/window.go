package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/backups"
	"sumpter/app/document"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/onward"
	"sumpter/domain/units"
)

// Size the window opens with.
const (
	openWidth  float32 = 1280
	openHeight float32 = 800
)

// Size below which the view of a screen does not go. What a screen needs more
// is scrolled to.
const (
	leastView       float32 = 320
	leastViewHeight float32 = 240
)

// Workbench is the one window of the program: a welcome, or an open trip.
type Workbench struct {
	app       fyne.App
	window    fyne.Window
	scheduler document.Scheduler

	document *document.Document // nil on the welcome
	units    units.System       // that the screens were made for
	bench    *bench.Bench
	screens  []bench.Screen
	steps    []*bench.Steps // of each screen, by which it comes up
	shown    int
	finder   *finder     // the list of actions, last asked for
	looks    int         // how often the look has changed
	seenLook map[int]int // the look in which a screen was last shown

	navigation *navigation
	middle     *fyne.Container
	view       *container.Scroll // of the middle, for windows that are too small for it
	side       *fyne.Container   // findings, when wanted
	foot       *fyne.Container
	whole      *fyne.Container
	findings   *findingsList
	strip      *strip
	message    *message

	files   []string      // opened before
	shelf   backups.Shelf // earlier copies
	offered bool          // saving elsewhere, since the last edit that was saved
	leaving bool          // the open trip is being closed
}

// New makes the window; Show brings it up. The scheduler hands work to the
// screen's goroutine: by fyne.Do in the real program. Earlier copies of trips
// go onto the shelf.
func New(app fyne.App, scheduler document.Scheduler, shelf backups.Shelf) *Workbench {
	addTranslations()
	w := &Workbench{app: app, scheduler: scheduler, shelf: shelf}
	w.applyLook()
	app.Settings().AddListener(func(fyne.Settings) { w.looks++ })
	w.window = app.NewWindow("Sumpter")
	w.window.SetMaster()
	w.window.SetIcon(look.Icon())
	w.window.Resize(fyne.NewSize(openWidth, openHeight))
	w.window.SetCloseIntercept(w.quit)
	w.leaveByEscape()
	w.showWelcome()
	return w
}

// Window is the toolkit's window.
func (w *Workbench) Window() fyne.Window { return w.window }

// Document is the open trip, nil on the welcome.
func (w *Workbench) Document() *document.Document { return w.document }

// showTrip brings an opened trip to the screen.
func (w *Workbench) showTrip(d *document.Document) {
	w.document = d
	w.message = newMessage()
	w.bench = &bench.Bench{
		Document: d, Window: w.window, Say: w.say, AddTable: w.addTable, AddCopied: w.addPasted,
		TakeRecipes: w.takeRecipes, TakeDemoRecipes: w.takeDemoRecipes,
		Clipboard: func() fyne.Clipboard { return w.app.Clipboard() },
	}
	w.makeScreens()
	w.navigation = newNavigation(w.screens, w.showScreen)
	w.middle = container.NewStack()
	w.view = container.NewScroll(w.middle)
	w.view.SetMinSize(fyne.NewSize(leastView, leastViewHeight))
	w.findings = newFindingsList(w.bench)
	w.side = container.NewStack()
	w.strip = newStrip(d, w.relayout)
	w.listen(d)
	left := container.NewBorder(nil, nil, nil, widget.NewSeparator(), w.navigation.content)
	work := container.New(&flanked{left, w.view, w.side}, left, w.view, w.side)
	w.foot = w.bottom()
	w.whole = container.New(&footed{body: work, foot: w.foot}, work, w.foot)
	w.window.SetContent(w.whole)
	w.retitle()
	w.makeMenu()
	w.showScreen(0)
	d.Replan()
}

// followUnits makes the screens anew, whose headings name the units.
func (w *Workbench) followUnits() {
	if w.document != nil && w.document.Trip().Units != w.units {
		w.rebuild()
	}
}

// rebuild makes the screens anew and goes back to where the leader was.
func (w *Workbench) rebuild() {
	shown, before := max(0, w.shown), w.screens
	w.makeScreens()
	w.navigation.screens = w.screens
	if again, ok := w.screens[shown].(interface{ Resume(before bench.Screen) }); ok {
		again.Resume(before[shown])
	}
	w.showScreen(shown)
}

// makeScreens makes every screen, and none is shown.
func (w *Workbench) makeScreens() {
	w.screens, w.steps = newScreens(w.bench)
	w.shown, w.seenLook, w.units = -1, map[int]int{}, w.document.Trip().Units
}

// bottom is the message line over the strip.
func (w *Workbench) bottom() *fyne.Container {
	return container.NewVBox(widget.NewSeparator(), container.New(layout.NewCustomPaddedLayout(2, 4, look.SpaceWide, look.SpaceWide),
		container.NewVBox(w.message.note, w.strip.content)))
}

// relayout gives the bottom the height it needs now.
func (w *Workbench) relayout() {
	if w.whole == nil { // the welcome
		if content := w.window.Content(); content != nil {
			content.Refresh()
		}
		return
	}
	w.foot.Refresh() // texts learn their width
	w.whole.Layout.Layout(w.whole.Objects, w.whole.Size())
}

func (w *Workbench) listen(d *document.Document) {
	d.OnTrip(w.tripChanged)
	d.OnPlan(w.planChanged)
	d.OnPlanning(w.strip.planning)
	d.OnSaved(w.saved)
	d.OnPlace(w.goTo)
}

// tripChanged shows the trip after an edit, or after one was taken back.
func (w *Workbench) tripChanged() {
	if w.document.Trip().Units != w.units {
		w.document.OnScreen(w.followUnits) // not under the hands of the table that made the edit
	}
	w.retitle()
	w.makeMenu()
	w.refresh()
	if !w.document.Planning() { // the plan stays: only what happened on the way is new
		w.tellFindings()
	}
}

// planChanged shows the figures of a new plan.
func (w *Workbench) planChanged() {
	w.strip.refresh()
	w.refresh()
	w.tellFindings()
}

// tellFindings lists the findings where they are seen, and once more when it is
// known what must be seen to on the rest of the way.
func (w *Workbench) tellFindings() {
	if w.seesFindings() {
		w.findings.refresh()
	}
	if !w.document.Trip().Progress.UnderWay() {
		return
	}
	w.bench.Rest(w.bench.Morning(), func(*onward.Rest) {
		if w.seesFindings() {
			w.findings.refresh()
		}
		w.navigation.refresh()
	})
}

// seesFindings tells whether the list of findings is shown.
func (w *Workbench) seesFindings() bool { return len(w.side.Objects) > 0 }

// refresh shows the trip and the plan as they are now.
func (w *Workbench) refresh() {
	if w.shown >= 0 {
		w.screens[w.shown].Refresh()
	}
	w.navigation.refresh()
}

// say shows a line below the screens; empty text takes it back.
func (w *Workbench) say(text string) {
	w.tell(text, look.Ochre)
}

// tell says something below the screens.
func (w *Workbench) tell(text string, tone fyne.ThemeColorName) {
	if before := w.message.Content; before != text {
		w.message.say(text, tone)
		w.relayout()
	}
}

// saved tells of an edit that could not be stored; silence means it was.
func (w *Workbench) saved(err error) {
	if err == nil {
		w.offered = false
		return
	}
	w.tell(lang.X("not-saved", "Not saved: {{.Why}}", map[string]any{"Why": written.Error(err)}), look.Brick)
	w.offerElsewhere(err)
}

// showScreen changes the screen, unless something typed there has no meaning yet.
func (w *Workbench) showScreen(i int) {
	if i == w.shown || i < 0 || i >= len(w.screens) {
		return
	}
	if w.shown >= 0 {
		if !w.screens[w.shown].Commit() {
			return
		}
		w.steps[w.shown].Leave()
	}
	w.shown = i
	w.window.Canvas().Unfocus() // no key may reach the screen that was left
	w.steps[i].Begin(w.newLook(i))
	w.middle.Objects = []fyne.CanvasObject{container.NewPadded(w.screens[i].Content())}
	w.view.ScrollToOffset(fyne.Position{})
	w.say("")
	w.screens[i].Refresh()
	w.bringUp(i)
	w.navigation.mark(i)
	w.makeMenu()
	w.screens[i].Focus()
	w.steps[i].Go()
}

// bringUp lays out the screen that was put in the middle. Its pieces are new
// already, unless the look has changed since they were last seen; to refresh
// them once more would wrap every text again.
func (w *Workbench) bringUp(i int) {
	newLook := w.newLook(i)
	w.seenLook[i] = w.looks
	if newLook {
		w.middle.Refresh()
		return
	}
	w.middle.Resize(w.view.Size().Max(w.middle.MinSize()))
	w.middle.Layout.Layout(w.middle.Objects, w.middle.Size())
	w.window.Canvas().Refresh(w.middle)
}

// newLook tells whether the look has changed since a screen was last seen.
func (w *Workbench) newLook(i int) bool {
	seen, ever := w.seenLook[i]
	return ever && seen != w.looks
}

// goTo follows a place: its screen, then the thing on it.
func (w *Workbench) goTo(place document.Place) {
	for i, screen := range w.screens {
		if screen.Name() == place.Screen {
			w.showScreen(i)
			if w.shown != i {
				return
			}
			screen.GoTo(place.Place)
			if printer, ok := screen.(interface{ ShowPaper(name string) }); ok && place.Paper != "" {
				printer.ShowPaper(place.Paper)
			}
			return
		}
	}
}

// toggleFindings shows or hides the list on the right.
func (w *Workbench) toggleFindings() {
	if w.seesFindings() {
		w.side.Objects = nil
	} else {
		w.findings.refresh()
		w.side.Objects = []fyne.CanvasObject{look.NewGroundSheet(), container.NewBorder(nil, nil, widget.NewSeparator(), nil, w.findings.content)}
	}
	w.side.Refresh()
	w.window.Content().Refresh()
}

func (w *Workbench) retitle() {
	title := w.document.Trip().Title
	if title == "" {
		title = lang.L("Trip without a name")
	}
	w.window.SetTitle(title + " · Sumpter")
}
