package fonts

import (
	"encoding/binary"
	"errors"

	embed "github.com/carlos7ags/folio/font"
	"github.com/go-text/typesetting/font/opentype"
)

// Why a font of the system is not used.
var (
	errTooLarge   = errors.New("the font file is too large")
	errNoOutlines = errors.New("the font has no outlines that a PDF can carry in part")
	errLicence    = errors.New("the font's maker does not allow it in documents")
)

// restricted is the bit of fsType in the table OS/2 that forbids embedding
// (OpenType specification 1.9, OS/2).
const restricted = 0x0002

// usable tells why a font cannot be put into a PDF in part: glyphs that are
// pictures, outlines our PDF library cannot cut down, a licence that forbids it.
func usable(loader *opentype.Loader, data []byte) error {
	if os2, err := loader.RawTable(opentype.MustNewTag("OS/2")); err == nil && len(os2) >= 10 {
		if binary.BigEndian.Uint16(os2[8:])&restricted != 0 {
			return errLicence
		}
	}
	if !loader.HasTable(opentype.MustNewTag("glyf")) {
		outlines, err := loader.RawTable(opentype.MustNewTag("CFF "))
		if err != nil {
			return errNoOutlines
		}
		if _, err := embed.SubsetCFF(outlines, map[uint16]rune{}); err != nil {
			return errors.Join(errNoOutlines, err)
		}
	}
	_, err := embed.ParseFont(data)
	return err
}
