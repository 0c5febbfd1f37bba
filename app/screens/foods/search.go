package foods

import (
	"math"
	"strconv"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/grid"
	"sumpter/app/library"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// mostFound bounds what a search shows: who needs more types another letter.
const mostFound = 30

// search finds foods in the built-in library while somebody types. The
// keyboard stays in the entry: arrows choose, Return adds.
type search struct {
	screen  *Screen
	entry   *searchEntry
	found   *grid.Grid[*library.Entry]
	nothing *look.Text
	results *fyne.Container
	content fyne.CanvasObject
}

// warmLibrary reads the library ahead of the first letter, since that takes
// longer than a frame. It changes nothing that is shown.
var warmLibrary = sync.OnceFunc(func() { go library.Search("oats", 1) })

func newSearch(screen *Screen) *search {
	s := &search{screen: screen, nothing: look.NewText(lang.L("The library has nothing like that. A food from its label can be added by hand."), look.Body, look.Quiet)}
	s.entry = newSearchEntry()
	s.entry.SetPlaceHolder(lang.L("Search the food library: type, choose with the arrows, Return adds to the trip"))
	s.entry.OnChanged = s.look
	s.entry.OnSubmitted = func(string) { s.addChosen() }
	s.entry.moved = s.move
	s.entry.left = s.close
	s.entry.table = screen.pasteTable
	s.found = grid.New(s.columns(), grid.Options[*library.Entry]{
		Key: func(e *library.Entry) string { return e.ID }, OnOpen: func(*library.Entry) { s.addChosen() }, OnProblem: screen.bench.Say, Sticky: 1, Clipboard: screen.bench.Clipboard,
	})
	height := look.RowHeight * 8
	s.results = bench.Tall(height, s.found, container.NewCenter(s.nothing))
	s.results.Hide()
	s.content = container.NewVBox(s.entry, s.results)
	return s
}

func (s *search) columns() []grid.Column[*library.Entry] {
	grams := func(of func(n *trip.Nutrients) (float64, bool)) func(*library.Entry) string {
		return func(e *library.Entry) string {
			if value, known := of(&e.Per100g); known {
				return written.Number(value, 1)
			}
			return notKnown
		}
	}
	return []grid.Column[*library.Entry]{
		{Title: lang.L("Food"), Width: 300, Text: foundName},
		{Title: lang.L("Energy"), Unit: "kcal/100 g", Width: 90, Right: true, Text: func(e *library.Entry) string { return strconv.FormatFloat(float64(e.Per100g.Kcal), 'f', 0, 64) }},
		{Title: lang.L("Protein"), Unit: "g", Width: 80, Right: true, Text: grams(func(n *trip.Nutrients) (float64, bool) { return n.ProteinGrams.Get() })},
		{Title: lang.L("Keeps"), Width: 190, Text: s.keeps, Tone: keepsTone},
		{Title: lang.L("Allergens"), Width: 260, Text: func(e *library.Entry) string { return allergenHint(e, s.screen.bench.Units()) }, Tone: allergenTone},
		{Title: "", Width: 100, Text: s.there, Tone: func(*library.Entry) fyne.ThemeColorName { return look.Spruce }},
	}
}

// foundName begins with a capital, as the trip will write it.
func foundName(e *library.Entry) string {
	first, size := utf8.DecodeRuneInString(e.Name)
	return string(unicode.ToUpper(first)) + e.Name[size:]
}

// keeps says in a few words how the food bears the way.
func (s *search) keeps(e *library.Entry) string {
	trail := e.Trail
	if trail == nil {
		return lang.L("not judged")
	}
	food := e.Food()
	var words []string
	switch {
	case food.Storage.TCS == trip.TCSYes:
		words = append(words, lang.L("must be kept cold"))
	case trail.ShelfDays > 0:
		words = append(words, shelfDays(trail.ShelfDays))
	}
	if softens, known := trail.Softens.Get(); known {
		words = append(words, lang.L("melts at")+" "+written.Quantity(softens, s.screen.bench.Units()))
	}
	if food.Storage.TCSWhenOpen {
		words = append(words, lang.L("cold once open"))
	}
	return strings.Join(words, ", ")
}

func keepsTone(e *library.Entry) fyne.ThemeColorName {
	if e.Trail == nil {
		return look.Ochre
	}
	return look.Ink
}

// allergenHint names what a typical recipe holds and where only the label
// knows. It never says that a food is free of anything.
func allergenHint(e *library.Entry, system units.System) string {
	if e.Trail == nil {
		return lang.L("not known: read the label")
	}
	var parts []string
	if len(e.Trail.Contains) > 0 {
		parts = append(parts, named(e.Trail.Contains, system))
	}
	if !e.Trail.Plain || len(e.Trail.CheckLabel) > 0 {
		parts = append(parts, lang.L("read the label"))
	}
	if len(parts) == 0 {
		return lang.L("one plain ingredient")
	}
	return strings.Join(parts, "; ")
}

func allergenTone(e *library.Entry) fyne.ThemeColorName {
	if e.Trail != nil && len(e.Trail.Contains) > 0 {
		return look.Plum
	}
	return look.Quiet
}

func (s *search) there(e *library.Entry) string {
	if withSource(s.screen.bench.Trip(), sourceOf(e)) != 0 {
		return lang.L("in the trip")
	}
	return ""
}

func sourceOf(e *library.Entry) string {
	food := e.Food()
	return food.Source
}

// look shows what fits the letters typed so far, the best chosen.
func (s *search) look(text string) {
	if strings.TrimSpace(text) == "" {
		s.results.Hide()
		return
	}
	hits := library.Search(text, mostFound)
	rows := make([]*library.Entry, len(hits))
	for i := range hits {
		rows[i] = &hits[i]
	}
	s.found.SetRows(rows)
	s.found.MoveCursor(0, 0)
	bench.SetShown(s.found, len(rows) > 0)
	bench.SetShown(s.nothing, len(rows) == 0)
	s.results.Show()
}

func (s *search) move(rows int) {
	row, column := s.found.Cursor()
	s.found.MoveCursor(row+rows, column)
}

// addChosen copies the chosen food into the trip. The keyboard stays for the
// next one.
func (s *search) addChosen() {
	entry, ok := s.found.Selected()
	if !ok || !s.results.Visible() {
		return
	}
	id, err := s.screen.addFromLibrary(entry)
	if err != nil {
		return
	}
	s.close()
	s.screen.selectFood(id)
}

func (s *search) close() {
	s.entry.SetText("")
	s.results.Hide()
}

// searchEntry is an entry whose arrows choose among what was found.
type searchEntry struct {
	widget.Entry
	moved func(rows int)
	left  func()
	table func() // a table was pasted
}

func newSearchEntry() *searchEntry {
	e := &searchEntry{}
	e.ExtendBaseWidget(e)
	return e
}

// TypedShortcut takes a table that a spreadsheet copied to the foods: nobody
// searches for several cells.
func (e *searchEntry) TypedShortcut(shortcut fyne.Shortcut) {
	if paste, ok := shortcut.(*fyne.ShortcutPaste); ok && strings.ContainsRune(paste.Clipboard.Content(), '\t') {
		e.table()
		return
	}
	e.Entry.TypedShortcut(shortcut)
}

// TypedKey chooses with the arrows and leaves with Escape.
func (e *searchEntry) TypedKey(event *fyne.KeyEvent) {
	switch event.Name {
	case fyne.KeyDown:
		e.moved(1)
	case fyne.KeyUp:
		e.moved(-1)
	case fyne.KeyPageDown:
		e.moved(7)
	case fyne.KeyPageUp:
		e.moved(-7)
	case fyne.KeyEscape:
		e.left()
	default:
		e.Entry.TypedKey(event)
	}
}

func shelfDays(days float64) string {
	whole := int(math.Round(days))
	return written.Counted(whole, prose.Say("1 day"), prose.Say("%d days", whole))
}
