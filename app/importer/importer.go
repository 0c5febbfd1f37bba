// Package importer is the one door by which a trip comes in from a file that
// is not a trip file: it knows the kinds of file, reads the whole trip or
// nothing, and tells every fault in one form, whatever the kind.
//
// Use ReadFile for a path and Read for anything else.
package importer

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/exporter/tripbook"
	"sumpter/exporter/tripjson"
)

// ErrUnknownKind is returned for a file of a kind that holds no trip.
var ErrUnknownKind = prose.Errorf("this kind of file cannot be imported")

// ReadFile reads the trip in a workbook (xlsx) or trip JSON. What comes back
// has passed trip.Validate. Problems are all faults of the contents at once;
// the trip is nil unless all of them are notes. An error means that nothing
// could be read at all, and names the file.
func ReadFile(path string) (*trip.Trip, []Problem, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, nil, prose.Errorf("%s: %s", path, plainly(err))
	}
	if !info.Mode().IsRegular() {
		return nil, nil, prose.Errorf("%s is not a file: %s", path, ErrUnknownKind)
	}
	if most := max(tripjson.MaxBytes, tripbook.MaxBytes); info.Size() > int64(most) {
		return nil, nil, prose.Errorf("%s has %d MB, and no trip has more than %d: is it the right file?", path, info.Size()>>20, most>>20)
	}
	file, err := os.Open(path)
	if err != nil {
		return nil, nil, prose.Errorf("%s: %s", path, plainly(err))
	}
	read, problems, err := Read(filepath.Base(path), file)
	if err = errors.Join(err, file.Close()); err != nil {
		return nil, nil, prose.Errorf("%s: %s", path, err)
	}
	return read, problems, nil
}

// AddFile reads members, foods, gear or recipes from a table, a workbook or
// comma-separated values, and gives the trip with them; the trip it is given stays as it is.
func AddFile(t *trip.Trip, path string) (tripbook.Added, []Problem, error) {
	file, err := os.Open(path)
	if err != nil {
		return tripbook.Added{}, nil, prose.Errorf("%s: %s", path, plainly(err))
	}
	added, found, err := tripbook.AddTable(t, filepath.Base(path), file)
	if err = errors.Join(err, file.Close()); err != nil {
		return tripbook.Added{}, nil, prose.Errorf("%s: %s", path, err)
	}
	return added, ofSheets(found), nil
}

// AddText reads a table as AddFile does from what a spreadsheet copied.
func AddText(t *trip.Trip, text string) (tripbook.Added, []Problem, error) {
	added, found, err := tripbook.AddTable(t, "", strings.NewReader(text))
	return added, ofSheets(found), err
}

// plainly takes the name of the system call off an error.
func plainly(err error) error {
	var inside *fs.PathError
	if errors.As(err, &inside) {
		return inside.Err
	}
	return err
}

// Read reads a trip as ReadFile does. The kind is told by the contents; name
// only helps to say what is wrong with others.
func Read(name string, r io.Reader) (*trip.Trip, []Problem, error) {
	const enough = 64
	buffered := bufio.NewReader(r)
	start, err := buffered.Peek(enough)
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, nil, prose.Errorf("read the file: %s", err)
	}
	switch {
	case bytes.HasPrefix(start, []byte("PK")) && !isOtherZip(name):
		return workbook(buffered)
	case bytes.HasPrefix(bytes.TrimLeft(start, "\xef\xbb\xbf \t\r\n"), []byte("{")):
		return document(buffered)
	default:
		return nil, nil, prose.Errorf("%s: %s", ErrUnknownKind, advice(name, start))
	}
}

// isOtherZip tells the kinds of file that are zips too and no workbook of ours.
func isOtherZip(name string) bool {
	switch strings.ToLower(filepath.Ext(name)) {
	case ".ods", ".odt", ".docx", ".pptx", ".zip", ".kmz", ".numbers", ".jar":
		return true
	}
	return false
}

// advice says what to do with a file of another kind.
func advice(name string, start []byte) prose.Text {
	instead := prose.Say("a trip comes from a trip workbook (xlsx) or trip JSON")
	switch extension := strings.ToLower(filepath.Ext(name)); {
	case len(start) == 0:
		return prose.Say("the file is empty; %s", instead)
	case bytes.HasPrefix(start, []byte("SQLite format 3\x00")):
		return prose.Say("it is a trip file already, or another database: open it instead")
	case bytes.HasPrefix(start, []byte("\xd0\xcf\x11\xe0")):
		return prose.Say("it is locked with a password or in the old xls format: save it as xlsx without a password")
	case extension == ".ods", extension == ".numbers":
		return prose.Say("save it as xlsx in your spreadsheet")
	case extension == ".csv", extension == ".tsv", extension == ".txt":
		return prose.Say("paste such a table into a trip workbook; %s", instead)
	default:
		return instead
	}
}

func workbook(r io.Reader) (*trip.Trip, []Problem, error) {
	read, found, err := tripbook.Read(r)
	if err != nil {
		return nil, nil, err
	}
	return read, ofSheets(found), nil
}

func ofSheets(found []tripbook.Problem) []Problem {
	problems := make([]Problem, 0, len(found))
	for _, p := range found {
		problems = append(problems, ofWorkbook(p))
	}
	return problems
}

func document(r io.Reader) (*trip.Trip, []Problem, error) {
	read, found, err := tripjson.Read(r)
	if err != nil {
		return nil, nil, err
	}
	problems := make([]Problem, 0, len(found))
	for _, p := range found {
		problems = append(problems, ofJSON(p))
	}
	if read == nil {
		return nil, problems, nil
	}
	for _, p := range trip.Validate(read) {
		problems = append(problems, ofTrip(p))
	}
	if len(problems) > 0 {
		return nil, problems, nil
	}
	return read, nil, nil
}
