package papers

import (
	"bytes"
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"sumpter/domain/plan"
	"sumpter/exporter/plantest"
	"sumpter/exporter/print/prints"
)

var stamp = time.Date(2026, 3, 4, 5, 6, 7, 0, time.UTC)

func writeAll(ctx context.Context, folder string, p *plan.Plan) error {
	made, err := Make(ctx, List(p, stamp, prints.Options{}), nil)
	if err != nil {
		return err
	}
	return WriteFolder(ctx, folder, made)
}

func TestWriteFolderWritesEveryPaper(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "new")
	p := plantest.Small()
	if err := writeAll(context.Background(), folder, p); err != nil {
		t.Fatal(err)
	}
	list := List(p, stamp, prints.Options{})
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
	if err := writeAll(context.Background(), folder, plantest.Small()); !errors.Is(err, fs.ErrExist) {
		t.Errorf("error %v", err)
	}
	if content, _ := os.ReadFile(mine); string(content) != "mine" {
		t.Errorf("the file now holds %q", content)
	}
}

func TestSamePlanSamePapers(t *testing.T) {
	var heard []string
	first, err := Make(context.Background(), List(plantest.Small(), stamp, prints.Options{}), func(paper Paper) { heard = append(heard, paper.Name) })
	if err != nil {
		t.Fatal(err)
	}
	second, err := Make(context.Background(), List(plantest.Small(), stamp, prints.Options{}), nil)
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
	if err := writeAll(ctx, folder, plantest.Small()); !errors.Is(err, context.Canceled) {
		t.Errorf("error %v", err)
	}
	if _, err := os.Stat(folder); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the folder was made: %v", err)
	}
}

func TestPapersThatAPlanHasNothingOfAreLeftOut(t *testing.T) {
	for _, paper := range List(plantest.Empty(), stamp, prints.Options{}) {
		for _, none := range []string{"print/bag-labels.pdf", "print/box-labels.pdf", "print/pocket-cards.pdf"} {
			if paper.Name == none {
				t.Errorf("an empty plan has %s", none)
			}
		}
	}
}

func TestLettersThatCannotBePrintedAreNoted(t *testing.T) {
	made, err := Make(context.Background(), List(plantest.Small(), stamp, prints.Options{}), nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, paper := range made {
		if paper.Name == "print/pocket-cards.pdf" && !strings.Contains(paper.Note.String(), "U+7F8E") {
			t.Errorf("the note of %s says %q", paper.Name, paper.Note)
		}
	}
}
