package tripfile

import (
	"encoding/binary"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"sumpter/domain/prose"
)

// largestFile bounds what is opened at all; the largest trip that can be
// planned needs a small part of it.
const largestFile = 256 << 20

// header is the first bytes of a database file (sqlite.org/fileformat.html,
// 1.3). They are read before SQLite sees the file, so that it never works on
// a file that does not claim to be ours.
type header struct {
	journal, encoding    int
	application, version uint32
}

const (
	headerLength    = 100
	headerMagic     = "SQLite format 3\x00"
	journalRollback = 1
	encodingUTF8    = 1
)

func readHeader(path string) (header, error) {
	info, err := os.Stat(path)
	if err != nil {
		return header{}, explain(path, err)
	}
	if !info.Mode().IsRegular() {
		return header{}, fail(path, ErrNotTrip, prose.Say("it is no ordinary file"))
	}
	if info.Size() > largestFile {
		return header{}, fail(path, ErrNotTrip, prose.Say("it has %d MB, a trip has at most %d", info.Size()>>20, largestFile>>20))
	}
	file, err := os.Open(path)
	if errors.Is(err, fs.ErrPermission) {
		return header{}, &Error{Path: path, Kind: ErrUnreadable, Cause: err}
	}
	if err != nil {
		return header{}, explain(path, err)
	}
	defer file.Close()
	var bytes [headerLength]byte
	if n, err := io.ReadFull(file, bytes[:]); errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		return header{}, fail(path, ErrNotTrip, prose.Say("it has only %d bytes", n))
	} else if err != nil {
		return header{}, explain(path, err)
	}
	if string(bytes[:len(headerMagic)]) != headerMagic {
		return header{}, fail(path, ErrNotTrip, prose.Text{})
	}
	return header{
		journal: int(max(bytes[18], bytes[19])), encoding: int(binary.BigEndian.Uint32(bytes[56:])),
		version: binary.BigEndian.Uint32(bytes[60:]), application: binary.BigEndian.Uint32(bytes[68:]),
	}, nil
}

// check tells whether the header is that of a trip file of a version that
// this program can read.
func (h header) check(path string, newest int) error {
	switch {
	case h.application != applicationID:
		return fail(path, ErrNotTrip, prose.Say("it is a database of another program"))
	case h.version > uint32(newest):
		return fail(path, ErrNewer, prose.Say("version %d, this program knows up to %d", h.version, newest))
	case h.version == 0:
		return fail(path, ErrDamaged, prose.Say("it has no version"))
	case h.journal != journalRollback || h.encoding != encodingUTF8:
		return fail(path, ErrDamaged, prose.Say("another program changed how it is stored"))
	}
	return nil
}

// checkWritable tells whether file and folder may be changed: a change needs
// a journal beside the file.
func checkWritable(path string) error {
	file, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return &Error{Path: path, Kind: ErrReadOnly, Cause: err}
	}
	if err := file.Close(); err != nil {
		return explain(path, err)
	}
	probe, err := os.CreateTemp(filepath.Dir(path), ".sumpter-*.tmp")
	if err != nil {
		return explain(path, err)
	}
	return errors.Join(probe.Close(), os.Remove(probe.Name()))
}
