package fonts

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/go-text/typesetting/font/opentype"
)

func TestBundledFontsHaveTheLettersOfEurope(t *testing.T) {
	letters := "AÄäßÉéÑñŁłŐőŞşŽžĐđÞþ ΑΩαωάή АЯаяЁёЇїЂђ 0123456789 –—‘’“”„·×°½§€£‹›?"
	for _, bold := range []bool{false, true} {
		font := Bundled().Plain(bold)
		for _, r := range letters {
			if !font.Has(r) {
				t.Errorf("%s lacks %q", font.Name, r)
			}
		}
	}
}

func TestBundledShelfLooksNowhereElse(t *testing.T) {
	if font, ok := Bundled().Pick('美', false); ok {
		t.Errorf("%s has it", font.Name)
	}
}

func TestAScriptStaysInOneFont(t *testing.T) {
	asked := 0
	han := &Font{Name: "han", Read: Bundled().Plain(false).Read}
	shelf := newShelf(func(rune, bool) (*Font, bool) { asked++; return han, true })
	for range 3 {
		if got, ok := shelf.Pick('美', false); !ok || got != han {
			t.Fatalf("picked %v", got)
		}
	}
	if asked != 1 {
		t.Errorf("the system was asked %d times for one letter", asked)
	}
}

func TestLicenceIsBesideTheFonts(t *testing.T) {
	text, err := os.ReadFile("noto/OFL.txt")
	if err != nil || !strings.Contains(string(text), "SIL OPEN FONT LICENSE Version 1.1") {
		t.Errorf("the licence of the fonts is missing: %v", err)
	}
}

func TestUsableRefusesWhatMayNotBeEmbedded(t *testing.T) {
	data := bytes.Clone(notoRegular)
	loader := loaderOf(t, data)
	if err := usable(loader, data); err != nil {
		t.Fatal(err)
	}
	os2, err := loader.RawTable(opentype.MustNewTag("OS/2"))
	if err != nil {
		t.Fatal(err)
	}
	at := bytes.Index(data, os2)
	data[at+9] |= restricted
	if err := usable(loaderOf(t, data), data); err == nil {
		t.Error("a font whose maker forbids it is used")
	}
}

func loaderOf(t *testing.T, data []byte) *opentype.Loader {
	t.Helper()
	loaders, err := opentype.NewLoaders(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return loaders[0]
}
