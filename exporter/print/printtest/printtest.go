// Package printtest looks at printed papers through programs that are not ours
// (poppler's), and at the marks of a page.
package printtest

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"sumpter/exporter/print/page"
	"sumpter/exporter/print/pdf"
)

// Write writes pages as a PDF.
func Write(t *testing.T, pages []page.Page) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := pdf.Write(context.Background(), &out, pdf.About{Title: "Test", Language: "en"}, pages); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// Text gives what pdftotext reads, without the marks of direction it adds.
func Text(t *testing.T, content []byte) string {
	t.Helper()
	return strings.Map(func(r rune) rune {
		if r >= 0x202a && r <= 0x202e {
			return -1
		}
		return r
	}, poppler(t, content, "pdftotext", "-layout", "FILE", "-"))
}

// Words gives what pdftotext reads with every run of spaces and new lines as
// one space.
func Words(t *testing.T, content []byte) string {
	t.Helper()
	return strings.Join(strings.Fields(Text(t, content)), " ")
}

// Pages gives how many pages pdfinfo counts.
func Pages(t *testing.T, content []byte) int {
	t.Helper()
	found := regexp.MustCompile(`(?m)^Pages:\s+(\d+)$`).FindStringSubmatch(poppler(t, content, "pdfinfo", "FILE"))
	if found == nil {
		t.Fatal("pdfinfo counts no pages")
	}
	count, _ := strconv.Atoi(found[1])
	return count
}

// FontsEmbedded fails unless pdffonts says that every font is in the file, in
// part, and tells its letters.
func FontsEmbedded(t *testing.T, content []byte) {
	t.Helper()
	lines := strings.Split(strings.TrimSpace(poppler(t, content, "pdffonts", "FILE")), "\n")
	if len(lines) < 3 {
		t.Fatalf("pdffonts lists no fonts: %q", lines)
	}
	for _, line := range lines[2:] {
		if !regexp.MustCompile(`\syes yes yes\s`).MatchString(line) {
			t.Errorf("a font is not embedded in part with its letters: %s", line)
		}
	}
}

// poppler runs one of poppler's tools on a PDF; anything it complains of is a
// fault of the PDF.
func poppler(t *testing.T, content []byte, tool string, args ...string) string {
	t.Helper()
	program, err := exec.LookPath(tool)
	if err != nil {
		t.Skipf("%s (poppler-utils) is missing: PDFs are not checked by it", tool)
	}
	file := filepath.Join(t.TempDir(), "paper.pdf")
	if err := os.WriteFile(file, content, 0o644); err != nil {
		t.Fatal(err)
	}
	for i, arg := range args {
		if arg == "FILE" {
			args[i] = file
		}
	}
	command := exec.Command(program, args...)
	var complaint bytes.Buffer
	command.Stderr = &complaint
	out, err := command.Output()
	if err != nil || complaint.Len() > 0 {
		t.Fatalf("%s: %v %s", tool, err, complaint.String())
	}
	return string(out)
}

// Bounds gives the rectangle that a mark fills; a text reaches from its
// ascenders to its descenders.
func Bounds(mark page.Mark) (left, top, right, bottom page.Points) {
	switch mark := mark.(type) {
	case page.Text:
		return mark.X, mark.Y - mark.Line.Size*0.8, mark.X + mark.Line.Width, mark.Y + mark.Line.Size*0.25
	case page.Box:
		return mark.X, mark.Y, mark.X + mark.Width, mark.Y + mark.Height
	case page.Rule:
		return min(mark.X1, mark.X2), min(mark.Y1, mark.Y2), max(mark.X1, mark.X2), max(mark.Y1, mark.Y2)
	case page.Shape:
		left, top, right, bottom = mark.Corners[0].X, mark.Corners[0].Y, mark.Corners[0].X, mark.Corners[0].Y
		for _, corner := range mark.Corners {
			left, right, top, bottom = min(left, corner.X), max(right, corner.X), min(top, corner.Y), max(bottom, corner.Y)
		}
	}
	return left, top, right, bottom
}

// Off lists the marks that leave the page.
func Off(sheet *page.Page) []string {
	var list []string
	for _, mark := range sheet.Marks {
		if left, top, right, bottom := Bounds(mark); left < 0 || top < 0 || right > sheet.Width || bottom > sheet.Height {
			list = append(list, fmt.Sprintf("%s reaches (%.0f %.0f) to (%.0f %.0f), off the paper", Describe(mark), left, top, right, bottom))
		}
	}
	return list
}

// Over lists the lines of text that are drawn over another.
func Over(sheet *page.Page) []string {
	var texts []page.Text
	for _, mark := range sheet.Marks {
		if text, ok := mark.(page.Text); ok && text.Line.Width > 0 {
			texts = append(texts, text)
		}
	}
	var list []string
	for a := range texts {
		for b := range texts[:a] {
			if overlap(texts[a], texts[b]) {
				list = append(list, Describe(texts[a])+" lies over "+Describe(texts[b]))
			}
		}
	}
	return list
}

// Clean fails for pages with marks off the paper or text over text.
func Clean(t *testing.T, pages []page.Page) {
	t.Helper()
	for i := range pages {
		for _, fault := range append(Off(&pages[i]), Over(&pages[i])...) {
			t.Errorf("page %d: %s", i+1, fault)
		}
	}
}

// overlap compares the bands of the small letters: lines may be set tight.
func overlap(a, b page.Text) bool {
	const tolerance = 0.5
	return a.X+a.Line.Width > b.X+tolerance && b.X+b.Line.Width > a.X+tolerance &&
		a.Y > b.Y-b.Line.Size*0.5+tolerance && b.Y > a.Y-a.Line.Size*0.5+tolerance
}

// Describe says what a mark is, for the message of a test.
func Describe(mark page.Mark) string {
	switch mark := mark.(type) {
	case page.Text:
		return strconv.Quote(Says(mark))
	case page.Box:
		return "a box"
	case page.Rule:
		return "a rule"
	default:
		return "a shape"
	}
}

// Says gives the letters of a text in the order of the glyphs.
func Says(text page.Text) string {
	var said strings.Builder
	for _, run := range text.Line.Runs {
		for _, glyph := range run.Glyphs {
			said.WriteString(glyph.Says)
		}
	}
	return said.String()
}

// Texts lists what is said on a page, a line of text each.
func Texts(sheet *page.Page) []string {
	var list []string
	for _, mark := range sheet.Marks {
		if text, ok := mark.(page.Text); ok {
			list = append(list, Says(text))
		}
	}
	return list
}

// Inks lists the inks of a page.
func Inks(sheet *page.Page) []page.Ink {
	var list []page.Ink
	for _, mark := range sheet.Marks {
		switch mark := mark.(type) {
		case page.Text:
			list = append(list, mark.Ink)
		case page.Box:
			list = append(list, mark.Ink)
		case page.Rule:
			list = append(list, mark.Ink)
		case page.Shape:
			list = append(list, mark.Ink)
		}
	}
	return list
}
