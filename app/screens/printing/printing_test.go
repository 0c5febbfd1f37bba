package printing

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"sumpter/app/screens/bench/benchtest"
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
			t.Errorf("%s shows %d pages; it says %q", kind, len(s.preview.pages), s.preview.message.Text)
		}
	}
}

func TestTurningPages(t *testing.T) {
	s := open(t)
	s.ShowPaper(string(prints.Labels))
	s.Do("The next page")
	if s.preview.at != 1 || !strings.HasPrefix(s.preview.count.Content, "2 of ") {
		t.Errorf("at page %d, which says %q", s.preview.at, s.preview.count.Content)
	}
	s.Do("The page before")
	s.Do("The page before")
	if s.preview.at != 0 {
		t.Errorf("at page %d", s.preview.at)
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
	if len(s.preview.pages) != 0 || !strings.Contains(s.preview.message.Text, "1-9") {
		t.Errorf("days that are not there: %d pages, %q", len(s.preview.pages), s.preview.message.Text)
	}
	s.choices.days.SetText("")
	s.choices.paper.SetSelected(press.Letter.Name)
	if got := s.preview.pages[0].Width; got != press.Letter.Width {
		t.Errorf("the page is %.0f wide on Letter", got)
	}
	s.choices.sheet.SetSelected("own sizes")
	s.choices.own.fields[2].SetText("10")
	if len(s.preview.pages) != 0 || !strings.Contains(s.preview.message.Text, "too small") {
		t.Errorf("labels of 10 mm: %d pages, %q", len(s.preview.pages), s.preview.message.Text)
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
	if found, _ := os.ReadDir(folder); len(found) != 0 || s.saver.said.Text == "" {
		t.Errorf("with nothing ticked: %d folders, %q", len(found), s.saver.said.Text)
	}
	at := slices.Index(prints.Kinds(), prints.Overview)
	s.list.ticks[at].check.SetChecked(true)
	s.SaveTo(folder)
	s.SaveTo(folder) // never over what is there
	for _, name := range []string{"desk papers", "desk papers 2"} {
		found, err := os.ReadDir(filepath.Join(folder, name, "print"))
		if err != nil || len(found) != 1 || found[0].Name() != "for-those-at-home.pdf" {
			t.Errorf("%s holds %v, %v; it says %q", name, found, err, s.saver.said.Text)
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
