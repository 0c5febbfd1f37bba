package pdf_test

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"sumpter/exporter/print/fonts"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/pdf"
	"sumpter/exporter/print/printtest"
	"sumpter/exporter/print/typeset"
)

// sheet is a page of lines of text.
func sheet(shelf *fonts.Shelf, lines ...string) page.Page {
	set := typeset.New(shelf)
	p := page.Page{Width: 420, Height: 595}
	for i, line := range lines {
		p.Add(page.Text{X: 30, Y: page.Points(50 + 20*i), Line: set.Line(11, typeset.Plain(line))})
	}
	return p
}

func TestReadersFindTheText(t *testing.T) {
	lines := []string{"office, waffle & fjord", "AVATAR To Ty 3-07K", "Ωμέγα Привет Straße", "=1+1 (a\\b) <c> ../../etc", "Nguyễn e\u0301"}
	p := sheet(fonts.Bundled(), lines...)
	content := printtest.Write(t, []page.Page{p, p})
	text := printtest.Text(t, content)
	for _, line := range lines {
		if strings.Count(text, line) != 2 {
			t.Errorf("%q is not found on both pages of\n%s", line, text)
		}
	}
	if pages := printtest.Pages(t, content); pages != 2 {
		t.Errorf("%d pages", pages)
	}
	printtest.FontsEmbedded(t, content)
}

func TestReadersFindNamesOfOtherScripts(t *testing.T) {
	shelf := fonts.WithSystem()
	for script, name := range map[string]string{"Arabic": "محمد", "Hebrew": "שלום", "Han": "美咲", "Hiragana": "さくら"} {
		known := true
		for _, r := range name {
			_, ok := shelf.Pick(r, false)
			known = known && ok
		}
		if !known {
			t.Logf("no font of this system has %s: not checked", script)
			continue
		}
		content := printtest.Write(t, []page.Page{sheet(shelf, name)})
		if text := printtest.Text(t, content); !strings.Contains(text, name) {
			t.Errorf("%s: %q is not found in %q", script, name, text)
		}
		printtest.FontsEmbedded(t, content)
	}
}

func TestShapesAreDrawn(t *testing.T) {
	p := sheet(fonts.Bundled(), "x")
	p.Add(page.Box{X: 10, Y: 10, Width: 20, Height: 5, Ink: page.Ink{R: 200}})
	p.Add(page.Frame(10, 10, 50, 50, 1, page.Ink{})...)
	p.Add(page.Rule{X1: 1, Y1: 2, X2: 30, Y2: 2, Thick: 0.5, Dash: 2}, page.Shape{Corners: []page.Point{{X: 1, Y: 1}, {X: 5, Y: 1}, {X: 3, Y: 4}}})
	content := printtest.Write(t, []page.Page{p})
	if printtest.Pages(t, content) != 1 {
		t.Error("the page is not readable")
	}
}

func TestSamePagesSameBytes(t *testing.T) {
	first := printtest.Write(t, []page.Page{sheet(fonts.Bundled(), "Bag 3-07K", "Привет")})
	second := printtest.Write(t, []page.Page{sheet(fonts.Bundled(), "Bag 3-07K", "Привет")})
	if !bytes.Equal(first, second) {
		t.Error("the bytes differ")
	}
}

func TestNoPagesNoFile(t *testing.T) {
	var out bytes.Buffer
	if err := pdf.Write(context.Background(), &out, pdf.About{}, nil); err == nil || out.Len() > 0 {
		t.Errorf("error %v, %d bytes", err, out.Len())
	}
}

func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	var out bytes.Buffer
	if err := pdf.Write(ctx, &out, pdf.About{}, []page.Page{sheet(fonts.Bundled(), "x")}); err == nil || out.Len() > 0 {
		t.Errorf("error %v, %d bytes", err, out.Len())
	}
}
