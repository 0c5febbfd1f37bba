package tripfile

import (
	"context"
	"errors"
	"io/fs"
	"syscall"

	"modernc.org/sqlite"
)

// Why a trip file could not be used. Ask with errors.Is; the error's text
// says it in plain words, with the file and what to do.
var (
	ErrMissing    = errors.New("there is no such file")
	ErrExists     = errors.New("there already is a file of this name")
	ErrNotTrip    = errors.New("this is not a trip file")
	ErrDamaged    = errors.New("the trip file is damaged")
	ErrNewer      = errors.New("the trip file was written by a newer version of this program")
	ErrReadOnly   = errors.New("the trip file may be read but not changed")
	ErrUnreadable = errors.New("the trip file may not be read")
	ErrInUse      = errors.New("the trip file is open in another window or program")
	ErrFolder     = errors.New("nothing can be written into the folder")
	ErrFull       = errors.New("there is no room left on the disk")
	ErrUnsound    = errors.New("the trip cannot be stored as it is")
	ErrReplaced   = errors.New("the trip file was moved, deleted or changed by another program while it was open here")
	ErrClosed     = errors.New("the trip file is already closed")
	ErrDisk       = errors.New("the disk could not be read or written")
)

// remedies say what a person can do.
var remedies = map[error]string{
	ErrMissing:    "Check the name and the folder.",
	ErrExists:     "Choose another name, or move the old file away first.",
	ErrNotTrip:    "Choose a file that this program saved; workbooks and JSON are imported instead.",
	ErrDamaged:    "Take a backup or a copy of it; the file was left as it is.",
	ErrNewer:      "Update this program to open it.",
	ErrReadOnly:   "Open it for reading only, or save a copy in a folder of your own.",
	ErrUnreadable: "Ask its owner for the right to read it.",
	ErrInUse:      "Close it there, then open it here.",
	ErrFolder:     "Choose a folder of your own, or open the file for reading only.",
	ErrFull:       "Make room, then save again; the file is as it was before.",
	ErrUnsound:    "Correct the trip, then save again; the file is as it was before.",
	ErrReplaced:   "Save the trip elsewhere, then compare it with the file that is there now; nothing was written into that one.",
	ErrClosed:     "Open it again.",
	ErrDisk:       "Check the disk or its connection, then try again.",
}

// Error is a failure with its file.
type Error struct {
	Path   string
	Kind   error  // one of the errors of this package
	Detail string // what was seen, may be empty
	Cause  error  // of the layer below, may be nil
}

// Error gives what is wrong, where, and what to do.
func (e *Error) Error() string {
	text := e.Path + ": " + e.Kind.Error()
	if e.Detail != "" {
		text += " (" + e.Detail + ")"
	}
	return text + ". " + remedies[e.Kind]
}

// Unwrap lets errors.Is find the kind and the cause.
func (e *Error) Unwrap() []error {
	if e.Cause == nil {
		return []error{e.Kind}
	}
	return []error{e.Kind, e.Cause}
}

func fail(path string, kind error, detail string) error {
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
	return &Error{Path: path, Kind: kind, Detail: err.Error(), Cause: err}
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
