package tripfile

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// sizes are the crew and days of a club trip and of the largest usual one.
var sizes = []struct{ people, days int }{{11, 9}, {60, 21}}

func eachSize(b *testing.B, run func(b *testing.B, people, days int)) {
	for _, size := range sizes {
		b.Run(fmt.Sprintf("%dx%d", size.people, size.days), func(b *testing.B) {
			b.ReportAllocs()
			run(b, size.people, size.days)
		})
	}
}

func BenchmarkCreate(b *testing.B) {
	eachSize(b, func(b *testing.B, people, days int) {
		content := triptest.Large(people, days, 1)
		path := filepath.Join(b.TempDir(), "new.trip")
		for b.Loop() {
			file, err := Create(path, content)
			if err != nil {
				b.Fatal(err)
			}
			b.StopTimer()
			file.Close()
			if info, err := os.Stat(path); err == nil {
				b.ReportMetric(float64(info.Size())/1000, "kB")
			}
			os.Remove(path)
			b.StartTimer()
		}
	})
}

func BenchmarkOpenAndRead(b *testing.B) {
	eachSize(b, func(b *testing.B, people, days int) {
		path := filepath.Join(b.TempDir(), "tour.trip")
		made(b, path, triptest.Large(people, days, 1)).Close()
		for b.Loop() {
			file, err := Open(path)
			if err != nil {
				b.Fatal(err)
			}
			if _, err := file.Read(context.Background()); err != nil {
				b.Fatal(err)
			}
			file.Close()
		}
	})
}

func BenchmarkRead(b *testing.B) {
	eachSize(b, func(b *testing.B, people, days int) {
		file := made(b, filepath.Join(b.TempDir(), "tour.trip"), triptest.Large(people, days, 1))
		for b.Loop() {
			if _, err := file.Read(context.Background()); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// BenchmarkSaveAnEdit is what a leader waits for after each edit.
func BenchmarkSaveAnEdit(b *testing.B) {
	eachSize(b, func(b *testing.B, people, days int) {
		content := triptest.Large(people, days, 1)
		file := made(b, filepath.Join(b.TempDir(), "tour.trip"), content)
		for b.Loop() {
			content.Crew[0].OwnKit += units.Gram
			if err := file.Save(context.Background(), content); err != nil {
				b.Fatal(err)
			}
		}
	})
}
