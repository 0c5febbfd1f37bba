package tripjson

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"

	"golang.org/x/text/encoding"
	"golang.org/x/text/transform"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// ErrTooLarge is returned for more than MaxBytes, or for more entries than any
// trip has.
var ErrTooLarge = prose.Errorf("too large to be a trip")

var byteOrderMark = []byte("\xef\xbb\xbf")

// Read reads a trip. Problems are all faults of its contents at once; with any
// of them the trip is nil. An error means that nothing could be read at all:
// no JSON, not UTF-8, too large, of a later version, or a failure of r.
// Whether the trip makes sense is for trip.Validate to say.
func Read(r io.Reader) (*trip.Trip, []Problem, error) {
	buffered := bufio.NewReader(&capped{from: r, left: MaxBytes})
	if mark, err := buffered.Peek(len(byteOrderMark)); err == nil && bytes.Equal(mark, byteOrderMark) {
		if _, err := buffered.Discard(len(byteOrderMark)); err != nil {
			return nil, nil, prose.Errorf("read JSON: %s", err)
		}
	}
	walk := walker{
		decoder: json.NewDecoder(filling{transform.NewReader(buffered, encoding.UTF8Validator)}),
		members: map[reflect.Type][]member{},
	}
	var doc document
	if err := walk.value(reflect.ValueOf(&doc).Elem(), ""); errors.Is(err, errWrongAllOver) {
		return nil, walk.problems, nil
	} else if err != nil {
		return nil, nil, walk.explain(err)
	}
	if err := walk.end(&doc); err != nil {
		return nil, nil, err
	}
	if len(walk.problems) > 0 {
		return nil, walk.problems, nil
	}
	return &doc.Trip, nil, nil
}

// end judges the version and what follows the trip.
func (w *walker) end(doc *document) error {
	if doc.FormatVersion > Version {
		return prose.Errorf("this trip has format_version %d, and this program knows up to %d: use a newer program", doc.FormatVersion, Version)
	}
	if _, err := w.decoder.Token(); err == nil {
		return prose.Errorf("after the trip, at byte %d, something follows: a file holds one trip", w.decoder.InputOffset())
	} else if !errors.Is(err, io.EOF) {
		return w.explain(err)
	}
	if doc.FormatVersion != Version && len(w.problems) == 0 {
		return w.report("format_version", nil, fmt.Sprintf("is not %d", Version), fmt.Sprint(Version))
	}
	return nil
}

// capped fails once more than left bytes were read, instead of ending as if
// the file were complete.
type capped struct {
	from io.Reader
	left int
}

func (c *capped) Read(p []byte) (int, error) {
	n, err := c.from.Read(p)
	if c.left -= n; c.left < 0 {
		return 0, prose.Errorf("%s: more than %d MB", ErrTooLarge, MaxBytes>>20)
	}
	return n, err
}

// filling reads until the buffer is full. The decoder looks again at all it has
// of a long run of blanks after each reading: with small ones, 32 MB of blanks
// would take minutes.
type filling struct{ from io.Reader }

func (f filling) Read(p []byte) (int, error) {
	n, err := io.ReadFull(f.from, p)
	if errors.Is(err, io.ErrUnexpectedEOF) {
		err = io.EOF
	}
	return n, err
}

func (w *walker) explain(err error) error {
	var syntax *json.SyntaxError
	switch {
	case errors.As(err, &syntax):
		return prose.Errorf("this is not JSON: at byte %d: %s", syntax.Offset, err)
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		return prose.Errorf("the JSON ends in the middle: is the file complete?")
	case errors.Is(err, encoding.ErrInvalidUTF8):
		return prose.Errorf("the file is not UTF-8: after byte %d: save it as UTF-8", w.decoder.InputOffset())
	default:
		return prose.Errorf("read JSON: %s", err)
	}
}
