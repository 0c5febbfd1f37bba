package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// refuseExisting gives a fault for each path that is already there, unless
// it may be replaced.
func refuseExisting(force bool, paths ...string) error {
	f := &fault{code: wrongUse}
	for _, path := range paths {
		info, err := os.Lstat(path)
		switch {
		case errors.Is(err, fs.ErrNotExist):
		case err != nil:
			f.lines = append(f.lines, oneLine(err.Error()))
		case info.IsDir():
			f.lines = append(f.lines, path+" is a folder: name a file")
		case !force:
			f.lines = append(f.lines, path+" is already there: choose another name, or say --force to replace it")
		}
	}
	if len(f.lines) > 0 {
		return f
	}
	return nil
}

// produce makes a file whole or not at all: it is written under another name
// beside its place and moved there when it is complete. Without force it
// never replaces a file, even one that came in between.
func produce(path string, force bool, write func(temporary string) error) error {
	if err := refuseExisting(force, path); err != nil {
		return err
	}
	folder, err := os.MkdirTemp(filepath.Dir(path), ".sumpter-")
	if err != nil {
		return err
	}
	temporary := filepath.Join(folder, filepath.Base(path))
	defer tidy(folder, temporary)
	if err := write(temporary); err != nil {
		return err
	}
	if !force {
		err := os.Link(temporary, path)
		if err == nil || errors.Is(err, fs.ErrExist) {
			return err
		}
		// A disk without links: the gap between look and move is unavoidable.
		if err := refuseExisting(false, path); err != nil {
			return err
		}
	}
	return os.Rename(temporary, path)
}

// tidy takes away what was only for the making, one after the other: seen was
// that a tree with a linked file is not removed where Windows is only imitated.
func tidy(folder, temporary string) {
	_ = os.Remove(temporary) // gone already if it was moved
	if os.Remove(folder) != nil {
		_ = os.RemoveAll(folder)
	}
}

// produceFrom is produce for what writes to a writer.
func produceFrom(path string, force bool, write func(io.Writer) error) error {
	return produce(path, force, func(temporary string) error {
		file, err := os.Create(temporary)
		if err != nil {
			return err
		}
		if err := write(file); err != nil {
			file.Close()
			return err
		}
		return file.Close()
	})
}
