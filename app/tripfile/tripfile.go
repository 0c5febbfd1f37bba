// Package tripfile keeps a trip in one SQLite database on disk: a document
// that can be copied and mailed, of which no edit is lost and which no other
// program writes while it is open here.
//
// Create makes a file, Open opens one for editing, OpenReadOnly for looking.
// Save writes only the rows that changed, in one transaction. All errors are
// *Error and say what is wrong, where, and what to do.
package tripfile

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"

	"sumpter/app/tripfile/rows"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// File is an open trip file. Its methods may be called from any goroutine.
type File struct {
	path    string
	backup  string
	may     access
	release func()

	mutex  sync.Mutex
	db     *sql.DB
	conn   *sql.Conn     // nil once closed
	stored rows.Snapshot // what the file holds; nil if not known
	seen   os.FileInfo   // the file after this program's last writing
}

// Create writes a trip to a new file and opens it. A file that is already
// there is never touched: that is ErrExists.
func Create(path string, t *trip.Trip) (*File, error) {
	return present().create(path, t)
}

// Open opens a trip file for editing. A file of an older version is brought
// to the present one, after a copy of it was put beside it.
func Open(path string) (*File, error) { return present().open(path, writing) }

// OpenReadOnly opens a trip file that is not to be changed, or may not be.
// Save then fails with ErrReadOnly. A file of an older version cannot be
// opened so, as it would have to be changed first.
func OpenReadOnly(path string) (*File, error) { return present().open(path, reading) }

func (f format) create(path string, t *trip.Trip) (*File, error) {
	full, err := filepath.Abs(path)
	if err != nil {
		return nil, explain(path, err)
	}
	temporary, err := temporaryBeside(full)
	if err != nil {
		return nil, explainCreate(full, err)
	}
	defer os.Remove(temporary)
	if err := f.fill(context.Background(), temporary, t); err != nil {
		return nil, renamed(err, full)
	}
	if err := publish(temporary, full); err != nil {
		return nil, explain(full, err)
	}
	return f.open(full, writing)
}

// explainCreate knows that a missing thing is the folder.
func explainCreate(path string, err error) error {
	if errors.Is(err, os.ErrNotExist) {
		return &Error{Path: path, Kind: ErrFolder, Detail: prose.Say("the folder does not exist"), Cause: err}
	}
	return explain(path, err)
}

// renamed tells an error under the name the user knows.
func renamed(err error, path string) error {
	var own *Error
	if errors.As(err, &own) {
		own.Path = path
	}
	return err
}

// fill makes the tables and rows of a trip in an empty file.
func (f format) fill(ctx context.Context, path string, t *trip.Trip) error {
	db, conn, err := connect(ctx, path, writing)
	if err != nil {
		return err
	}
	file := &File{path: path, may: writing, release: func() {}, db: db, conn: conn, stored: make(rows.Snapshot, len(rows.Tables()))}
	err = inTransaction(ctx, path, conn, func() error {
		if _, err := conn.ExecContext(ctx, pragmaApplicationID); err != nil {
			return err
		}
		if err := f.advance(ctx, conn, 0); err != nil {
			return err
		}
		return file.write(ctx, t)
	})
	return errors.Join(err, file.Close())
}

func (f format) open(path string, may access) (*File, error) {
	full, err := filepath.Abs(path)
	if err != nil {
		return nil, explain(path, err)
	}
	release, err := claim(full)
	if err != nil {
		return nil, err
	}
	file := &File{path: full, may: may, release: release}
	err = f.begin(context.Background(), file)
	if err == nil {
		err = file.look()
	}
	if err != nil {
		_ = file.Close() // why it did not open is what matters
		return nil, err
	}
	return file, nil
}

// begin checks the file from the outside, connects, locks and checks the inside.
func (f format) begin(ctx context.Context, file *File) error {
	head, err := readHeader(file.path)
	if err != nil {
		return err
	}
	if err := head.check(file.path, f.version()); err != nil {
		return err
	}
	version := int(head.version)
	if file.may == writing {
		if err := checkWritable(file.path); err != nil {
			return err
		}
	} else if version < f.version() {
		return fail(file.path, ErrReadOnly, prose.Say("it is of an older version and must be opened for editing once"))
	}
	if file.db, file.conn, err = connect(ctx, file.path, file.may); err != nil {
		return damaged(file.path, err)
	}
	if version, err = f.lockAndVerify(ctx, file); err != nil {
		return err
	}
	if file.may == writing {
		if err := adoptJournal(ctx, file.path, file.conn, version); err != nil {
			return err
		}
	}
	if version < f.version() {
		file.backup, err = migrate(ctx, file.path, file.conn, f, version)
	}
	return err
}

// adoptJournal takes over the journal that a program left behind when it
// died. Its content is already dealt with; only SQLite may delete it, at
// closing, and it does so only for a journal that it has used.
func adoptJournal(ctx context.Context, path string, conn *sql.Conn, version int) error {
	if _, err := os.Lstat(path + "-journal"); errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return inTransaction(ctx, path, conn, func() error {
		_, err := conn.ExecContext(ctx, fmt.Sprintf("PRAGMA user_version = %d", version))
		return err
	})
}

// lockAndVerify takes the lock, which a writer keeps until closing, verifies
// the inside and gives the version. That may be another than the header's was:
// where a program died while it brought the file forward, taking the lock put
// the file back as it had been.
func (f format) lockAndVerify(ctx context.Context, file *File) (version int, err error) {
	begin := "BEGIN"
	if file.may == writing {
		begin = "BEGIN EXCLUSIVE"
	}
	if _, err := file.conn.ExecContext(ctx, begin); err != nil {
		return 0, damaged(file.path, err)
	}
	defer rollBack(ctx, file.conn)
	var id int
	if err := file.conn.QueryRowContext(ctx, "SELECT application_id, user_version FROM pragma_application_id, pragma_user_version").Scan(&id, &version); err != nil {
		return 0, damaged(file.path, err)
	}
	if id != applicationID || version < 1 || version > f.version() {
		return 0, fail(file.path, ErrInUse, prose.Say("it changed while it was being opened"))
	}
	return version, verify(ctx, file.path, file.conn, f, version)
}

// Path gives the full path of the file.
func (f *File) Path() string { return f.path }

// ReadOnly tells whether Save must fail.
func (f *File) ReadOnly() bool { return f.may == reading }

// Backup gives the path of the copy that was kept when the file was brought to
// the present version at opening, or nothing.
func (f *File) Backup() string { return f.backup }

// Close gives the file free. Closing twice does no harm.
func (f *File) Close() error {
	f.mutex.Lock()
	defer f.mutex.Unlock()
	var err error
	if f.conn != nil {
		err = errors.Join(f.conn.Close(), f.db.Close())
		f.conn = nil
	}
	f.release()
	return explain(f.path, err)
}
