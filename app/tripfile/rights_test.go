//go:build unix

package tripfile

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"sumpter/domain/trip/triptest"
)

// asNobody runs a role without any rights of root, which no permission stops.
func asNobody(t *testing.T, role, path string) (string, error) {
	t.Helper()
	command := second(role, path)
	if os.Geteuid() == 0 {
		program, err := os.ReadFile(os.Args[0]) // go test keeps it where nobody may look
		if err != nil {
			t.Fatal(err)
		}
		folder, err := os.MkdirTemp("", "nobody")
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { os.RemoveAll(folder) })
		command.Path = filepath.Join(folder, "program")
		if err := errors.Join(os.Chmod(folder, 0o755), os.WriteFile(command.Path, program, 0o755)); err != nil {
			t.Fatal(err)
		}
		command.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
		command.Dir = "/"
	}
	output, err := command.CombinedOutput()
	return string(output), err
}

func TestRightsThatAreMissing(t *testing.T) {
	folder, err := os.MkdirTemp("", "rights")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(folder) })
	path := filepath.Join(folder, "tour.trip")
	made(t, path, triptest.Large(3, 3, 1)).Close()
	for _, c := range []struct {
		role            string
		file, directory os.FileMode
		want            error
	}{
		{"open", 0o666, 0o777, nil},
		{"open", 0o444, 0o777, ErrReadOnly},
		{"open", 0o666, 0o555, ErrFolder},
		{"open", 0o000, 0o777, ErrUnreadable},
		{"look", 0o444, 0o555, nil},
		{"look", 0o000, 0o777, ErrUnreadable},
		{"create", 0o666, 0o555, ErrFolder},
	} {
		if err := errors.Join(os.Chmod(path, c.file), os.Chmod(folder, c.directory)); err != nil {
			t.Fatal(err)
		}
		target := path
		if c.role == "create" {
			target = filepath.Join(folder, "new.trip")
		}
		output, err := asNobody(t, c.role, target)
		if c.want == nil && err != nil || c.want != nil && (err == nil || !strings.Contains(output, c.want.Error())) {
			t.Errorf("%s, file %o in folder %o: %q, %v; want %v", c.role, c.file, c.directory, output, err, c.want)
		}
	}
}
