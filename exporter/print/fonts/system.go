package fonts

import (
	"bytes"
	"cmp"
	"io"
	"log"
	"os"
	"slices"
	"strings"
	"sync"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/font/opentype"
	"github.com/go-text/typesetting/fontscan"
)

// largestFile keeps a broken or hostile font file from filling the memory;
// collections of East Asian fonts have some 20 MB.
const largestFile = 64 << 20

// installed lists the system's fonts, found once for as long as the program
// runs. No fonts at all is not a fault: the bundled ones remain.
var installed = sync.OnceValue(func() []fontscan.Footprint {
	list, err := fontscan.SystemFonts(log.New(io.Discard, "", 0), "")
	if err != nil {
		return nil
	}
	return list
})

// opened keeps the system's fonts that were read; nil is one we cannot use.
var opened = struct {
	sync.Mutex
	fonts map[string]*Font
}{fonts: map[string]*Font{}}

// searchSystem gives the system's best font for a letter.
func searchSystem(r rune, bold bool) (*Font, bool) {
	var fit []*fontscan.Footprint
	list := installed()
	for i := range list {
		if footprint := &list[i]; footprint.Location.Index == 0 && footprint.Location.Instance == 0 && footprint.Runes.Contains(r) {
			fit = append(fit, footprint)
		}
	}
	slices.SortFunc(fit, func(a, b *fontscan.Footprint) int {
		return cmp.Or(cmp.Compare(penalty(a, bold), penalty(b, bold)), cmp.Compare(a.Family, b.Family), cmp.Compare(a.Location.File, b.Location.File))
	})
	for _, footprint := range fit {
		if found := open(footprint); found != nil && found.Has(r) {
			return found, true
		}
	}
	return nil, false
}

// penalty ranks fonts: those that go with the bundled sans first. Of a font
// that stands alone the regular weight is better than none.
func penalty(footprint *fontscan.Footprint, bold bool) int {
	points := 0
	if footprint.Aspect.Style > font.StyleNormal {
		points += 8
	}
	if strings.Contains(footprint.Family, "mono") || strings.Contains(footprint.Family, "condensed") {
		points += 4
	}
	if !strings.Contains(footprint.Family, "sans") {
		points += 2
	}
	if heavy := footprint.Aspect.Weight >= font.WeightSemibold; heavy != bold {
		points++
	}
	return points
}

func open(footprint *fontscan.Footprint) *Font {
	path := footprint.Location.File
	opened.Lock()
	defer opened.Unlock()
	if found, known := opened.fonts[path]; known {
		return found
	}
	found, err := read(path)
	if err != nil {
		found = nil
	}
	opened.fonts[path] = found
	return found
}

// read reads a font that a PDF can carry in part.
func read(path string) (*Font, error) {
	if info, err := os.Stat(path); err != nil || info.Size() > largestFile {
		return nil, cmp.Or(err, errTooLarge)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	loaders, err := opentype.NewLoaders(bytes.NewReader(data))
	if err != nil || len(loaders) == 0 {
		return nil, cmp.Or(err, errNoOutlines)
	}
	if err := usable(loaders[0], data); err != nil {
		return nil, err
	}
	parsed, err := font.NewFont(loaders[0])
	if err != nil {
		return nil, err
	}
	return &Font{Name: parsed.Describe().Family, Data: data, Read: parsed}, nil
}
