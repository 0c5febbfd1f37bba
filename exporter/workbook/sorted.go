package workbook

import (
	"archive/zip"
	"bytes"
	"cmp"
	"encoding/xml"
	"io"
	"slices"
	"strings"
)

// typesPart lists the kinds of all parts; it comes first in the file.
const typesPart = "[Content_Types].xml"

// firstZIPDate is 1 January 1980, the first date a ZIP can hold, in its form. It
// goes into the old field on purpose: CreateRaw writes that one only, and the
// newer makes a further field of the present form.
const firstZIPDate = 1<<5 | 1

// copySorted writes a workbook again with its parts, and the list of their
// kinds, in the order of their names: the library takes both from maps, in
// another order each time.
func copySorted(w io.Writer, file []byte) error {
	reader, err := zip.NewReader(bytes.NewReader(file), int64(len(file)))
	if err != nil {
		return err
	}
	parts := slices.SortedFunc(slices.Values(reader.File), func(a, b *zip.File) int { return strings.Compare(a.Name, b.Name) })
	writer := zip.NewWriter(w)
	for _, part := range parts {
		if err := copyPart(writer, part); err != nil {
			return err
		}
	}
	return writer.Close()
}

func copyPart(writer *zip.Writer, part *zip.File) error {
	if part.Name == typesPart {
		return copyTypes(writer, part)
	}
	header := part.FileHeader
	header.ModifiedDate, header.ModifiedTime = firstZIPDate, 0 //nolint:staticcheck // see firstZIPDate
	to, err := writer.CreateRaw(&header)
	if err != nil {
		return err
	}
	from, err := part.OpenRaw()
	if err != nil {
		return err
	}
	_, err = io.Copy(to, from)
	return err
}

// types is the list of kinds of parts (ECMA-376 Part 2, 10.1.2.2).
type types struct {
	XMLName   xml.Name    `xml:"http://schemas.openxmlformats.org/package/2006/content-types Types"`
	Defaults  []extension `xml:"Default"`
	Overrides []override  `xml:"Override"`
}

type extension struct {
	Extension   string `xml:"Extension,attr"`
	ContentType string `xml:"ContentType,attr"`
}

type override struct {
	PartName    string `xml:"PartName,attr"`
	ContentType string `xml:"ContentType,attr"`
}

func copyTypes(writer *zip.Writer, part *zip.File) error {
	from, err := part.Open()
	if err != nil {
		return err
	}
	defer func() { _ = from.Close() }() // only read
	var list types
	if err := xml.NewDecoder(from).Decode(&list); err != nil {
		return err
	}
	slices.SortFunc(list.Defaults, func(a, b extension) int { return cmp.Compare(a.Extension, b.Extension) })
	slices.SortFunc(list.Overrides, func(a, b override) int { return cmp.Compare(a.PartName, b.PartName) })
	to, err := writer.CreateHeader(&zip.FileHeader{Name: typesPart, Method: zip.Deflate, ModifiedDate: firstZIPDate}) //nolint:staticcheck // see firstZIPDate
	if err != nil {
		return err
	}
	if _, err := io.WriteString(to, xml.Header); err != nil {
		return err
	}
	return xml.NewEncoder(to).Encode(list)
}
