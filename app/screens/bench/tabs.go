package bench

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// Tabs shows one of several contents, chosen among words in a row above it.
// The Tab key reaches the row, the arrows choose in it; the toolkit's own tabs
// are for the mouse alone.
type Tabs struct {
	widget.BaseWidget
	// OnSelected hears which one is shown now.
	OnSelected func(*container.TabItem)

	items    []*container.TabItem
	selected int
	looks    []tabLook // in which each content was last shown
	row      *tabRow
	content  *fyne.Container
	whole    *fyne.Container
}

// NewTabs shows the first of the items.
func NewTabs(items ...*container.TabItem) *Tabs {
	t := &Tabs{items: items, content: container.NewStack()}
	words := make([]string, len(items))
	for i, item := range items {
		words[i] = item.Text
	}
	t.looks = make([]tabLook, len(items))
	t.content.Objects = []fyne.CanvasObject{items[0].Content}
	t.row = newTabRow(words, t.SelectIndex)
	// In this order, so that the Tab key comes to the row before the content.
	t.whole = container.New(layout.NewBorderLayout(t.row, nil, nil, nil), t.row, t.content)
	t.ExtendBaseWidget(t)
	return t
}

// CreateRenderer shows the row above the content.
func (t *Tabs) CreateRenderer() fyne.WidgetRenderer {
	t.looks[t.selected] = lookNow()
	return widget.NewSimpleRenderer(t.whole)
}

// SelectIndex shows the item of a place, counted from 0.
func (t *Tabs) SelectIndex(place int) {
	if place < 0 || place >= len(t.items) || place == t.selected {
		return
	}
	t.items[t.selected].Content.Hide()
	t.selected = place
	t.showContent()
	t.row.choose(place)
	if t.OnSelected != nil {
		t.OnSelected(t.items[place])
	}
}

// showContent puts the chosen content where it is seen. The others are nowhere:
// neither laying out nor drawing the screen anew has to go through them.
func (t *Tabs) showContent() {
	content := t.items[t.selected].Content
	content.Show() // refreshes all of it, unless it is seen for the first time
	t.content.Objects = []fyne.CanvasObject{content}
	t.content.Layout.Layout(t.content.Objects, t.content.Size())
	now := lookNow()
	if before := t.looks[t.selected]; before != now && before != (tabLook{}) {
		content.Refresh()
	}
	t.looks[t.selected] = now
}

// tabLook is by which a change of the look is known.
type tabLook struct {
	ink  color.Color
	size float32
}

func lookNow() tabLook { return tabLook{theme.Color(look.Ink), theme.TextSize()} }

// Select shows an item.
func (t *Tabs) Select(item *container.TabItem) {
	for i := range t.items {
		if t.items[i] == item {
			t.SelectIndex(i)
		}
	}
}

// SelectedIndex is the place of the item that is shown.
func (t *Tabs) SelectedIndex() int { return t.selected }

// Selected is the item that is shown.
func (t *Tabs) Selected() *container.TabItem { return t.items[t.selected] }
