package picture

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"sumpter/exporter/print/fonts"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/printtest"
	"sumpter/exporter/print/typeset"
)

func sample() *page.Page {
	set := typeset.New(fonts.Bundled())
	p := &page.Page{Width: 200, Height: 100}
	p.Add(page.Box{X: 10, Y: 10, Width: 60, Height: 30, Ink: page.Ink{R: 0x6b, G: 0x2f, B: 0x5f}})
	p.Add(page.Text{X: 14, Y: 32, Line: set.Line(20, typeset.Bold("3-07")), Ink: page.Ink{R: 255, G: 255, B: 255}})
	p.Add(page.Text{X: 80, Y: 40, Line: set.Line(14, typeset.Plain("Äpfel & Öl")), Ink: page.Ink{}})
	p.Add(page.Frame(10, 50, 100, 40, 3, page.Ink{})...)
	p.Add(page.Rule{X1: 120, Y1: 60, X2: 190, Y2: 60, Thick: 2, Dash: 5}, page.Shape{Corners: []page.Point{{X: 130, Y: 95}, {X: 150, Y: 65}, {X: 170, Y: 95}}})
	return p
}

func TestPixelsHaveTheInksOfTheMarks(t *testing.T) {
	img := New().Draw(sample(), 2)
	if img.Bounds() != image.Rect(0, 0, 400, 200) {
		t.Fatalf("the picture is %v", img.Bounds())
	}
	for _, want := range []struct {
		x, y int
		ink  color.RGBA
	}{
		{2, 2, color.RGBA{255, 255, 255, 255}},       // paper
		{130, 70, color.RGBA{0x6b, 0x2f, 0x5f, 255}}, // box
		{22, 120, color.RGBA{0, 0, 0, 255}},          // frame
		{40, 140, color.RGBA{255, 255, 255, 255}},    // in the frame
		{300, 180, color.RGBA{0, 0, 0, 255}},         // triangle
		{244, 120, color.RGBA{0, 0, 0, 255}},         // stroke of the dashed rule
		{255, 120, color.RGBA{255, 255, 255, 255}},   // its gap
	} {
		if got := img.RGBAAt(want.x, want.y); got != want.ink {
			t.Errorf("at %d,%d is %v, want %v", want.x, want.y, got, want.ink)
		}
	}
}

// What the screen shows is what the PDF prints, as poppler draws it.
func TestPictureIsWhatThePDFShows(t *testing.T) {
	program, err := exec.LookPath("pdftoppm")
	if err != nil {
		t.Skip("pdftoppm (poppler-utils) is missing: the picture is not compared with the PDF")
	}
	p := sample()
	folder := t.TempDir()
	file := filepath.Join(folder, "page.pdf")
	if err := os.WriteFile(file, printtest.Write(t, []page.Page{*p}), 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(program, "-r", "144", "-png", "-singlefile", file).Output()
	if err != nil {
		t.Fatal(err)
	}
	theirs, err := png.Decode(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	ours := New().Draw(p, 2)
	if ours.Bounds() != theirs.Bounds() {
		t.Fatalf("ours is %v, theirs %v", ours.Bounds(), theirs.Bounds())
	}
	var off float64
	for y := range ours.Bounds().Dy() {
		for x := range ours.Bounds().Dx() {
			a, b := color.GrayModel.Convert(ours.At(x, y)).(color.Gray), color.GrayModel.Convert(theirs.At(x, y)).(color.Gray)
			off += math.Abs(float64(a.Y)-float64(b.Y)) / 255
		}
	}
	// Smoothing of edges differs; a glyph in a wrong place would be ten times this.
	if share := off / float64(ours.Bounds().Dx()*ours.Bounds().Dy()); share > 0.01 {
		t.Errorf("the pictures differ by %.2f %% of full black", share*100)
	}
}

func TestHugePagesAreBounded(t *testing.T) {
	img := New().Draw(&page.Page{Width: 1e6, Height: 10}, 10)
	if img.Bounds().Dx() > largest {
		t.Errorf("the picture is %v", img.Bounds())
	}
}
