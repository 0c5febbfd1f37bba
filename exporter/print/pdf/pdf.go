// Package pdf writes drawn pages as a PDF: text that can be searched and
// copied, with the used part of each font inside. The same pages give the same
// bytes; nothing in them tells when or where they were made.
package pdf

import (
	"context"
	"fmt"
	"io"

	"github.com/carlos7ags/folio/content"
	"github.com/carlos7ags/folio/core"
	"github.com/carlos7ags/folio/document"
	"github.com/carlos7ags/folio/font"

	"sumpter/exporter/print/fonts"
	"sumpter/exporter/print/page"
)

// About is what a reader program tells of a document.
type About struct {
	Title    string
	Language string // BCP 47: "en", "de"
}

// Write writes the pages. A document of no pages is refused, since no reader
// opens it.
func Write(ctx context.Context, w io.Writer, about About, pages []page.Page) error {
	if len(pages) == 0 {
		return fmt.Errorf("there is no page to write")
	}
	out := &writer{file: document.NewWriter("1.7"), fonts: map[*fonts.Font]*embedded{}}
	tree := core.NewPdfDictionary()
	root := out.file.AddObject(tree)
	drawn := make([]*core.PdfDictionary, len(pages))
	for i := range pages {
		if err := ctx.Err(); err != nil {
			return err
		}
		sheet, err := out.page(&pages[i], root)
		if err != nil {
			return err
		}
		drawn[i] = sheet
	}
	faces := out.embed()
	kids := core.NewPdfArray()
	for _, sheet := range drawn {
		resources := core.NewPdfDictionary()
		resources.Set("Font", faces)
		sheet.Set("Resources", resources)
		kids.Add(out.file.AddObject(sheet))
	}
	tree.Set("Type", core.NewPdfName("Pages"))
	tree.Set("Kids", kids)
	tree.Set("Count", core.NewPdfInteger(len(pages)))
	out.finish(about, root)
	_, err := out.file.WriteToWithOptions(w, document.WriteOptions{Deterministic: true, CompressionLevel: compression})
	return err
}

// compression is Flate's: the best one costs three times the time for 2 % of size.
const compression = 6

type writer struct {
	file  *document.Writer
	fonts map[*fonts.Font]*embedded
	order []*embedded
}

// embedded is a font of the document.
type embedded struct {
	name string
	font *font.EmbeddedFont
	face font.Face
	says map[uint16]rune // what each used glyph stands for
}

func (w *writer) finish(about About, pages *core.PdfIndirectReference) {
	catalog := core.NewPdfDictionary()
	catalog.Set("Type", core.NewPdfName("Catalog"))
	catalog.Set("Pages", pages)
	if about.Language != "" {
		catalog.Set("Lang", core.NewPdfTextString(about.Language))
	}
	preferences := core.NewPdfDictionary()
	preferences.Set("DisplayDocTitle", core.NewPdfBoolean(true))
	// A label sheet printed at 97 % misses its labels.
	preferences.Set("PrintScaling", core.NewPdfName("None"))
	catalog.Set("ViewerPreferences", preferences)
	w.file.SetRoot(w.file.AddObject(catalog))
	info := core.NewPdfDictionary()
	info.Set("Title", core.NewPdfTextString(about.Title))
	info.Set("Producer", core.NewPdfTextString("Sumpter"))
	w.file.SetInfo(w.file.AddObject(info))
}

func (w *writer) page(p *page.Page, parent *core.PdfIndirectReference) (*core.PdfDictionary, error) {
	stream := content.NewStream()
	for _, mark := range p.Marks {
		if err := w.draw(stream, p.Height, mark); err != nil {
			return nil, err
		}
	}
	sheet := core.NewPdfDictionary()
	sheet.Set("Type", core.NewPdfName("Page"))
	sheet.Set("Parent", parent)
	sheet.Set("MediaBox", core.NewPdfArray(core.NewPdfInteger(0), core.NewPdfInteger(0), core.NewPdfReal(float64(p.Width)), core.NewPdfReal(float64(p.Height))))
	sheet.Set("Contents", w.file.AddObject(stream.ToPdfStream()))
	return sheet, nil
}

// embed puts the used part of each font into the file.
func (w *writer) embed() *core.PdfDictionary {
	faces := core.NewPdfDictionary()
	for _, used := range w.order {
		faces.Set(used.name, w.file.AddObject(used.font.BuildObjects(w.file.AddObject)))
	}
	return faces
}

// fontOf gives the font of the document for a file.
func (w *writer) fontOf(file *fonts.Font) (*embedded, error) {
	if known := w.fonts[file]; known != nil {
		return known, nil
	}
	face, err := font.ParseFont(file.Data)
	if err != nil {
		return nil, fmt.Errorf("the font %s cannot be put into the PDF: %w", file.Name, err)
	}
	made := &embedded{name: fmt.Sprintf("F%d", len(w.order)+1), font: font.NewEmbeddedFont(face), face: face, says: map[uint16]rune{}}
	w.fonts[file] = made
	w.order = append(w.order, made)
	return made, nil
}
