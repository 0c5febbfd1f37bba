// Package backups keeps one copy a day of every trip file that is changed, the
// last few of them, apart from the file: what was deleted last week, or lost
// with a stick, can be had again.
package backups

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"sumpter/app/document"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Kept is how many days of change are kept of one file.
const Kept = 14

const (
	ending  = ".trip"
	dayForm = "2006-01-02"
)

// Shelf is the folder that holds the copies of all files, a folder each.
type Shelf struct {
	Folder string
	Now    func() time.Time
}

// Usual is the shelf in the folder that the system gives programs for the
// settings of this user; on another drive than most sticks and shared folders.
// Where there is none, keeping says so.
func Usual() Shelf {
	shelf := Shelf{Now: time.Now}
	if folder, err := os.UserConfigDir(); err == nil {
		shelf.Folder = filepath.Join(folder, "sumpter", "backups")
	}
	return shelf
}

// Copy is a trip file as it was before the first change of a day.
type Copy struct {
	Path string
	Day  time.Time // midnight UTC of that day by the clock on the wall
}

// Copies lists what is kept of a file, newest first.
func (s Shelf) Copies(path string) ([]Copy, error) {
	folder, err := s.of(path)
	if err != nil {
		return nil, err
	}
	entries, err := os.ReadDir(folder)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	var copies []Copy
	for _, entry := range entries {
		if day, err := time.Parse(dayForm+ending, entry.Name()); err == nil && entry.Type().IsRegular() {
			copies = append(copies, Copy{Path: filepath.Join(folder, entry.Name()), Day: day})
		}
	}
	slices.SortFunc(copies, func(a, b Copy) int { return b.Day.Compare(a.Day) })
	return copies, nil
}

// keep has a copy of a file made, unless there is one of today, and drops the
// oldest.
func (s Shelf) keep(path string, copyTo func(path string) error) error {
	folder, err := s.of(path)
	if err != nil {
		return err
	}
	name := filepath.Join(folder, s.Now().Format(dayForm)+ending)
	if _, err := os.Lstat(name); err == nil {
		return nil
	}
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return err
	}
	if err := copyTo(name); err != nil {
		return err
	}
	copies, err := s.Copies(path)
	if err != nil {
		return err
	}
	for _, old := range copies[min(Kept, len(copies)):] {
		err = errors.Join(err, os.Remove(old.Path))
	}
	return err
}

// of is the folder of one file: its name to be found by, and a mark of its
// whole path, as two folders may each hold a "trip.trip".
func (s Shelf) of(path string) (string, error) {
	if s.Folder == "" {
		return "", prose.Errorf("the system names no folder for this user's settings")
	}
	full, err := filepath.Abs(path)
	if err != nil {
		return "", err
	}
	mark := sha256.Sum256([]byte(full))
	name := strings.TrimSuffix(filepath.Base(full), filepath.Ext(full))
	return filepath.Join(s.Folder, name+"-"+hex.EncodeToString(mark[:4])), nil
}

// Store is a trip file whose state before the first change of a day is kept.
type Store struct {
	document.Store
	Shelf  Shelf
	Failed func(error) // told when a copy could not be made; saving goes on

	once    sync.Mutex
	keptFor string // the day of the last copy
}

// Save keeps a copy if this is the day's first change, then saves.
func (s *Store) Save(ctx context.Context, t *trip.Trip) error {
	s.once.Lock()
	today := s.Shelf.Now().Format(dayForm)
	if s.keptFor != today {
		s.keptFor = today // one try a day: a full disk is told once
		if err := s.Shelf.keep(s.Path(), s.SaveCopy); err != nil {
			s.Failed(err)
		}
	}
	s.once.Unlock()
	return s.Store.Save(ctx, t)
}
