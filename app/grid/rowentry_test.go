package grid

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// accepts tells whether Tab stays in what has the keyboard.
func (b *bench) accepts() bool {
	tabbable, ok := b.window.Canvas().Focused().(fyne.Tabbable)
	return ok && tabbable.AcceptsTab()
}

func TestTabGoesThroughTheCellsThatCanBeEdited(t *testing.T) {
	b := newBench(t)
	if b.accepts() {
		t.Error("nothing is typed yet, and Tab does not lead out of the table")
	}
	b.MoveCursor(0, 1)
	b.typed("72")
	b.key(fyne.KeyTab)
	b.typed("t")
	b.key(fyne.KeyTab)
	if row, column := b.Cursor(); row != 1 || column != 1 {
		t.Errorf("behind the last cell of a row comes the first that can be edited of the next; the cursor is at %d,%d", row, column)
	}
	if !b.accepts() {
		t.Fatal("while typing rows Tab leads out of the table")
	}
	b.key(fyne.KeyTab)
	b.typed("teen")
	b.key(fyne.KeyReturn)
	if row, column := b.Cursor(); row != 2 || column != 1 {
		t.Errorf("Return goes on below where the row began; the cursor is at %d,%d", row, column)
	}
	if b.walkers["Zoe"].kilo != 72 || b.walkers["Zoe"].kind != "teenager" || b.walkers["Adam"].kind != "teenager" || b.walkers["Adam"].kilo != 70 {
		t.Errorf("stored Zoe %+v, Adam %+v", b.walkers["Zoe"], b.walkers["Adam"])
	}
	if b.accepts() {
		t.Error("the row is finished, and Tab does not lead out of the table")
	}
}

func TestTabLeadsOutBehindTheLastCell(t *testing.T) {
	b := newBench(t)
	beside := widget.NewEntry()
	b.window.SetContent(container.NewBorder(nil, nil, nil, beside, b.Grid))
	b.Focus()
	b.MoveCursor(2, 1)
	b.typed("75")
	b.key(fyne.KeyTab, fyne.KeyTab)
	if b.window.Canvas().Focused() != beside {
		t.Errorf("the keyboard is at %T", b.window.Canvas().Focused())
	}
	b.Focus()
	b.MoveCursor(0, 2)
	b.typed("a")
	b.window.Canvas().Focused().(desktop.Keyable).KeyDown(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	b.key(fyne.KeyTab)
	if _, column := b.Cursor(); column != 1 {
		t.Errorf("Shift and Tab go back, the cursor is in column %d", column)
	}
}

func TestTypingWhereNothingCanBeTypedSaysSo(t *testing.T) {
	b := newBench(t)
	b.MoveCursor(0, 0)
	b.typed("x")
	if b.problem == "" || b.editor.open() {
		t.Errorf("said %q, the editor open: %v", b.problem, b.editor.open())
	}
}

func TestANewRowBeginsWhereItCanBeTyped(t *testing.T) {
	b := newBench(t)
	b.key(fyne.KeyInsert)
	if row, column := b.Cursor(); row != 3 || column != 1 {
		t.Errorf("the cursor is at %d,%d", row, column)
	}
	if !b.accepts() {
		t.Error("Tab leads out of a row that was just added")
	}
}

func TestFilteringAwayAnOpenEditLeavesTheKeyboard(t *testing.T) {
	b := newBench(t)
	find := widget.NewEntry()
	b.window.SetContent(container.NewBorder(find, nil, nil, nil, b.Grid))
	b.Focus()
	b.MoveCursor(0, 1)
	b.typed("heavy")
	b.window.Canvas().Focus(find)
	b.Filter("adam")
	if b.window.Canvas().Focused() != find || b.editor.open() {
		t.Errorf("the keyboard is at %T, the editor open: %v", b.window.Canvas().Focused(), b.editor.open())
	}
}

func TestPasteTakesOtherHeads(t *testing.T) {
	b := newBench(t)
	b.columns[1].Also = []string{"Weight"}
	b.Paste("Name\tweight (kg)\nAdam\t81\nZoe\t62\n")
	if b.walkers["Adam"].kilo != 81 || b.walkers["Zoe"].kilo != 62 || b.problem != "" {
		t.Errorf("pasted Adam %+v, Zoe %+v, said %q", b.walkers["Adam"], b.walkers["Zoe"], b.problem)
	}
}
