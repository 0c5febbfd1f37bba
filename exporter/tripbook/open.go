package tripbook

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"

	"github.com/xuri/excelize/v2"

	"sumpter/domain/prose"
)

// maxParts is far above the some forty parts of a trip workbook.
const maxParts = 2000

// open reads a workbook within the limits. The directory of the zip is judged
// before anything is unpacked; archive/zip holds a part to the size it claims.
func open(r io.Reader) (*excelize.File, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil {
		return nil, prose.Errorf("read the workbook: %s", err)
	}
	if len(data) > MaxBytes {
		return nil, prose.Errorf("%s: more than %d MB", ErrTooLarge, MaxBytes>>20)
	}
	if bytes.HasPrefix(data, []byte("\xd0\xcf\x11\xe0")) {
		return nil, prose.Errorf("this workbook is locked with a password or in the old xls format: save it as xlsx without a password")
	}
	if err := judge(data); err != nil {
		return nil, err
	}
	file, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{
		RawCellValue: true, UnzipSizeLimit: maxUnpacked, UnzipXMLSizeLimit: maxPart,
	})
	if err != nil {
		return nil, damaged(err)
	}
	return file, nil
}

func judge(data []byte) error {
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return prose.Errorf("this is not a workbook (xlsx): %s", err)
	}
	if len(archive.File) > maxParts {
		return prose.Errorf("%s: it has %d parts", ErrTooLarge, len(archive.File))
	}
	var all uint64
	for _, part := range archive.File {
		all += part.UncompressedSize64
		if part.UncompressedSize64 > maxPart || all > maxUnpacked {
			return prose.Errorf("%s: unpacked it has more than %d MB", ErrTooLarge, maxPart>>20)
		}
	}
	for _, part := range archive.File {
		if strings.HasPrefix(part.Name, "xl/worksheets/sheet") || strings.EqualFold(part.Name, "xl/sharedStrings.xml") {
			if err := wellFormed(part); err != nil {
				return damaged(prose.Errorf("%s: %s", part.Name, err))
			}
		}
	}
	return nil
}

// wellFormed reads a part to its end. The library under us takes a fault in
// the XML for the end of the sheet, and half a crew for the whole of it.
func wellFormed(part *zip.File) error {
	reader, err := part.Open()
	if err != nil {
		return err
	}
	decoder := xml.NewDecoder(reader)
	for {
		if _, err := decoder.Token(); errors.Is(err, io.EOF) {
			return reader.Close()
		} else if err != nil {
			return errors.Join(err, reader.Close())
		}
	}
}

func damaged(err error) error {
	return prose.Errorf("this workbook is damaged: open it in a spreadsheet and save it again as xlsx: %s", err)
}
