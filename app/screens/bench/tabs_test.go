package bench

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

func newThreeTabs(t *testing.T) (*Tabs, []*widget.Entry, fyne.Window, *[]string) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light})
	var entries []*widget.Entry
	var items []*container.TabItem
	for _, word := range []string{"One", "Second", "Third of them"} {
		entry := widget.NewEntry()
		entries = append(entries, entry)
		items = append(items, container.NewTabItem(word, entry))
	}
	tabs, heard := NewTabs(items...), []string{}
	tabs.OnSelected = func(item *container.TabItem) { heard = append(heard, item.Text) }
	window := test.NewTempWindow(t, tabs)
	window.Resize(fyne.NewSize(400, 200))
	return tabs, entries, window, &heard
}

func TestTabsAreReachedAndChosenByKeys(t *testing.T) {
	tabs, entries, window, heard := newThreeTabs(t)
	focused := func() fyne.Focusable { return window.Canvas().Focused() }
	window.Canvas().FocusNext()
	if focused() != fyne.Focusable(tabs.row) {
		t.Fatalf("Tab leads to %T", focused())
	}
	press := func(keys ...fyne.KeyName) {
		for _, key := range keys {
			focused().TypedKey(&fyne.KeyEvent{Name: key})
		}
	}
	press(fyne.KeyRight)
	if tabs.SelectedIndex() != 1 || entries[0].Visible() || !entries[1].Visible() {
		t.Errorf("Right shows place %d", tabs.SelectedIndex())
	}
	press(fyne.KeyRight, fyne.KeyRight, fyne.KeyRight)
	if tabs.SelectedIndex() != 2 {
		t.Errorf("at the end Right leads to %d", tabs.SelectedIndex())
	}
	press(fyne.KeyHome, fyne.KeyLeft)
	if tabs.SelectedIndex() != 0 {
		t.Errorf("Home leads to %d", tabs.SelectedIndex())
	}
	press(fyne.KeyEnd)
	window.Canvas().FocusNext()
	if focused() != fyne.Focusable(entries[2]) {
		t.Errorf("from the row Tab leads to %T, not into what is shown", focused())
	}
	if len(*heard) != 4 {
		t.Errorf("heard %v", *heard)
	}
}

func TestTabsAreTapped(t *testing.T) {
	tabs, _, window, _ := newThreeTabs(t)
	test.TapCanvas(window.Canvas(), fyne.NewPos(tabs.row.ends[0]+10, 15))
	if tabs.Selected().Text != "Second" {
		t.Errorf("a tap on the second shows %s", tabs.Selected().Text)
	}
	test.TapCanvas(window.Canvas(), fyne.NewPos(tabs.row.ends[2]+10, 15))
	if tabs.Selected().Text != "Second" {
		t.Errorf("a tap beside the words shows %s", tabs.Selected().Text)
	}
	tabs.Select(tabs.items[0])
	if tabs.SelectedIndex() != 0 {
		t.Error("Select shows another")
	}
}

// Choosing a word, which makes it bold, moves no other.
func TestTabsStayInTheirPlaces(t *testing.T) {
	tabs, _, _, _ := newThreeTabs(t)
	before := append([]float32(nil), tabs.row.ends...)
	tabs.SelectIndex(2)
	for i := range before {
		if tabs.row.ends[i] != before[i] {
			t.Errorf("word %d ended at %v, now at %v", i, before[i], tabs.row.ends[i])
		}
	}
	if least := tabs.row.MinSize().Width; before[2] < least {
		t.Errorf("the words take %v, the least is %v", before[2], least)
	}
}
