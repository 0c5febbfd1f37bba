package printing

import (
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/prints"
)

type shown struct {
	*benchtest.Desk
	*Screen
}

func open(t *testing.T) *shown {
	t.Helper()
	desk := benchtest.New(t, benchtest.DemoDays(2))
	s := &shown{desk, New(desk.Bench)}
	desk.Show(s.Screen, 1100, 720)
	return s
}

func TestThePreviewShowsThePagesOfAPaper(t *testing.T) {
	s := open(t)
	for _, kind := range prints.Kinds() {
		if !prints.Has(s.Document.Plan(), kind) {
			continue
		}
		s.ShowPaper(string(kind))
		if len(s.preview.pages) == 0 || s.preview.sheet.image.Image == nil || !s.preview.sheet.image.Visible() {
			t.Errorf("%s shows %d pages; it says %q", kind, len(s.preview.pages), s.preview.message.Content)
		}
	}
}

func TestTurningPages(t *testing.T) {
	s := open(t)
	s.ShowPaper(string(prints.Labels))
	s.Do("The next page")
	if s.preview.at != 1 || s.preview.number.Text != "2" || !strings.HasPrefix(s.preview.count.Content, "of ") {
		t.Errorf("at page %d, which says %q %q", s.preview.at, s.preview.number.Text, s.preview.count.Content)
	}
	s.Do("The page before")
	s.Do("The page before")
	if s.preview.at != 0 {
		t.Errorf("at page %d", s.preview.at)
	}
}

func TestTypingTheNumberOfAPage(t *testing.T) {
	s := open(t)
	s.ShowPaper(string(prints.Labels))
	last := len(s.preview.pages)
	if last < 3 {
		t.Fatalf("only %d pages", last)
	}
	for _, c := range []struct {
		typed string
		want  int
	}{{"3", 3}, {" 2 ", 2}, {"999", last}, {"x", last}, {"0", 1}, {"", 1}} {
		s.Window.Canvas().Focus(s.preview.number)
		s.Overwrite(c.typed)
		s.Press(fyne.KeyReturn)
		if s.preview.at != c.want-1 || s.preview.number.Text != strconv.Itoa(c.want) {
			t.Errorf("typing %q shows page %d and says %q, want %d", c.typed, s.preview.at+1, s.preview.number.Text, c.want)
		}
	}
}

// later keeps background work until it is asked for, as a long paper would.
// While a work runs, meanwhile is what happens at the screen.
type later struct {
	work      []func()
	meanwhile func()
}

func (l *later) Background(work func()) { l.work = append(l.work, work) }
func (l *later) AfterFrame(f func())    { f() }

func (l *later) Screen(f func()) {
	f()
	if l.meanwhile != nil {
		l.meanwhile()
	}
}

func (l *later) run() {
	for len(l.work) > 0 {
		work := l.work[0]
		l.work = l.work[1:]
		work()
	}
}

// A trip of some 3,000 bags: the screen goes on while their labels are drawn,
// and what is not wanted any more is not drawn to the end.
func TestALongPaperBlocksNothingAndIsGivenUp(t *testing.T) {
	slow := &later{}
	desk := benchtest.NewWith(t, triptest.Large(60, 21, 3), slow)
	s := &shown{desk, New(desk.Bench)}
	desk.Show(s.Screen, 1100, 720)
	slow.run()
	if bags := len(s.Document.Plan().Bags.Bags); bags < 2500 {
		t.Fatalf("only %d bags", bags)
	}
	s.ShowPaper(string(prints.Labels))
	labels := slow.work
	slow.work = nil
	s.ShowPaper(string(prints.Overview)) // the screen is free
	slow.run()
	if len(s.preview.pages) != 1 {
		t.Fatalf("the overview shows %d pages", len(s.preview.pages))
	}
	slow.work = labels
	slow.run()
	if len(s.preview.pages) != 1 {
		t.Errorf("the labels come after all, with %d pages", len(s.preview.pages))
	}
}

func TestStoppingWhatIsSaved(t *testing.T) {
	slow := &later{}
	desk := benchtest.NewWith(t, benchtest.DemoDays(2), slow)
	s := &shown{desk, New(desk.Bench)}
	desk.Show(s.Screen, 1100, 720)
	slow.run()
	folder := t.TempDir()
	s.SaveTo(folder)
	said := ""
	slow.meanwhile = func() {
		if s.saver.stop.Visible() && strings.Contains(s.saver.said.Content, "bag-labels") {
			said = s.saver.said.Content
			slow.meanwhile = nil
			test.Tap(s.saver.stop)
		}
	}
	slow.run()
	found, err := os.ReadDir(folder)
	if said == "" || err != nil || len(found) != 0 || s.saver.said.Content != "Stopped; nothing was written." || s.saver.stop.Visible() || s.saver.save.Disabled() {
		t.Errorf("stopped at %q: %v, %v; it says %q", said, found, err, s.saver.said.Content)
	}
}

func TestChoicesChangeThePages(t *testing.T) {
	s := open(t)
	s.ShowPaper(string(prints.Labels))
	all := len(s.preview.pages)
	s.choices.days.SetText("1")
	one := len(s.preview.pages)
	if one >= all {
		t.Errorf("labels of one day take %d pages, of all %d", one, all)
	}
	s.choices.days.SetText("1-9")
	if len(s.preview.pages) != 0 || !strings.Contains(s.preview.message.Content, "1-9") {
		t.Errorf("days that are not there: %d pages, %q", len(s.preview.pages), s.preview.message.Content)
	}
	s.choices.days.SetText("")
	s.choices.paper.SetSelected(press.Letter.Name)
	if got := s.preview.pages[0].Width; got != press.Letter.Width {
		t.Errorf("the page is %.0f wide on Letter", got)
	}
	s.choices.sheet.SetSelected("own sizes")
	s.choices.own.fields[2].SetText("10")
	if len(s.preview.pages) != 0 || !strings.Contains(s.preview.message.Content, "too small") {
		t.Errorf("labels of 10 mm: %d pages, %q", len(s.preview.pages), s.preview.message.Content)
	}
}

func TestOneMemberAlone(t *testing.T) {
	s := open(t)
	s.ShowPaper(string(prints.Cards))
	all := len(s.preview.pages)
	s.choices.members.pick(1, true)
	if got := len(s.preview.pages); got >= all || got == 0 {
		t.Errorf("one card takes %d pages, all %d", got, all)
	}
	if s.choices.members.button.Text != s.Bench.Trip().Crew[1].Name {
		t.Errorf("the button says %q", s.choices.members.button.Text)
	}
}

func TestOnlyWhatIsTickedIsSaved(t *testing.T) {
	s := open(t)
	s.Do("Tick nothing")
	folder := t.TempDir()
	s.SaveTo(folder)
	if found, _ := os.ReadDir(folder); len(found) != 0 || s.saver.said.Content == "" {
		t.Errorf("with nothing ticked: %d folders, %q", len(found), s.saver.said.Content)
	}
	at := slices.Index(prints.Kinds(), prints.Overview)
	s.list.ticks[at].check.SetChecked(true)
	s.SaveTo(folder)
	s.SaveTo(folder) // never over what is there
	for _, name := range []string{"desk papers", "desk papers 2"} {
		found, err := os.ReadDir(filepath.Join(folder, name, "print"))
		if err != nil || len(found) != 1 || found[0].Name() != "for-those-at-home.pdf" {
			t.Errorf("%s holds %v, %v; it says %q", name, found, err, s.saver.said.Content)
		}
	}
}

func TestReadDays(t *testing.T) {
	for text, want := range map[string][]int{"": nil, "all": nil, " 3 ": {3}, "1-3, 5": {1, 2, 3, 5}, "5;1–2": {1, 2, 5}, "2 2": {2}} {
		if got, err := readDays(text, 5); err != nil || !slices.Equal(got, want) {
			t.Errorf("%q is read as %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"0", "6", "3-1", "x", "1-9", "-1"} {
		if got, err := readDays(text, 5); err == nil {
			t.Errorf("%q is read as %v", text, got)
		}
	}
}

// A recipe's place shows its card alone, and all that are served can be had back.
func TestTheCardOfARecipe(t *testing.T) {
	s := open(t)
	s.ShowPaper(string(prints.Booklet))
	all := len(s.preview.pages)
	served := s.Document.Trip().Menu[0].Dishes[0].Recipe
	s.GoTo(findings.Place{Recipe: served})
	if options, problem := s.choices.options(); problem != "" || !slices.Equal(options.Recipes, []trip.RecipeID{served}) {
		t.Fatalf("chosen are %v; %s", options.Recipes, problem)
	}
	if name := s.Document.Trip().Recipe(served).Name; s.choices.recipes.button.Text != name || len(s.preview.pages) >= all {
		t.Errorf("%q is chosen and %d pages are shown of %d", s.choices.recipes.button.Text, len(s.preview.pages), all)
	}
	s.choices.recipes.pick(slices.Index(s.choices.recipes.picked, true), false)
	if len(s.preview.pages) != all {
		t.Errorf("%d pages, before %d", len(s.preview.pages), all)
	}
}

// What is for the rest of the way is offered once there is one, and shows what
// is carried from this morning on.
func TestPapersForTheRestOfTheWay(t *testing.T) {
	s := open(t)
	rows := s.list.ofTheWay
	if len(rows) != 2 || rows[0].Visible() || rows[1].Visible() {
		t.Fatalf("%d papers for the rest of the way are offered before the trip", len(rows))
	}
	if err := s.Document.Edit("leave", func(on *trip.Trip) error {
		on.Progress.CrewChanges = append(on.Progress.CrewChanges, trip.CrewChange{Member: on.Crew[2].ID, Day: 2})
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	for _, kind := range []prints.Kind{prints.RestCards, prints.RestBook} {
		s.ShowPaper(string(kind))
		if len(s.preview.pages) == 0 {
			t.Errorf("%s has no pages; it says %q", kind, s.preview.message.Content)
		}
	}
	if !rows[0].Visible() || !rows[1].Visible() {
		t.Error("the papers are not offered")
	}
}
