package gpx_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/app/importer/gpx"
	"sumpter/domain/units"
)

// metresPerDegree of latitude on the sphere of IUGG's mean radius.
const metresPerDegree = 6371008.8 * math.Pi / 180

// north makes a line along a meridian from distances in metres and heights.
func north(track int, from float64, steps ...[2]float64) gpx.Line {
	line := gpx.Line{Track: track, Name: fmt.Sprint("track ", track)}
	for _, step := range steps {
		line.Points = append(line.Points, gpx.Point{Latitude: (from + step[0]) / metresPerDegree, Longitude: 8, Height: step[1]})
	}
	return line
}

func near(a units.Metres, b, within float64) bool { return math.Abs(float64(a)-b) <= within }

func checkDay(t *testing.T, name string, have gpx.Day, distance, ascent, descent, steep, lunch, camp, hours float64) {
	t.Helper()
	if !near(have.Distance, distance, 0.5) || !near(have.Ascent, ascent, 0.5) || !near(have.Descent, descent, 0.5) || !near(have.SteepDescent, steep, 0.5) ||
		!near(have.LunchHeight, lunch, 0.5) || !near(have.CampHeight, camp, 0.5) || math.Abs(float64(have.Hours)-hours) > 0.001 {
		t.Errorf("%s: have %+v, want %v m, %v up, %v down (%v steep), lunch at %v, camp at %v, %v h", name, have, distance, ascent, descent, steep, lunch, camp, hours)
	}
}

// Naismith in metric form (Langmuir 1984): 5 km/h and an hour for 600 m up.
// 10 km level and 5 km with 600 m up are 2 h each: the cut is between them.
func TestSplitByEqualEffort(t *testing.T) {
	way := gpx.Way{Lines: []gpx.Line{north(0, 0, [2]float64{0, 100}, [2]float64{10000, 100}, [2]float64{15000, 700})}}
	m := way.Measure()
	checkDay(t, "whole", m.Split(1)[0], 15000, 600, 0, 0, 100, 700, 4)
	days := m.Split(2)
	checkDay(t, "level", days[0], 10000, 0, 0, 0, 100, 100, 2)
	checkDay(t, "climb", days[1], 5000, 600, 0, 0, 400, 700, 2)
	if four := m.Split(4); !near(four[1].CampHeight, 100, 0.5) || !near(four[2].CampHeight, 400, 0.5) {
		t.Errorf("in four: %+v", four)
	}
}

func TestSteepDescentIsAbove12Degrees(t *testing.T) {
	// 12 degrees fall 212.6 m a kilometre.
	for _, c := range []struct{ fall, steep float64 }{{200, 0}, {212, 0}, {213, 213}, {300, 300}} {
		way := gpx.Way{Lines: []gpx.Line{north(0, 0, [2]float64{0, 1000}, [2]float64{1000, 1000 - c.fall}, [2]float64{3000, 1000 - c.fall})}}
		checkDay(t, fmt.Sprintf("%v m in 1 km", c.fall), way.Measure().Split(1)[0], 3000, 0, c.fall, c.steep, 1000-c.fall, 1000-c.fall, 0.6)
	}
}

// A height that jumps within a few metres is noise of the reading, not a cliff.
func TestNoiseIsNotSteep(t *testing.T) {
	var steps [][2]float64
	for i := range 400 {
		steps = append(steps, [2]float64{float64(5 * i), 500 + float64(i%2)*4.9})
	}
	way := gpx.Way{Lines: []gpx.Line{north(0, 0, steps...)}}
	if day := way.Measure().Split(1)[0]; day.Ascent != 0 || day.Descent != 0 || day.SteepDescent != 0 {
		t.Errorf("level ground with noise of 4.9 m: %+v", day)
	}
}

func TestMissingHeightsAreNotZero(t *testing.T) {
	none := math.NaN()
	way := gpx.Way{Lines: []gpx.Line{north(0, 0, [2]float64{0, none}, [2]float64{1000, 1000}, [2]float64{2000, none}, [2]float64{3000, 1600}, [2]float64{4000, none})}}
	m := way.Measure()
	checkDay(t, "gaps", m.Split(1)[0], 4000, 600, 0, 0, 1300, 1600, 0.8+1)
	if !m.HeightsKnown {
		t.Error("the heights there are count as known")
	}
	way = gpx.Way{Lines: []gpx.Line{north(0, 0, [2]float64{0, none}, [2]float64{1000, none})}}
	if m := way.Measure(); m.HeightsKnown || m.Profile(100) != nil {
		t.Error("no heights at all must be told and not drawn")
	}
}

func TestPartsAreTracksOrSegments(t *testing.T) {
	a, b, c := [2]float64{0, 100}, [2]float64{1000, 100}, [2]float64{2000, 400}
	tracks := gpx.Way{Lines: []gpx.Line{north(0, 0, a, b), north(0, 1500, a, b), north(1, 9000, a, c)}}
	m := tracks.Measure()
	days := m.Parts()
	if len(days) != 2 || !m.Tracks() {
		t.Fatalf("two tracks make %d days", len(days))
	}
	checkDay(t, "track of two segments", days[0], 2000, 0, 0, 0, 100, 100, 0.4)
	checkDay(t, "second track", days[1], 2000, 300, 0, 0, 100+300*0.5, 400, 0.9)
	if days[0].Name != "track 0" || days[1].Name != "track 1" {
		t.Errorf("names %q and %q", days[0].Name, days[1].Name)
	}
	segments := gpx.Way{Lines: []gpx.Line{north(0, 0, a, b), north(0, 5000, [2]float64{0, 700}, [2]float64{500, 700})}}
	m = segments.Measure()
	if days := m.Parts(); len(days) != 2 || m.Tracks() || !near(days[1].Distance, 500, 0.5) || days[0].Name != "" {
		t.Errorf("segments of one track: %+v", days)
	} else if days[0].Ascent+days[1].Ascent != 0 {
		t.Errorf("nobody climbed the gap between segments: %+v", days)
	}
}

func TestAcrossTheAntimeridian(t *testing.T) {
	way, err := gpx.Read(strings.NewReader(oldRoute))
	if err != nil {
		t.Fatal(err)
	}
	// 0.2 degrees along the parallel of 0.5 degrees south.
	want := 0.2 * metresPerDegree * math.Cos(0.5*math.Pi/180)
	if have := way.Measure().Length(); !near(have, want, 1) {
		t.Errorf("have %v m, want %v", have, want)
	}
}

func TestProfileKeepsTheSummit(t *testing.T) {
	var steps [][2]float64
	for i := range 10000 {
		steps = append(steps, [2]float64{float64(10 * i), 500})
	}
	steps[7213][1], steps[2222][1] = 3000, 20
	way := gpx.Way{Lines: []gpx.Line{north(0, 0, steps...)}}
	profile := way.Measure().Profile(200)
	low, high := profile[0].Height, profile[0].Height
	for i, spot := range profile {
		low, high = min(low, spot.Height), max(high, spot.Height)
		if i > 0 && spot.Distance < profile[i-1].Distance {
			t.Fatalf("spot %d goes back", i)
		}
	}
	if len(profile) > 200 || low != 20 || high != 3000 || !near(profile[len(profile)-1].Distance, 99990, 1) {
		t.Errorf("%d spots from %v to %v m, the last at %v", len(profile), low, high, profile[len(profile)-1].Distance)
	}
}

// The days add up to the way and take the same time, wherever it leads.
func TestDaysAddUpToTheWay(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		lines := rapid.SliceOfN(rapid.SliceOfN(rapid.Custom(func(t *rapid.T) gpx.Point {
			return gpx.Point{
				Latitude: rapid.Float64Range(-1, 1).Draw(t, "lat"), Longitude: rapid.Float64Range(-1, 1).Draw(t, "lon"),
				Height: rapid.SampledFrom([]float64{math.NaN(), 0, 300, 306, 1200, 2400}).Draw(t, "height"),
			}
		}), 2, 12), 1, 3).Draw(rt, "lines")
		way := gpx.Way{}
		for i, points := range lines {
			way.Lines = append(way.Lines, gpx.Line{Track: i / 2, Points: points})
		}
		m := way.Measure()
		whole := m.Split(1)[0]
		days := m.Split(rapid.IntRange(1, 9).Draw(rt, "days"))
		var sum gpx.Day
		for i, day := range days {
			sum.Distance, sum.Ascent, sum.Descent, sum.Hours = sum.Distance+day.Distance, sum.Ascent+day.Ascent, sum.Descent+day.Descent, sum.Hours+day.Hours
			if want := float64(whole.Hours) / float64(len(days)); math.Abs(float64(day.Hours)-want) > 1e-6*want+1e-9 {
				rt.Fatalf("day %d takes %v h, want %v", i+1, day.Hours, want)
			}
		}
		if !near(sum.Distance, float64(whole.Distance), 1e-3) || !near(sum.Ascent, float64(whole.Ascent), 1e-3) || !near(sum.Descent, float64(whole.Descent), 1e-3) {
			rt.Fatalf("the days make %+v, the way is %+v", sum, whole)
		}
	})
}
