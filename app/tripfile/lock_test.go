package tripfile

import (
	"bufio"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"sumpter/domain/trip/triptest"
)

// A test that needs a second program runs this test binary again as one.
const roleVariable, pathVariable = "TRIPFILE_TEST_ROLE", "TRIPFILE_TEST_PATH"

func TestMain(m *testing.M) {
	if role := os.Getenv(roleVariable); role != "" {
		if err := roles[role](os.Getenv(pathVariable)); err != nil {
			fmt.Println(err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	os.Exit(m.Run())
}

var roles = map[string]func(path string) error{
	"open":    func(path string) error { return openAndClose(Open, path) },
	"look":    func(path string) error { return openAndClose(OpenReadOnly, path) },
	"hold":    holdOpen,
	"rewrite": rewriteForEver,
	"create": func(path string) error {
		file, err := Create(path, triptest.Large(2, 2, 1))
		if err == nil {
			file.Close()
		}
		return err
	},
	"write raw": func(path string) error {
		db, err := sql.Open("sqlite", "file:"+path)
		if err != nil {
			return err
		}
		defer db.Close()
		_, err = db.Exec("UPDATE trip SET title = 'Taken over'")
		return err
	},
}

func openAndClose(open func(string) (*File, error), path string) error {
	file, err := open(path)
	if err != nil {
		return err
	}
	return file.Close()
}

// holdOpen opens a file, says so, and closes it when its input ends.
func holdOpen(path string) error {
	file, err := Open(path)
	if err != nil {
		return err
	}
	fmt.Println("open")
	_, _ = io.Copy(io.Discard, os.Stdin)
	return file.Close()
}

// rewriteForEver saves two trips in turn until it is killed.
func rewriteForEver(path string) error {
	file, err := Open(path)
	if err != nil {
		return err
	}
	fmt.Println("open")
	for {
		for seed := range uint64(2) {
			if err := file.Save(context.Background(), triptest.Large(6, 4, seed)); err != nil {
				return err
			}
		}
	}
}

func second(role, path string) *exec.Cmd {
	command := exec.Command(os.Args[0])
	command.Env = append(os.Environ(), roleVariable+"="+role, pathVariable+"="+path)
	return command
}

// started starts a second program that says "open" when it holds the file.
func started(t *testing.T, command *exec.Cmd) {
	t.Helper()
	output, err := command.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	if line, err := bufio.NewReader(output).ReadString('\n'); err != nil || line != "open\n" {
		t.Fatalf("the second program says %q, %v", line, err)
	}
}

func TestOnlyOneProgramHasTheFile(t *testing.T) {
	content := triptest.Large(3, 3, 1)
	file := made(t, filepath.Join(t.TempDir(), "tour.trip"), content)
	wantContent(t, file, content)
	for _, role := range []string{"open", "look"} {
		output, err := second(role, file.Path()).CombinedOutput()
		if err == nil || !strings.Contains(string(output), ErrInUse.Error()) {
			t.Errorf("%s: the second program says %q, %v", role, output, err)
		}
	}
	if output, err := second("write raw", file.Path()).CombinedOutput(); err == nil {
		t.Errorf("another program wrote into the open file: %q", output)
	}
	content.Title = "Mine"
	if err := file.Save(context.Background(), content); err != nil {
		t.Fatal(err)
	}
	wantContent(t, file, content)
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	if output, err := second("open", file.Path()).CombinedOutput(); err != nil {
		t.Errorf("closed, but the second program says %q, %v", output, err)
	}
}

func TestFileThatAnotherProgramHas(t *testing.T) {
	path, _ := closedFile(t)
	holder := second("hold", path)
	input, err := holder.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	started(t, holder)
	_, err = Open(path)
	wantError(t, err, ErrInUse)
	wantPlain(t, err)
	_, err = OpenReadOnly(path)
	wantError(t, err, ErrInUse)
	wantPlain(t, err)
	if err := errors.Join(input.Close(), holder.Wait()); err != nil {
		t.Fatal(err)
	}
	if err := openAndClose(Open, path); err != nil {
		t.Errorf("it is free again, but %v", err)
	}
}

// wantPlain wants to be told who may hold the file, without words of databases.
func wantPlain(t *testing.T, err error) {
	t.Helper()
	text := err.Error()
	for _, word := range []string{"database", "locked", "SQLITE", "busy"} {
		if strings.Contains(text, word) {
			t.Errorf("%q says %q", text, word)
		}
	}
	if !strings.Contains(text, "another computer") || !strings.Contains(text, "Close it there") {
		t.Errorf("%q does not tell who may hold the file and what to do", text)
	}
}

func TestFileThatThisProgramHas(t *testing.T) {
	content := triptest.Large(3, 3, 1)
	file := made(t, filepath.Join(t.TempDir(), "tour.trip"), content)
	_, err := Open(file.Path())
	wantError(t, err, ErrInUse)
	link := filepath.Join(filepath.Dir(file.Path()), "link.trip")
	if err := os.Symlink(file.Path(), link); err == nil {
		_, err = OpenReadOnly(link)
		wantError(t, err, ErrInUse)
	}
	// The refused openings must not have cost the lock.
	if output, err := second("open", file.Path()).CombinedOutput(); err == nil {
		t.Errorf("the lock is gone: %q", output)
	}
	wantContent(t, file, content)
}

// A program that dies while saving leaves the trip as it was before or after.
func TestKilledWhileSaving(t *testing.T) {
	path := filepath.Join(t.TempDir(), "tour.trip")
	made(t, path, triptest.Large(6, 4, 0)).Close()
	for round := range 5 {
		victim := second("rewrite", path)
		started(t, victim)
		time.Sleep(time.Duration(20+13*round) * time.Millisecond)
		if err := victim.Process.Kill(); err != nil {
			t.Fatal(err)
		}
		_ = victim.Wait()
		file, err := Open(path)
		if err != nil {
			t.Fatal(err)
		}
		content, err := file.Read(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(content, triptest.Large(6, 4, 0)) && !reflect.DeepEqual(content, triptest.Large(6, 4, 1)) {
			t.Fatalf("round %d: neither the one trip nor the other: %+v", round, content)
		}
		if err := file.Close(); err != nil {
			t.Fatal(err)
		}
		wantFolder(t, filepath.Dir(path), "tour.trip")
	}
}
