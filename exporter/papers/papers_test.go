package papers

import (
	"bytes"
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"time"

	"sumpter/exporter/plantest"
)

var stamp = time.Date(2026, 3, 4, 5, 6, 7, 0, time.UTC)

func TestWriteFolderWritesEveryPaper(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "new")
	p := plantest.Small()
	if err := WriteFolder(context.Background(), folder, p, stamp); err != nil {
		t.Fatal(err)
	}
	list := List(p, stamp)
	if len(list) < 20 {
		t.Errorf("only %d papers", len(list))
	}
	for _, paper := range list {
		content, err := os.ReadFile(filepath.Join(folder, filepath.FromSlash(paper.Name)))
		if err != nil || len(content) == 0 || paper.What == "" {
			t.Errorf("%s (%s): %d bytes, %v", paper.Name, paper.What, len(content), err)
		}
	}
}

func TestWriteFolderNeverWritesOverAFile(t *testing.T) {
	folder := t.TempDir()
	mine := filepath.Join(folder, "calendar.ics")
	if err := os.WriteFile(mine, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := WriteFolder(context.Background(), folder, plantest.Small(), stamp); !errors.Is(err, fs.ErrExist) {
		t.Errorf("error %v", err)
	}
	if content, _ := os.ReadFile(mine); string(content) != "mine" {
		t.Errorf("the file now holds %q", content)
	}
}

func TestSamePlanSamePapers(t *testing.T) {
	var heard []string
	first, err := Make(context.Background(), plantest.Small(), stamp, func(name string) { heard = append(heard, name) })
	if err != nil {
		t.Fatal(err)
	}
	second, err := Make(context.Background(), plantest.Small(), stamp, nil)
	if err != nil {
		t.Fatal(err)
	}
	for i := range first {
		if !bytes.Equal(first[i].Content, second[i].Content) {
			t.Errorf("%s differs", first[i].Name)
		}
		if heard[i] != first[i].Name {
			t.Errorf("heard %s for %s", heard[i], first[i].Name)
		}
	}
}

func TestCancelledMakesNothing(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	folder := filepath.Join(t.TempDir(), "new")
	if err := WriteFolder(ctx, folder, plantest.Small(), stamp); !errors.Is(err, context.Canceled) {
		t.Errorf("error %v", err)
	}
	if _, err := os.Stat(folder); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the folder was made: %v", err)
	}
}
