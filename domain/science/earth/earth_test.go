package earth

import (
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/science/checkvalues"
)

func TestTracksAgainstPublishedFigures(t *testing.T) {
	file, err := os.Open("../../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var profile []float64 // the second row says "same"
	ascent := func(threshold float64) func(checkvalues.Row) any {
		return func(row checkvalues.Row) any {
			if heights := row.Inputs.Numbers(); len(heights) > 0 {
				profile = heights
			}
			up, _ := Climb(profile, threshold)
			return up
		}
	}
	checkvalues.Check(t, file, "gpx", checkvalues.Answers{
		"distance on the mean sphere": func(row checkvalues.Row) any {
			in := row.Inputs
			return Distance(in.Number(0), in.Number(1), in.Number(2), in.Number(3))
		},
		"ascent, no threshold":  ascent(0),
		"ascent, 5 m threshold": ascent(AscentThreshold),
	})
}

func TestDistanceTakesTheShortWay(t *testing.T) {
	if have, want := Distance(0, 179.5, 0, -179.5), Distance(0, 0, 0, 1); math.Abs(have-want) > 1e-6 {
		t.Errorf("across 180 degrees: have %v, want %v", have, want)
	}
	if have, want := Distance(0, 0, 0, 180), math.Pi*meanRadiusM; math.Abs(have-want) > 1e-3 {
		t.Errorf("half around: have %v, want %v", have, want)
	}
}

func TestClimbPassesOverMissingHeights(t *testing.T) {
	missing := math.NaN()
	up, down := Climb([]float64{missing, 100, missing, 120, 90, missing}, 5)
	if up != 20 || down != 30 {
		t.Errorf("have %v up, %v down", up, down)
	}
	if up, down := Climb(nil, 5); up != 0 || down != 0 {
		t.Error("no readings climb nothing")
	}
}

func TestTrackProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		degrees := func(name string, most float64) float64 { return rapid.Float64Range(-most, most).Draw(t, name) }
		a, b := [2]float64{degrees("lat a", 90), degrees("lon a", 180)}, [2]float64{degrees("lat b", 90), degrees("lon b", 180)}
		ab, ba := Distance(a[0], a[1], b[0], b[1]), Distance(b[0], b[1], a[0], a[1])
		if math.Abs(ab-ba) > 1e-6 || ab < 0 || ab > math.Pi*meanRadiusM+1e-6 {
			t.Errorf("have %v and %v", ab, ba)
		}
		heights := rapid.SliceOfN(rapid.Float64Range(0, 3000), 1, 40).Draw(t, "heights")
		threshold := rapid.Float64Range(0, 20).Draw(t, "threshold")
		up, down := Climb(heights, threshold)
		allUp, allDown := Climb(heights, 0)
		if up < 0 || down < 0 || up > allUp+1e-9 || down > allDown+1e-9 {
			t.Errorf("a threshold must not add climbing: %v/%v against %v/%v", up, down, allUp, allDown)
		}
		net := heights[len(heights)-1] - heights[0]
		if math.Abs(allUp-allDown-net) > 1e-6 || math.Abs(up-down-net) > threshold+1e-6 {
			t.Errorf("up less down must give the net climb %v: %v, %v", net, allUp-allDown, up-down)
		}
	})
}

func TestClimbsAddUpToTheClimb(t *testing.T) {
	heights := []float64{100, 103, math.NaN(), 106, 104, 112, 90, 92}
	up, down := Climbs(heights, 5)
	wantUp, wantDown := []float64{0, 0, 0, 6, 6, 12, 12, 12}, []float64{0, 0, 0, 0, 0, 0, 22, 22}
	for i := range heights {
		if up[i] != wantUp[i] || down[i] != wantDown[i] {
			t.Errorf("until reading %d: %v up, %v down; want %v and %v", i, up[i], down[i], wantUp[i], wantDown[i])
		}
	}
	if up, down := Climb(heights, 5); up != 12 || down != 22 {
		t.Errorf("the whole: %v up, %v down", up, down)
	}
	if up, down := Climb(nil, 5); up != 0 || down != 0 {
		t.Errorf("no readings: %v up, %v down", up, down)
	}
}
