// Package fonts finds a font for every letter of a text: two bundled fonts for
// Latin, Greek and Cyrillic letters, and the system's own for all others.
//
// A font is used only if its glyphs are outlines that a PDF can carry in part
// and if its licence bits allow that. What no font can show is said by Pick,
// so that nobody prints an empty box unknowingly.
package fonts

import (
	"bytes"
	_ "embed"
	"sync"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/language"
)

// Font is one font file.
type Font struct {
	Name string     // for messages and the index of a document
	Data []byte     // the file; of a collection, the first font counts
	Read *font.Font // the same, read
}

//go:embed noto/NotoSans-Regular.ttf
var notoRegular []byte

//go:embed noto/NotoSans-Bold.ttf
var notoBold []byte

// bundled are the fonts that always are there, read once.
var bundled = sync.OnceValue(func() [2]*Font {
	return [2]*Font{mustRead("Noto Sans", notoRegular), mustRead("Noto Sans Bold", notoBold)}
})

func mustRead(name string, data []byte) *Font {
	read, err := font.ParseTTF(bytes.NewReader(data))
	if err != nil {
		panic("the bundled font " + name + " cannot be read: " + err.Error()) // a fault of the build
	}
	return &Font{Name: name, Data: data, Read: read.Font}
}

// Shelf hands out fonts and remembers which it chose, so that a script looks
// the same everywhere in a document. It is not safe for concurrent use.
type Shelf struct {
	search  func(letter rune, bold bool) (*Font, bool) // nil: only the bundled fonts
	letters map[letter]*Font                           // nil: no font has it
	scripts map[script]*Font                           // first chosen for the script
}

type letter struct {
	letter rune
	bold   bool
}

type script struct {
	script language.Script
	bold   bool
}

// Bundled gives a shelf of the bundled fonts alone: the same on every machine.
func Bundled() *Shelf { return newShelf(nil) }

// WithSystem gives a shelf that looks at the system's fonts for letters that
// the bundled ones lack. Looking takes seconds the first time on a machine.
func WithSystem() *Shelf { return newShelf(searchSystem) }

func newShelf(search func(rune, bool) (*Font, bool)) *Shelf {
	return &Shelf{search: search, letters: map[letter]*Font{}, scripts: map[script]*Font{}}
}

// Plain is the font for text that needs no other.
func (s *Shelf) Plain(bold bool) *Font {
	if bold {
		return bundled()[1]
	}
	return bundled()[0]
}

// Pick gives a font that has the letter; false if there is none.
func (s *Shelf) Pick(r rune, bold bool) (*Font, bool) {
	if plain := s.Plain(bold); plain.Has(r) {
		return plain, true
	}
	if s.search == nil {
		return nil, false
	}
	key := letter{r, bold}
	found, known := s.letters[key]
	if !known {
		found = s.look(r, bold)
		s.letters[key] = found
	}
	return found, found != nil
}

// look asks the font that the script has been set in so far, then the system.
func (s *Shelf) look(r rune, bold bool) *Font {
	of := script{language.LookupScript(r), bold}
	if before := s.scripts[of]; before != nil && before.Has(r) {
		return before
	}
	found, ok := s.search(r, bold)
	if !ok {
		return nil
	}
	if s.scripts[of] == nil {
		s.scripts[of] = found
	}
	return found
}

// Has tells whether the font has a glyph for the letter.
func (f *Font) Has(r rune) bool {
	_, ok := f.Read.NominalGlyph(r)
	return ok
}
