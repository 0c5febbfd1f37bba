package main

import (
	"context"
	"errors"

	"sumpter/app/tripfile"
	"sumpter/domain/trip"
)

// saveTrip writes a trip to a new file, whole or not at all.
func saveTrip(path string, t *trip.Trip, force bool) error {
	return produce(path, force, func(temporary string) error {
		tripfile.Identify(t)
		file, err := tripfile.Create(temporary, t)
		if err != nil {
			return fileFault(path, err)
		}
		return file.Close()
	})
}

// readTrip reads the trip of a file without changing the file, unless it is
// of an older version: then it is brought to the present one, a copy beside it.
func readTrip(ctx context.Context, path string) (*trip.Trip, error) {
	file, err := tripfile.OpenReadOnly(path)
	if errors.Is(err, tripfile.ErrReadOnly) {
		file, err = tripfile.Open(path)
	}
	if err != nil {
		return nil, fileFault(path, err)
	}
	t, err := file.Read(ctx)
	if err := errors.Join(err, file.Close()); err != nil {
		return nil, fileFault(path, err)
	}
	return t, nil
}

// fileFault tells faults of the file from those of the machine.
func fileFault(path string, err error) error {
	var own *tripfile.Error
	if !errors.As(err, &own) {
		return err
	}
	own.Path = path // as it was written, not as it was resolved
	f := &fault{code: badInput, lines: []string{oneLine(own.Error())}, cause: err}
	for _, kind := range []error{tripfile.ErrDisk, tripfile.ErrFull, tripfile.ErrFolder, tripfile.ErrInUse} {
		if errors.Is(err, kind) {
			f.code = failed
		}
	}
	return f
}
