package tripfile

import (
	"context"
	"errors"
	"io/fs"
	"syscall"

	"modernc.org/sqlite"

	"sumpter/domain/prose"
)

// Why a trip file could not be used. Ask with errors.Is; the error's text
// says it in plain words, with the file and what to do.
var (
	ErrMissing    = prose.Errorf("there is no such file")
	ErrExists     = prose.Errorf("there already is a file of this name")
	ErrNotTrip    = prose.Errorf("this is not a trip file")
	ErrDamaged    = prose.Errorf("the trip file is damaged")
	ErrNewer      = prose.Errorf("the trip file was written by a newer version of this program")
	ErrReadOnly   = prose.Errorf("the trip file may be read but not changed")
	ErrUnreadable = prose.Errorf("the trip file may not be read")
	ErrInUse      = prose.Errorf("the trip file is open in another window or program")
	ErrFolder     = prose.Errorf("nothing can be written into the folder")
	ErrFull       = prose.Errorf("there is no room left on the disk")
	ErrUnsound    = prose.Errorf("the trip cannot be stored as it is")
	ErrReplaced   = prose.Errorf("the trip file was moved, deleted or changed by another program while it was open here")
	ErrClosed     = prose.Errorf("the trip file is already closed")
	ErrDisk       = prose.Errorf("the disk could not be read or written")
)

// remedies say what a person can do.
var remedies = map[error]prose.Text{
	ErrMissing:    prose.Say("Check the name and the folder."),
	ErrExists:     prose.Say("Choose another name, or move the old file away first."),
	ErrNotTrip:    prose.Say("Choose a file that this program saved; workbooks and JSON are imported instead."),
	ErrDamaged:    prose.Say("Take a backup or a copy of it; the file was left as it is."),
	ErrNewer:      prose.Say("Update this program to open it."),
	ErrReadOnly:   prose.Say("Open it for reading only, or save a copy in a folder of your own."),
	ErrUnreadable: prose.Say("Ask its owner for the right to read it."),
	ErrInUse:      prose.Say("Close it there, then open it here; if it is open nowhere, wait a moment and try again."),
	ErrFolder:     prose.Say("Choose a folder of your own, or open the file for reading only."),
	ErrFull:       prose.Say("Make room, then save again; the file is as it was before."),
	ErrUnsound:    prose.Say("Correct the trip, then save again; the file is as it was before."),
	ErrReplaced:   prose.Say("Save the trip elsewhere, then compare it with the file that is there now; nothing was written into that one."),
	ErrClosed:     prose.Say("Open it again."),
	ErrDisk:       prose.Say("Check the disk or its connection, then try again."),
}

// Error is a failure with its file.
type Error struct {
	Path   string
	Kind   error      // one of the errors of this package
	Detail prose.Text // what was seen; may say nothing
	Cause  error      // of the layer below, may be nil
}

// Error gives what is wrong, where, and what to do.
func (e *Error) Error() string { return e.Text().String() }

// Text is Error for whoever reads it.
func (e *Error) Text() prose.Text {
	if e.Detail.IsZero() {
		return prose.Say("%s: %s. %s", e.Path, e.Kind, remedies[e.Kind])
	}
	return prose.Say("%s: %s (%s). %s", e.Path, e.Kind, e.Detail, remedies[e.Kind])
}

// Unwrap lets errors.Is find the kind and the cause.
func (e *Error) Unwrap() []error {
	if e.Cause == nil {
		return []error{e.Kind}
	}
	return []error{e.Kind, e.Cause}
}

func fail(path string, kind error, detail prose.Text) error {
	return &Error{Path: path, Kind: kind, Detail: detail}
}

// result codes of SQLite (sqlite.org/rescode.html), primary part
const (
	codeBusy       = 5
	codeLocked     = 6
	codeReadOnly   = 8
	codeIOError    = 10
	codeCorrupt    = 11
	codeFull       = 13
	codeCannotOpen = 14
	codeTooBig     = 18
	codeConstraint = 19
	codeNotADB     = 26
)

// explain turns an error of the layers below into one of this package.
// Errors that already are, and those of a context, pass through.
func explain(path string, err error) error {
	var own *Error
	if err == nil || errors.As(err, &own) || errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded) {
		return err
	}
	kind := ErrDisk
	var db *sqlite.Error
	switch {
	case errors.As(err, &db):
		kind = kindOf(db.Code())
	case errors.Is(err, fs.ErrNotExist):
		kind = ErrMissing
	case errors.Is(err, fs.ErrExist):
		kind = ErrExists
	case errors.Is(err, fs.ErrPermission), errors.Is(err, syscall.EROFS):
		kind = ErrFolder
	case errors.Is(err, syscall.ENOSPC):
		kind = ErrFull
	}
	return &Error{Path: path, Kind: kind, Detail: detailOf(kind, err), Cause: err}
}

// detailOf says what the layer below saw, but where its words would only
// repeat the kind in the language of databases.
func detailOf(kind, err error) prose.Text {
	switch {
	case errors.Is(kind, ErrInUse):
		return prose.Say("a second window of this program, another computer if the folder is shared, or a program that copies the folder")
	case errors.Is(kind, ErrFull), errors.Is(kind, ErrReadOnly):
		return prose.Text{}
	default:
		return prose.Say("%s", err)
	}
}

func kindOf(code int) error {
	switch code & 0xff {
	case codeBusy, codeLocked:
		return ErrInUse
	case codeReadOnly:
		return ErrReadOnly
	case codeFull:
		return ErrFull
	case codeCannotOpen:
		return ErrFolder
	case codeConstraint, codeTooBig:
		return ErrUnsound
	case codeIOError:
		return ErrDisk
	case codeCorrupt, codeNotADB:
		return ErrDamaged
	default: // "malformed schema" and the like come as a plain error
		return ErrDamaged
	}
}
