package tripfile

import (
	"errors"
	"io/fs"
	"os"

	"sumpter/domain/prose"
)

// look remembers the file as this program leaves it.
func (f *File) look() error {
	info, err := os.Stat(f.path)
	if err != nil {
		return explain(f.path, err)
	}
	f.seen = info
	return nil
}

// checkSame tells whether the file is still the one this program opened and
// wrote. SQLite's lock keeps other programs of its kind out, not one that
// brings files in step between two machines, nor a person who moves them. To
// write on would go into a file nobody finds again, or beside another's work.
func (f *File) checkSame() error {
	info, err := os.Stat(f.path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fail(f.path, ErrReplaced, prose.Say("it is not there any more"))
	case err != nil:
		return explain(f.path, err)
	case !os.SameFile(info, f.seen):
		return fail(f.path, ErrReplaced, prose.Say("another file has taken its place"))
	case info.Size() != f.seen.Size() || !info.ModTime().Equal(f.seen.ModTime()):
		return fail(f.path, ErrReplaced, prose.Say("another program has written into it"))
	}
	return nil
}
