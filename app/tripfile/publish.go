package tripfile

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
)

// publish gives a finished file its name without ever replacing another file,
// and makes sure that both are on the disk.
func publish(temporary, path string) error {
	if err := syncFile(temporary); err != nil {
		return err
	}
	err := os.Link(temporary, path)
	switch {
	case err == nil:
		if err := os.Remove(temporary); err != nil {
			return err
		}
	case errors.Is(err, fs.ErrExist):
		return err
	default: // a disk without links: the gap between look and rename is unavoidable
		if _, err := os.Lstat(path); err == nil {
			return &fs.PathError{Op: "create", Path: path, Err: fs.ErrExist}
		}
		if err := os.Rename(temporary, path); err != nil {
			return err
		}
	}
	return syncFolder(filepath.Dir(path))
}

// temporaryBeside makes an empty file in the folder of path, so that it can
// get that name later.
func temporaryBeside(path string) (string, error) {
	if _, err := os.Lstat(path); err == nil {
		return "", &fs.PathError{Op: "create", Path: path, Err: fs.ErrExist}
	}
	file, err := os.CreateTemp(filepath.Dir(path), ".sumpter-*.tmp")
	if err != nil {
		return "", err
	}
	return file.Name(), file.Close()
}

func syncFile(path string) error {
	file, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(file.Sync(), file.Close())
}

// syncFolder makes a new name last; Windows has no such call for folders.
func syncFolder(folder string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	file, err := os.Open(folder)
	if err != nil {
		return err
	}
	defer file.Close()
	if err := file.Sync(); err != nil && !errors.Is(err, errors.ErrUnsupported) {
		return err
	}
	return nil
}
