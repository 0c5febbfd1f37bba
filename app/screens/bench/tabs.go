package bench

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
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
	row      *tabRow
	content  *fyne.Container
	whole    *fyne.Container
}

// NewTabs shows the first of the items.
func NewTabs(items ...*container.TabItem) *Tabs {
	t := &Tabs{items: items, content: container.New(seen{})}
	words := make([]string, len(items))
	for i, item := range items {
		words[i] = item.Text
		SetShown(item.Content, i == 0)
		t.content.Objects = append(t.content.Objects, item.Content)
	}
	t.row = newTabRow(words, t.SelectIndex)
	// In this order, so that the Tab key comes to the row before the content.
	t.whole = container.New(layout.NewBorderLayout(t.row, nil, nil, nil), t.row, t.content)
	t.ExtendBaseWidget(t)
	return t
}

// CreateRenderer shows the row above the content.
func (t *Tabs) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(t.whole) }

// SelectIndex shows the item of a place, counted from 0.
func (t *Tabs) SelectIndex(place int) {
	if place < 0 || place >= len(t.items) || place == t.selected {
		return
	}
	t.items[t.selected].Content.Hide()
	t.selected = place
	t.items[place].Content.Show()
	t.content.Layout.Layout(t.content.Objects, t.content.Size())
	t.row.choose(place)
	if t.OnSelected != nil {
		t.OnSelected(t.items[place])
	}
}

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

// seen lays objects over each other as a stack does, but leaves alone what is
// hidden: the contents of tabs that nobody opens cost nothing.
type seen struct{}

// MinSize has room for each that is seen.
func (seen) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := fyne.Size{}
	for _, object := range objects {
		if object.Visible() {
			least = least.Max(object.MinSize())
		}
	}
	return least
}

// Layout gives each that is seen all the place.
func (seen) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, object := range objects {
		if object.Visible() {
			object.Move(fyne.NewPos(0, 0))
			object.Resize(size)
		}
	}
}
