package prose

import "fmt"

// Fault is an error with a text that can be written for its reader.
type Fault struct {
	text  Text
	cause error
}

// Errorf makes an error of a format and arguments as Say does. An error among
// the arguments is what it wraps; it is written for the reader too.
func Errorf(format string, args ...any) error {
	if false {
		_ = fmt.Sprintf(format, args...) // lets go vet check formats and arguments
	}
	fault := &Fault{text: Text{kind: said, form: format, args: args}}
	for _, arg := range args {
		if cause, ok := arg.(error); ok && fault.cause == nil {
			fault.cause = cause
		}
	}
	return fault
}

// Error gives the text in English and metric units.
func (f *Fault) Error() string { return f.text.String() }

// Text gives the text.
func (f *Fault) Text() Text { return f.text }

// Unwrap gives the error that led to this one.
func (f *Fault) Unwrap() error { return f.cause }
