package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"sumpter/app/document"
	"sumpter/app/tripfile"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// These tests kill the program at random moments and look at what is left.
// SUMPTER_KILLS sets how often each does; the gate takes a few.

// asProgram makes this test binary behave as the program itself; asEditor as
// somebody at the window who types without pause.
const asProgram, asEditor = "SUMPTER_TEST_AS_PROGRAM", "SUMPTER_TEST_AS_EDITOR"

func TestMain(m *testing.M) {
	switch {
	case os.Getenv(asProgram) != "":
		main()
	case os.Getenv(asEditor) != "":
		if err := editForEver(os.Getenv(asEditor)); err != nil {
			fmt.Println(err)
			os.Exit(1)
		}
	}
	os.Exit(m.Run())
}

// editForEver edits a trip through the open document and says each edit that
// the document says is saved.
func editForEver(path string) error {
	file, err := tripfile.Open(path)
	if err != nil {
		return err
	}
	t, err := file.Read(context.Background())
	if err != nil {
		return err
	}
	queue := make(chan func(), 100)
	d := document.New(t, file, document.Threads{Post: func(f func()) { queue <- f }})
	saved := false
	d.OnSaved(func(err error) { saved = err == nil })
	fmt.Println("open")
	for n := 1; ; n++ {
		err := d.Edit("type", func(t *trip.Trip) error {
			t.Title = strconv.Itoa(n)
			t.Notes = strings.Repeat(strconv.Itoa(n)+" ", 200)
			t.Crew[n%len(t.Crew)].Notes = strconv.Itoa(n)
			return nil
		})
		if err != nil {
			return err
		}
		for saved = false; !saved; {
			(<-queue)()
		}
		fmt.Println("saved", n)
	}
}

func kills(t *testing.T) int {
	n, err := strconv.Atoi(os.Getenv("SUMPTER_KILLS"))
	if err != nil {
		return 4
	}
	return n
}

// killed starts the program and kills it after a while; true if it was not
// done by then.
func killed(t *testing.T, after time.Duration, role string, arguments ...string) bool {
	t.Helper()
	command := exec.Command(os.Args[0], arguments...)
	command.Env = append(os.Environ(), role)
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	timer := time.AfterFunc(after, func() { _ = command.Process.Kill() })
	defer timer.Stop()
	return command.Wait() != nil
}

// wholeTrip opens a trip file and reads it.
func wholeTrip(t *testing.T, path string) *trip.Trip {
	t.Helper()
	file, err := tripfile.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	content, err := file.Read(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	return content
}

// spread gives moments over the whole of what a command takes, measured once.
func spread(t *testing.T, run func() bool) []time.Duration {
	t.Helper()
	start := time.Now()
	run()
	took := time.Since(start)
	chance := rand.New(rand.NewPCG(1, 2))
	var moments []time.Duration
	for range kills(t) {
		moments = append(moments, time.Duration(chance.Int64N(int64(took))))
	}
	return moments
}

func TestKilledWhileEditing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "tour.trip")
	file, err := tripfile.Create(path, triptest.Large(4, 3, 1))
	if err != nil {
		t.Fatal(err)
	}
	file.Close()
	chance := rand.New(rand.NewPCG(3, 4))
	for range kills(t) {
		command := exec.Command(os.Args[0])
		command.Env = append(os.Environ(), asEditor+"="+path)
		output, err := command.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := command.Start(); err != nil {
			t.Fatal(err)
		}
		lines := bufio.NewScanner(output)
		if !lines.Scan() || lines.Text() != "open" {
			t.Fatalf("the editor says %q", lines.Text())
		}
		time.AfterFunc(time.Duration(chance.IntN(120))*time.Millisecond, func() { _ = command.Process.Kill() })
		finished := 0
		for lines.Scan() {
			if word, number, _ := strings.Cut(lines.Text(), " "); word == "saved" {
				finished, _ = strconv.Atoi(number)
			}
		}
		_ = command.Wait()
		left := wholeTrip(t, path)
		n, err := strconv.Atoi(left.Title)
		if finished > 0 && (err != nil || n < finished) {
			t.Fatalf("edit %d was saved, the file holds %q", finished, left.Title)
		}
		if n > 0 && (left.Notes != strings.Repeat(left.Title+" ", 200) || left.Crew[n%len(left.Crew)].Notes != left.Title) {
			t.Fatalf("half of edit %d is in the file", n)
		}
	}
}

func TestKilledWhileImporting(t *testing.T) {
	folder := t.TempDir()
	workbook := filepath.Join(folder, "in.xlsx")
	if code := runIn(t, "demo", filepath.Join(folder, "demo.trip")); code != 0 {
		t.Fatal("no demo")
	}
	if code := runIn(t, "export", filepath.Join(folder, "demo.trip"), filepath.Join(folder, "papers")); code != 0 {
		t.Fatal("no papers")
	}
	content, err := os.ReadFile(filepath.Join(folder, "papers", "trip.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(workbook, content, 0o600); err != nil {
		t.Fatal(err)
	}
	want := filepath.Join(folder, "out.trip")
	moments := spread(t, func() bool { return killed(t, time.Minute, asProgram+"=1", "import", workbook, want) })
	if len(wholeTrip(t, want).Crew) != 11 {
		t.Fatal("nothing is imported even when left alone")
	}
	for _, after := range moments {
		if err := os.Remove(want); err != nil && !errors.Is(err, fs.ErrNotExist) {
			t.Fatal(err)
		}
		killed(t, after, asProgram+"=1", "import", workbook, want)
		if _, err := os.Stat(want); err == nil && len(wholeTrip(t, want).Crew) != 11 {
			t.Fatalf("killed after %v: half a trip", after)
		}
	}
}

func TestKilledWhileExporting(t *testing.T) {
	folder := t.TempDir()
	path, want := filepath.Join(folder, "demo.trip"), filepath.Join(folder, "papers")
	if code := runIn(t, "demo", path); code != 0 {
		t.Fatal("no demo")
	}
	moments := spread(t, func() bool { return killed(t, time.Minute, asProgram+"=1", "export", path, want) })
	papers := filesOf(t, want)
	if len(papers) < 20 {
		t.Fatalf("only %d papers", len(papers))
	}
	for _, after := range moments {
		if err := os.RemoveAll(want); err != nil {
			t.Fatal(err)
		}
		killed(t, after, asProgram+"=1", "export", path, want)
		for name, content := range filesOf(t, want) {
			if !strings.Contains(name, ".sumpter-") && content != papers[name] {
				t.Fatalf("killed after %v: %s is not whole", after, name)
			}
		}
	}
}

// A file of the first version is either still that or already the present
// one, with its backup.
func TestKilledWhileMigrating(t *testing.T) {
	old, err := os.ReadFile(filepath.Join("..", "..", "app", "tripfile", "testdata", "version-1.trip"))
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	path := filepath.Join(folder, "tour.trip")
	migrate := func(after time.Duration) bool {
		if err := os.WriteFile(path, old, 0o600); err != nil {
			t.Fatal(err)
		}
		return killed(t, after, asProgram+"=1", "check", path)
	}
	for _, after := range spread(t, func() bool { return migrate(time.Minute) }) {
		migrate(after)
		if content := wholeTrip(t, path); len(content.Crew) != 11 {
			t.Fatalf("killed after %v: half a trip", after)
		}
		backups, err := filepath.Glob(filepath.Join(folder, "tour (version 1*).trip"))
		if err != nil || len(backups) == 0 {
			t.Fatalf("killed after %v: no backup, %v", after, err)
		}
		for _, backup := range backups {
			content, err := os.ReadFile(backup)
			if err != nil || len(content) < len(old)/2 {
				t.Fatalf("killed after %v: %s has %d bytes, %v", after, backup, len(content), err)
			}
		}
		for _, leftover := range slices.Concat(backups, []string{path, path + "-journal"}) {
			_ = os.Remove(leftover)
		}
	}
}

func runIn(t *testing.T, arguments ...string) int {
	t.Helper()
	var out, complaints strings.Builder
	code := run(context.Background(), arguments, console{out: &out, err: &complaints})
	if code != 0 {
		t.Log(out.String(), complaints.String())
	}
	return code
}

func filesOf(t *testing.T, folder string) map[string]string {
	t.Helper()
	found := map[string]string{}
	err := filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		if errors.Is(err, fs.ErrNotExist) {
			return nil
		}
		if err != nil || entry.IsDir() {
			return err
		}
		content, err := os.ReadFile(path)
		name, _ := filepath.Rel(folder, path)
		found[name] = string(content)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return found
}
