package fairsplit

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"
)

// exportedCase is an invented crew with what this package makes of it, for
// testdata/solvers/fairsplit_milp.py to compare with.
type exportedCase struct {
	Name    string
	Problem Problem
	Ours    struct {
		Feasible, Proven bool
		BestR1, R1, S    float64
		BoundR1, BoundS  float64
		LevelR1, LevelS  float64
		Seconds          float64
	}
}

// TestExportCases writes invented crews and their splits into the directory named by
// FAIRSPLIT_EXPORT, and does nothing without it.
func TestExportCases(t *testing.T) {
	dir := os.Getenv("FAIRSPLIT_EXPORT")
	if dir == "" {
		t.Skip("FAIRSPLIT_EXPORT names no directory")
	}
	for _, c := range []struct {
		members, days int
		tight         []binding
		seed          uint64
	}{
		{4, 3, []binding{tightMass, tightRoom, tightClass, tightAll}, 200},
		{4, 3, []binding{tightRoom, tightAll}, 201},
		{12, 7, []binding{loose, tightMass, tightRoom, tightAll}, 200},
		{12, 7, []binding{tightAll}, 201},
		{24, 14, []binding{tightRoom, tightAll}, 200},
	} {
		for _, tight := range c.tight {
			x := exportCase(t, inventCrew(c.seed, c.members, c.days, tight))
			x.Name = fmt.Sprintf("%dx%d-%v-%d", c.members, c.days, tight, c.seed)
			text, err := json.Marshal(x)
			if err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(filepath.Join(dir, x.Name+".json"), text, 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

func exportCase(t *testing.T, p Problem) exportedCase {
	t.Helper()
	c := exportedCase{Problem: p}
	start := time.Now()
	r, err := Solve(context.Background(), p, Options{Workers: 2})
	if err != nil {
		t.Fatal(err)
	}
	c.Ours.Seconds = time.Since(start).Seconds()
	c.Ours.Feasible, c.Ours.Proven = r.Feasible, r.Proven
	c.Ours.BestR1, _ = r.BestR1.Float64()
	c.Ours.R1, _ = r.R1.Float64()
	c.Ours.S, _ = r.S.Float64()
	c.Ours.BoundR1, _ = r.R1Bound.Float64()
	c.Ours.BoundS, _ = r.SBound.Float64()
	hours := 0.0
	for d, day := range r.Days {
		level, _ := day.Level.Float64()
		c.Ours.LevelS += level * float64(p.HoursTenths[d])
		hours += float64(p.HoursTenths[d])
		if d == 0 {
			c.Ours.LevelR1 = level
		}
	}
	c.Ours.LevelS /= hours
	return c
}
