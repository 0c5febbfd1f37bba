package tripfile

import (
	"context"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"sumpter/domain/trip/triptest"
)

// A drive that is pulled out takes its folder along. Nothing is lost in the
// program, the trip can be saved elsewhere, and once the drive is back, there.
func TestDriveThatIsAwayForAWhile(t *testing.T) {
	drive := filepath.Join(t.TempDir(), "drive")
	if err := os.Mkdir(drive, 0o755); err != nil {
		t.Fatal(err)
	}
	content := triptest.Large(3, 2, 1)
	file := made(t, filepath.Join(drive, "tour.trip"), content)
	if err := os.Rename(drive, drive+" away"); err != nil {
		t.Fatal(err)
	}
	before := content.Clone()
	content.Title = "typed while it was away"
	for range 2 {
		wantError(t, file.Save(context.Background(), content), ErrReplaced)
	}
	elsewhere, err := Create(filepath.Join(t.TempDir(), "elsewhere.trip"), content)
	if err != nil {
		t.Fatal(err)
	}
	defer elsewhere.Close()
	wantContent(t, elsewhere, content)
	if err := os.Rename(drive+" away", drive); err != nil {
		t.Fatal(err)
	}
	wantContent(t, file, before)
	if err := file.Save(context.Background(), content); err != nil {
		t.Fatal(err)
	}
	wantContent(t, file, content)
}

// A drive that is pulled out without a word answers every reading and writing
// with an error. What was saved before is whole on it.
func TestDriveThatAnswersWithErrors(t *testing.T) {
	path := filepath.Join(t.TempDir(), "tour.trip")
	content := triptest.Large(3, 2, 1)
	file, err := Create(path, content)
	if err != nil {
		t.Fatal(err)
	}
	broken := breakFiles(t, path)
	if broken == 0 {
		t.Fatal("the program has no file open")
	}
	saved := content.Clone()
	content.Title = "typed after it was pulled"
	for range 2 {
		wantError(t, file.Save(context.Background(), content), ErrDisk)
	}
	_ = file.Close() // cannot succeed
	again, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	wantContent(t, again, saved)
}

// breakFiles puts a pipe in the place of every open file whose name begins so:
// reading and writing at a place fails there. It tells how many there were.
func breakFiles(t *testing.T, start string) int {
	t.Helper()
	reader, writer, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer reader.Close()
	defer writer.Close()
	open, err := os.ReadDir("/proc/self/fd")
	if err != nil {
		t.Fatal(err)
	}
	count := 0
	for _, entry := range open {
		target, err := os.Readlink("/proc/self/fd/" + entry.Name())
		if err != nil || !strings.HasPrefix(target, start) {
			continue
		}
		number, err := strconv.Atoi(entry.Name())
		if err != nil {
			t.Fatal(err)
		}
		if err := syscall.Dup3(int(reader.Fd()), number, syscall.O_CLOEXEC); err != nil {
			t.Fatal(err)
		}
		count++
	}
	return count
}
