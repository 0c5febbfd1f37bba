package grid

import (
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"pgregory.net/rapid"

	"sumpter/app/look"
)

// walker is a row for the tests.
type walker struct {
	name string
	kilo int
	kind string
}

// bench is a table of walkers in a window, with what it told.
type bench struct {
	*Grid[string]
	window   fyne.Window
	walkers  map[string]*walker
	order    []string
	problem  string
	selected string
}

func newBench(t *testing.T) *bench {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light})
	b := &bench{walkers: map[string]*walker{}}
	for i, name := range []string{"Zoe", "Adam", "Mia"} {
		b.walkers[name] = &walker{name: name, kilo: 60 + 10*i, kind: "adult"}
		b.order = append(b.order, name)
	}
	b.Grid = New([]Column[string]{
		{Title: "Name", Width: 160, Text: func(k string) string { return k }},
		{
			Title: "Body", Unit: "kg", Width: 90, Right: true,
			Text:    func(k string) string { return strconv.Itoa(b.walkers[k].kilo) },
			Compare: func(x, y string) int { return b.walkers[x].kilo - b.walkers[y].kilo },
			Set: func(k, text string) error {
				n, err := strconv.Atoi(text)
				if err != nil {
					return fmt.Errorf("%q is not a number of kg", text)
				}
				b.walkers[k].kilo = n
				return nil
			},
		},
		{
			Title: "Kind", Width: 120, Text: func(k string) string { return b.walkers[k].kind },
			Choices: func(string) []string { return []string{"adult", "teenager"} },
			Set: func(k, text string) error {
				if text != "adult" && text != "teenager" {
					return errors.New("adult or teenager")
				}
				b.walkers[k].kind = text
				return nil
			},
		},
	}, Options[string]{
		Key:       func(k string) string { return k },
		OnProblem: func(text string) { b.problem = text },
		OnSelect:  func(k string) { b.selected = k },
		OnAdd: func() (string, error) {
			name := "New " + strconv.Itoa(len(b.order))
			b.walkers[name] = &walker{name: name, kind: "adult"}
			b.order = append(b.order, name)
			b.SetRows(b.order)
			return name, nil
		},
		OnDelete: func(k string) error {
			b.order = slices.DeleteFunc(slices.Clone(b.order), func(name string) bool { return name == k })
			b.SetRows(b.order)
			return nil
		},
		Clipboard: func() fyne.Clipboard { return fyne.CurrentApp().Clipboard() },
	})
	b.window = test.NewTempWindow(t, b.Grid)
	b.window.Resize(fyne.NewSize(420, 240))
	b.SetRows(b.order)
	b.Focus()
	return b
}

// key presses a key on whatever has the focus.
func (b *bench) key(names ...fyne.KeyName) {
	for _, name := range names {
		b.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: name})
	}
}

func (b *bench) typed(text string) {
	for _, letter := range text { // the window's driver tells the key before the letter
		b.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyName(strings.ToUpper(string(letter)))})
		b.window.Canvas().Focused().TypedRune(letter)
	}
}

func TestTypingAndReturnStoresAndGoesDown(t *testing.T) {
	b := newBench(t)
	b.key(fyne.KeyRight)
	b.typed("72")
	b.key(fyne.KeyReturn)
	if b.walkers["Zoe"].kilo != 72 {
		t.Errorf("Zoe has %d kg, typed 72; problem %q", b.walkers["Zoe"].kilo, b.problem)
	}
	if row, column := b.Cursor(); row != 1 || column != 1 {
		t.Errorf("the cursor is at %d,%d", row, column)
	}
	b.key(fyne.KeyF2, fyne.KeyBackspace)
	b.typed("9")
	b.key(fyne.KeyTab)
	if b.walkers["Adam"].kilo != 79 {
		t.Errorf("Adam has %d kg: F2 keeps what was there, want 79", b.walkers["Adam"].kilo)
	}
	if _, column := b.Cursor(); column != 2 {
		t.Errorf("Tab goes to the next column, the cursor is in %d", column)
	}
}

func TestADoubleTapEditsTheCellUnderIt(t *testing.T) {
	b := newBench(t)
	double := func(row, column int) {
		for c, id := range b.cells {
			if id.Row == row && id.Col == column {
				at := fyne.CurrentApp().Driver().AbsolutePositionForObject(c).Subtract(fyne.CurrentApp().Driver().AbsolutePositionForObject(b.table))
				b.doubleTap(at.AddXY(9, 9))
				return
			}
		}
		t.Fatalf("no cell %d,%d", row, column)
	}
	double(1, 1)
	if row, column := b.Cursor(); row != 1 || column != 1 || !b.editor.open() {
		t.Fatalf("the cursor is at %d,%d, the editor open: %v", row, column, b.editor.open())
	}
	b.key(fyne.KeyBackspace, fyne.KeyBackspace, fyne.KeyBackspace)
	b.typed("heavy")
	double(0, 1)
	if row, _ := b.Cursor(); row != 1 || b.editor.Text != "heavy" {
		t.Errorf("a text without meaning is left behind: row %d, text %q", row, b.editor.Text)
	}
	b.key(fyne.KeyEscape)
	b.window.Resize(fyne.NewSize(420, 700))
	b.doubleTap(fyne.NewPos(30, 680))
	if b.editor.open() {
		t.Error("a double tap below the rows edits a cell")
	}
}

func TestTheKeyboardSortsByTheColumnOfTheCursor(t *testing.T) {
	b := newBench(t)
	b.MoveCursor(0, 1)
	byKeys, ok := b.window.Canvas().Focused().(interface{ SortByCursor() })
	if !ok {
		t.Fatalf("the keyboard is at %T, which sorts nothing", b.window.Canvas().Focused())
	}
	byKeys.SortByCursor()
	for i, key := range b.Rows()[1:] {
		if b.walkers[key].kilo < b.walkers[b.Rows()[i]].kilo {
			t.Errorf("the rows are %v", b.Rows())
		}
	}
}

func TestAnUnchangedCellIsNotStoredAgain(t *testing.T) {
	b := newBench(t)
	stored := 0
	set := b.columns[1].Set
	b.columns[1].Set = func(k, text string) error { stored++; return set(k, text) }
	b.key(fyne.KeyRight, fyne.KeyF2, fyne.KeyReturn)
	if row, _ := b.Cursor(); stored != 0 || row != 1 || b.editor.open() {
		t.Errorf("stored %d times, cursor in row %d, editor open %v", stored, row, b.editor.open())
	}
}

func TestEscapeKeepsTheOldValue(t *testing.T) {
	b := newBench(t)
	b.key(fyne.KeyRight)
	b.typed("99")
	b.key(fyne.KeyEscape)
	if b.walkers["Zoe"].kilo != 60 || b.editor.open() {
		t.Errorf("Zoe has %d kg, editor open %v", b.walkers["Zoe"].kilo, b.editor.open())
	}
	if b.window.Canvas().Focused() != b.table {
		t.Error("the table does not have the keyboard back")
	}
}

func TestWhatCannotBeStoredStaysInTheEditor(t *testing.T) {
	b := newBench(t)
	b.key(fyne.KeyRight)
	b.typed("heavy")
	b.key(fyne.KeyReturn)
	if !b.editor.open() || b.problem == "" || b.walkers["Zoe"].kilo != 60 {
		t.Errorf("open %v, problem %q", b.editor.open(), b.problem)
	}
	if b.Commit() {
		t.Error("leaving must be refused while the cell has no meaning")
	}
}

func TestChoicesAreCompleted(t *testing.T) {
	b := newBench(t)
	b.key(fyne.KeyEnd)
	b.typed("t")
	b.key(fyne.KeyReturn)
	if b.walkers["Zoe"].kind != "teenager" {
		t.Errorf("typed t, got %q (%s)", b.walkers["Zoe"].kind, b.problem)
	}
}

func TestSortingByTheHead(t *testing.T) {
	b := newBench(t)
	want := [][]string{{"Adam", "Mia", "Zoe"}, {"Zoe", "Mia", "Adam"}, {"Zoe", "Adam", "Mia"}}
	for i, order := range want {
		tapHead(t, b, "Name")
		if !slices.Equal(b.Rows(), order) {
			t.Errorf("tap %d gives %v, want %v", i+1, b.Rows(), order)
		}
	}
	tapHead(t, b, "Body")
	if row, _ := b.Selected(); row != "Zoe" {
		t.Errorf("sorting moved the cursor to %s", row)
	}
}

// tapHead taps the head that shows a title.
func tapHead(t *testing.T, b *bench, title string) {
	t.Helper()
	for _, object := range test.LaidOutObjects(b.window.Content()) {
		if h, ok := object.(*header); ok && h.title == title && h.Visible() {
			test.Tap(h)
			return
		}
	}
	t.Fatalf("there is no head %q", title)
}

func TestTapMovesTheCursorAndTellsTheRow(t *testing.T) {
	b := newBench(t)
	for object, id := range b.cells {
		if id.Row == 2 && id.Col == 1 {
			at := fyne.CurrentApp().Driver().AbsolutePositionForObject(object)
			test.TapCanvas(b.window.Canvas(), at.AddXY(10, 10))
		}
	}
	if b.selected != "Mia" {
		t.Errorf("tapped Mia, told %q", b.selected)
	}
	if row, column := b.Cursor(); row != 2 || column != 1 {
		t.Errorf("the cursor is at %d,%d", row, column)
	}
}

func TestFilterNeedsEveryWord(t *testing.T) {
	b := newBench(t)
	b.MoveCursor(1, 1)
	b.Filter("adult 70")
	if !slices.Equal(b.Rows(), []string{"Adam"}) {
		t.Errorf("got %v", b.Rows())
	}
	if b.selected != "Adam" {
		t.Errorf("the cursor is on Adam now, and %q was told", b.selected)
	}
	b.MoveCursor(0, 0)
	b.Filter("")
	if len(b.Rows()) != 3 {
		t.Errorf("no filter shows %v", b.Rows())
	}
}

func TestPasteFillsCellsAndAddsRows(t *testing.T) {
	b := newBench(t)
	b.MoveCursor(1, 1)
	fyne.CurrentApp().Clipboard().SetContent("81\tteenager\r\n82\tadult\r\n83\tteenager\r\n")
	b.table.TypedShortcut(&fyne.ShortcutPaste{})
	got := fmt.Sprint(*b.walkers["Adam"], *b.walkers["Mia"], *b.walkers["New 3"], *b.walkers["Zoe"])
	if want := "{Adam 81 teenager} {Mia 82 adult} {New 3 83 teenager} {Zoe 60 adult}"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestCopyIsWhatASpreadsheetReads(t *testing.T) {
	b := newBench(t)
	b.table.TypedShortcut(&fyne.ShortcutCopy{})
	want := "Name\tBody (kg)\tKind\nZoe\t60\tadult\nAdam\t70\tadult\nMia\t80\tadult\n"
	if got := fyne.CurrentApp().Clipboard().Content(); got != want {
		t.Errorf("got %q", got)
	}
	if got := plainCell("=HYPERLINK(1)"); got != "'=HYPERLINK(1)" {
		t.Errorf("a formula is copied as %q", got)
	}
	if got := plainCell("-4.5"); got != "-4.5" {
		t.Errorf("a number is copied as %q", got)
	}
}

func TestAddAndDeleteRows(t *testing.T) {
	b := newBench(t)
	b.key(fyne.KeyInsert)
	if row, _ := b.Selected(); row != "New 3" {
		t.Errorf("the cursor is on %s", row)
	}
	b.Delete()
	if len(b.Rows()) != 3 {
		t.Errorf("rows %v", b.Rows())
	}
}

func TestClickingElsewhereStores(t *testing.T) {
	b := newBench(t)
	b.key(fyne.KeyRight)
	b.typed("65")
	b.moveTo(b.cursor)
	if b.walkers["Zoe"].kilo != 65 {
		t.Errorf("Zoe has %d kg", b.walkers["Zoe"].kilo)
	}
}

func TestShiftTabGoesBack(t *testing.T) {
	b := newBench(t)
	b.MoveCursor(0, 2)
	b.typed("adult")
	b.editor.KeyDown(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	b.key(fyne.KeyTab)
	b.editor.KeyUp(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	if _, column := b.Cursor(); column != 1 {
		t.Errorf("the cursor is in column %d", column)
	}
}

func TestLongTextIsCut(t *testing.T) {
	b := newBench(t)
	b.walkers["Zoe"].kind = "a kind so long that it never fits into its column"
	b.SetRows(b.order)
	for object, id := range b.cells {
		if id.Row == 0 && id.Col == 2 {
			shown := object.text.Text
			if shown == b.walkers["Zoe"].kind || fyne.MeasureText(shown, object.text.TextSize, object.text.TextStyle).Width > object.Size().Width-2*cellInset {
				t.Errorf("shown %q", shown)
			}
			return
		}
	}
	t.Fatal("the cell is not on the screen")
}

func BenchmarkScroll(b *testing.B) {
	test.NewApp().Settings().SetTheme(look.Theme{Variant: look.Light})
	keys := make([]string, 5000)
	for i := range keys {
		keys[i] = strconv.Itoa(i)
	}
	var columns []Column[string]
	for range 21 {
		columns = append(columns, Column[string]{Title: "T", Width: 60, Text: func(k string) string { return k }})
	}
	g := New(columns, Options[string]{Key: func(k string) string { return k }})
	window := test.NewWindow(g)
	defer window.Close()
	window.Resize(fyne.NewSize(1300, 800))
	g.SetRows(keys)
	b.ResetTimer()
	for i := range b.N {
		g.table.ScrollToOffset(fyne.NewPos(0, float32(i%4000)*28))
	}
}

func TestChoicesAreOfferedWhileTyping(t *testing.T) {
	b := newBench(t)
	b.key(fyne.KeyRight, fyne.KeyRight, fyne.KeyReturn)
	if !b.offers.Visible() || len(b.offers.matching) != 2 || b.offers.pick("x") != "adult" {
		t.Fatalf("Return offers %v, chosen %d", b.offers.matching, b.offers.chosen)
	}
	b.key(fyne.KeyDown, fyne.KeyReturn)
	if b.walkers["Zoe"].kind != "teenager" || b.offers.Visible() {
		t.Errorf("Zoe is %q, offers open %v", b.walkers["Zoe"].kind, b.offers.Visible())
	}
	b.MoveCursor(1, 2)
	b.typed("ager") // within the word
	if want := []string{"teenager"}; !slices.Equal(b.offers.matching, want) {
		t.Errorf("typing ager offers %v", b.offers.matching)
	}
	b.key(fyne.KeyTab)
	if b.walkers["Adam"].kind != "teenager" {
		t.Errorf("Adam is %q; problem %q", b.walkers["Adam"].kind, b.problem)
	}
	b.MoveCursor(1, 2)
	b.key(fyne.KeyReturn)
	b.offers.Tapped(&fyne.PointEvent{Position: fyne.NewPos(10, 10)})
	if b.walkers["Adam"].kind != "adult" {
		t.Errorf("tapping the first offer makes Adam %q", b.walkers["Adam"].kind)
	}
}

func TestMatchingPutsBeginningsFirst(t *testing.T) {
	got := matching("pea", []string{"Split peas", "chickpeas", "Peanut butter", "Rice"})
	if want := []string{"Peanut butter", "Split peas", "chickpeas"}; !slices.Equal(got, want) {
		t.Errorf("have %v, want %v", got, want)
	}
}

func TestSpaceTicksTheRowInsteadOfTyping(t *testing.T) {
	b := newBench(t)
	var ticked []string
	b.options.OnTick = func(k string) { ticked = append(ticked, k) }
	b.MoveCursor(1, 1)
	b.table.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	b.table.TypedRune(' ')
	if !slices.Equal(ticked, []string{"Adam"}) || b.editor.open() {
		t.Errorf("ticked %v, editing %v", ticked, b.editor.open())
	}
	if row, _ := b.Cursor(); row != 1 {
		t.Errorf("Space moved the cursor to row %d", row)
	}
}

func TestGroupsStayTogetherWhateverIsSorted(t *testing.T) {
	b := newBench(t)
	b.options.Group = func(k string) int {
		if k == "Mia" {
			return 0
		}
		return 1
	}
	for range 3 {
		b.SortBy(0)
		if got := b.Rows(); len(got) != 3 || b.sortBy == 0 && got[0] != "Mia" {
			t.Errorf("sorted %v", got)
		}
	}
	b.SortBy(0)
	b.SortBy(0)
	if got := b.Rows(); !slices.Equal(got, []string{"Mia", "Zoe", "Adam"}) {
		t.Errorf("falling by name within groups: %v", got)
	}
}

// Going back from the last column, the first one that is not sticky must come
// into view again, or what is typed there is lost.
func TestTheFirstFreeColumnComesBackIntoView(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light})
	stored := ""
	var columns []Column[int]
	for i := range 8 {
		columns = append(columns, Column[int]{Title: strconv.Itoa(i), Width: 100, Text: func(int) string { return "" }, Set: func(_ int, text string) error {
			stored = strconv.Itoa(i) + " " + text
			return nil
		}})
	}
	g := New(columns, Options[int]{Key: strconv.Itoa, Sticky: 1})
	window := test.NewTempWindow(t, g)
	window.Resize(fyne.NewSize(320, 200))
	g.SetRows([]int{0, 1})
	g.Focus()
	for _, column := range []int{7, 1, 6, 2, 0, 5, 1} {
		g.MoveCursor(0, column)
		window.Canvas().Focused().TypedRune('x')
		window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
		if want := strconv.Itoa(column) + " x"; stored != want {
			t.Errorf("typed in column %d, stored %q", column, stored)
		}
	}
}

// A table with heads finds its columns by them, and its rows by the first.
func TestPasteGoesByHeads(t *testing.T) {
	b := newBench(t)
	b.MoveCursor(2, 0)
	b.Paste("Kind\tShoe\tBody (lb)\tname\nteenager\t38\t1\tAdam\nadult\t40\t2\tZoe\n")
	if b.walkers["Adam"].kilo != 70 || !strings.Contains(b.problem, "lb") {
		t.Errorf("a unit that the table does not know was lost: %+v; said %q", *b.walkers["Adam"], b.problem)
	}
	b.Paste("Kind\tShoe\tBody (kg)\tname\nteenager\t38\t51\tAdam\nadult\t40\t52\tZoe\n")
	if got := fmt.Sprint(*b.walkers["Adam"], *b.walkers["Mia"], *b.walkers["Zoe"]); got != "{Adam 51 teenager} {Mia 80 adult} {Zoe 52 adult}" {
		t.Errorf("got %s", got)
	}
	if !strings.Contains(b.problem, "Shoe") || strings.Contains(b.problem, "Kind") {
		t.Errorf("said %q of a column that has no place", b.problem)
	}
	b.Paste("Name\tBody\nNew 9\t44\n")
	if len(b.order) != 4 || b.walkers["New 3"].kilo != 44 {
		t.Errorf("a name that is not there gave %v", b.order)
	}
}

// What is copied can be pasted back: nothing changes.
func TestCopyPastesBack(t *testing.T) {
	b := newBench(t)
	b.SortBy(1)
	b.Paste(b.Copy())
	if got := fmt.Sprint(b.order, *b.walkers["Zoe"], *b.walkers["Adam"], *b.walkers["Mia"]); got != "[Zoe Adam Mia] {Zoe 60 adult} {Adam 70 adult} {Mia 80 adult}" || b.problem != "" {
		t.Errorf("got %s; said %q", got, b.problem)
	}
}

func TestPasteSaysWhatIsBeyond(t *testing.T) {
	b := newBench(t)
	b.MoveCursor(0, 1)
	b.Paste("61\tadult\t7\t8")
	if b.walkers["Zoe"].kilo != 61 || !strings.Contains(b.problem, "the table ends there: 2") {
		t.Errorf("%+v; said %q", *b.walkers["Zoe"], b.problem)
	}
}

func TestPastedLines(t *testing.T) {
	for _, c := range []struct {
		text string
		want [][]string
	}{
		{"", nil},
		{"a\tb\r\nc\t\r\n", [][]string{{"a", "b"}, {"c", ""}}},
		{"a\n\nb\n", [][]string{{"a"}, {""}, {"b"}}},
		{"\"two\nlines\t\"\"so\"\"\"\tx", [][]string{{`two lines "so"`, "x"}}},
		{"\"odd\" quote\t5'10\"", [][]string{{`"odd" quote`, `5'10"`}}},
		{"'=1+1\t'tis", [][]string{{"=1+1", "'tis"}}},
	} {
		if got := pastedLines(c.text); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

// Every column is seen whole once the cursor is in it, whatever the widths.
func TestTheColumnOfTheCursorIsSeenWhole(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light})
	rapid.Check(t, func(t *rapid.T) {
		sticky := rapid.IntRange(0, 2).Draw(t, "sticky")
		var columns []Column[int]
		for i := range rapid.IntRange(3, 16).Draw(t, "columns") {
			columns = append(columns, Column[int]{Title: "C", Width: float32(rapid.IntRange(40, 200).Draw(t, fmt.Sprint("width ", i))), Text: strconv.Itoa})
		}
		g := New(columns, Options[int]{Key: strconv.Itoa, Sticky: sticky})
		w := test.NewWindow(g)
		defer w.Close()
		w.SetPadded(false)
		w.Resize(fyne.NewSize(700, 240))
		g.SetRows([]int{1, 2, 3})
		for range 12 {
			column := rapid.IntRange(0, len(columns)-1).Draw(t, "to")
			g.MoveCursor(0, column)
			left := float32(0)
			if column >= sticky {
				left = g.startOf(sticky)
			}
			var places []float32
			whole := false
			for c, id := range g.cells { // some are put by and keep their last place
				if id.Row == 0 && id.Col == column {
					x := fyne.CurrentApp().Driver().AbsolutePositionForObject(c).X
					places = append(places, x)
					whole = whole || x > left-4 && x+c.Size().Width < 700+1 // the test driver draws some to the left
				}
			}
			if !whole {
				t.Fatalf("column %d lies at %v, seen is %.0f to 700", column, places, left)
			}
		}
	})
}

// Where there is room, no text is cut; without, columns stay as they are.
func TestColumnsTakeTheRoomThereIs(t *testing.T) {
	b := newBench(t)
	b.walkers["Mia"].kind = "a teenager who walks with her elder sister"
	b.SetRows(b.order)
	if got := b.widths[2]; got != 120 {
		t.Errorf("in a narrow window the column has %.0f", got)
	}
	b.window.Resize(fyne.NewSize(900, 240))
	if need := measure(b.walkers["Mia"].kind, theme.TextSize(), false); b.widths[2] < need || b.startOf(3) > 900 {
		t.Errorf("the column has %.0f, its text needs %.0f", b.widths[2], need)
	}
	if b.widths[1] != 90 {
		t.Errorf("the column of numbers has %.0f", b.widths[1])
	}
}
