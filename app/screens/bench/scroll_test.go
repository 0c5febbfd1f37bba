package bench

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

func TestALongTextIsReadWithTheKeyboard(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light})
	text := widget.NewLabel(strings.Repeat("line\n", 60))
	s, other := NewScroll(text), widget.NewEntry()
	window := test.NewTempWindow(t, container.NewBorder(nil, other, nil, nil, s))
	window.Resize(fyne.NewSize(200, 300))
	window.Canvas().FocusNext()
	if window.Canvas().Focused() != fyne.Focusable(s) || s.frame.StrokeWidth == 0 {
		t.Fatalf("Tab leads to %T", window.Canvas().Focused())
	}
	for _, c := range []struct {
		key  fyne.KeyName
		want func(before, now float32) bool
	}{
		{fyne.KeyDown, func(before, now float32) bool { return now > before }},
		{fyne.KeyPageDown, func(before, now float32) bool { return now > before+200 }},
		{fyne.KeyUp, func(before, now float32) bool { return now < before }},
		{fyne.KeyEnd, func(_, now float32) bool { return now == s.over() && now > 500 }},
		{fyne.KeyDown, func(_, now float32) bool { return now == s.over() }},
		{fyne.KeyPageUp, func(before, now float32) bool { return now < before-200 }},
		{fyne.KeyHome, func(_, now float32) bool { return now == 0 }},
		{fyne.KeyUp, func(_, now float32) bool { return now == 0 }},
	} {
		before := s.scroll.Offset.Y
		s.TypedKey(&fyne.KeyEvent{Name: c.key})
		if now := s.scroll.Offset.Y; !c.want(before, now) {
			t.Errorf("%s scrolls from %v to %v", c.key, before, now)
		}
	}
	window.Canvas().FocusNext()
	if s.frame.StrokeWidth != 0 {
		t.Error("the frame stays when the keyboard is elsewhere")
	}

	text.SetText("short")
	window.Canvas().Focus(other)
	window.Canvas().FocusNext()
	if window.Canvas().Focused() == fyne.Focusable(s) {
		t.Error("Tab stops where there is nothing to scroll")
	}
}

func TestAContentThatBecameShorterStaysInSight(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light})
	lines := container.NewVBox()
	for range 60 {
		lines.Add(widget.NewLabel("line"))
	}
	s := NewScroll(lines)
	window := test.NewTempWindow(t, s)
	window.Resize(fyne.NewSize(200, 300))
	s.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	for _, left := range []int{30, 2} {
		lines.Objects = lines.Objects[:left]
		test.WidgetRenderer(s.scroll).Layout(s.scroll.Size()) // as the window does when the least size has changed
		if now := s.scroll.Offset.Y; now != s.over() {
			t.Errorf("%d lines are shown from %v on, which is past %v", left, now, s.over())
		}
		if left == 30 && s.over() == 0 {
			t.Error("30 lines should need scrolling")
		}
	}
}
