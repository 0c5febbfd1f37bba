package route

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"sumpter/app/demo"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// meridian is a GPX of points 1 km apart to the north, with the given heights
// in as many tracks as there are lists; no number: no height.
func meridian(tracks ...[]float64) string {
	var file strings.Builder
	file.WriteString(`<?xml version="1.0"?><gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1">`)
	at := 0
	for i, heights := range tracks {
		fmt.Fprintf(&file, "<trk><name>Stage %d</name><trkseg>", i+1)
		for _, height := range heights {
			fmt.Fprintf(&file, `<trkpt lat="%.7f" lon="8">`, float64(at)*1000/(6371008.8*math.Pi/180))
			if !math.IsNaN(height) {
				fmt.Fprintf(&file, "<ele>%v</ele>", height)
			}
			file.WriteString("</trkpt>")
			at++
		}
		at--
		file.WriteString("</trkseg></trk>")
	}
	file.WriteString("</gpx>")
	return file.String()
}

func level(count int, height float64) []float64 { return slices.Repeat([]float64{height}, count) }

func TestATrackBecomesTheDays(t *testing.T) {
	s := openDemo(t)
	before := s.bench.Trip()
	s.readTrack(writeFile(t, meridian(level(91, 800))))
	if s.beside.Objects[0] != s.track.content || s.track.count != 9 {
		t.Fatalf("the track is not offered in nine days but %d; told %q", s.track.count, s.Said)
	}
	if strings.Count(s.track.preview.Text, "10 km") != 9 {
		t.Errorf("the preview says\n%s", s.track.preview.Text)
	}
	s.track.setCount(10)
	test.Tap(s.track.take)
	s.WantUndo("take the days from a track")
	days := s.days()
	if len(days) != 10 || days[4].Distance != 9000 || days[4].CampHeight != 800 || days[4].Ascent != 0 {
		t.Fatalf("%d days, the fifth %+v", len(days), days[4])
	}
	if days[1].NoFlame != before.Days[1].NoFlame || days[1].Low != before.Days[1].Low || days[1].Name != before.Days[1].Name || len(days[0].Meals) != 3 {
		t.Error("weather, bans and meals did not stay")
	}
	if s.pictures.basis.Content != "from the track" || s.beside.Objects[0] != s.day.content {
		t.Errorf("the picture is %q", s.pictures.basis.Content)
	}
	s.typeInto(1, "Distance", "30")
	if s.pictures.basis.Content == "from the track" {
		t.Error("the days no longer have the length of the track, yet its heights are shown")
	}
	_ = s.Document.Undo()
	_ = s.Document.Undo()
	if !trip.Equal(s.bench.Trip(), before) {
		t.Error("one undo does not take the track back")
	}
}

func TestTracksOfAFileAreDays(t *testing.T) {
	on := demo.Trip()
	for i := range on.Crew {
		on.Crew[i].FirstDay, on.Crew[i].LastDay = 0, 0
	}
	s := openTrip(t, &on)
	s.readTrack(writeFile(t, meridian([]float64{500, 900, 700}, []float64{700, 700}, []float64{700, 400, 400, 400})))
	if !s.track.parts || !s.track.asInFile.Visible() {
		t.Fatal("three tracks are not offered as three days")
	}
	if !strings.Contains(s.track.warning.Content, "9 days") || !strings.Contains(s.track.warning.Content, "last 6") {
		t.Errorf("what goes is not said: %q", s.track.warning.Content)
	}
	test.Tap(s.track.take)
	days := s.days()
	if len(days) != 3 || days[0].Name != "Stage 1" || days[0].Ascent != 400 || days[0].Descent != 200 || days[2].SteepDescent != 300 {
		t.Errorf("days %+v", days)
	}
	for _, cell := range s.bench.Trip().Menu {
		if cell.Day > 3 {
			t.Fatalf("a cell of day %d is left", cell.Day)
		}
	}
	if points := s.bench.Trip().Points; points[0].AfterDay != 3 || points[1].AfterDay != 3 {
		t.Errorf("points after day %d and %d", points[0].AfterDay, points[1].AfterDay)
	}
}

func TestATrackThatLeavesAMemberWithoutADayIsNotTaken(t *testing.T) {
	on := demo.Trip()
	on.Crew[2].FirstDay, on.Crew[2].LastDay = 4, 0
	s := openTrip(t, &on)
	s.readTrack(writeFile(t, meridian([]float64{500, 900}, []float64{700, 700})))
	test.Tap(s.track.take)
	if len(s.days()) != 9 || !strings.Contains(s.Said, "is there on day 4 only") {
		t.Errorf("%d days, told %q", len(s.days()), s.Said)
	}
	if s.beside.Objects[0] != s.track.content {
		t.Error("the track is gone before it was taken")
	}
}

func TestATrackWithoutHeightsLeavesThem(t *testing.T) {
	on := demo.Trip()
	on.Days[0].MovingHours = optional.Of(units.Hours(3))
	s := openTrip(t, &on)
	s.readTrack(writeFile(t, meridian(level(91, math.NaN()))))
	if !strings.Contains(s.track.warning.Content, "no heights") || !strings.Contains(s.track.preview.Text, "?") {
		t.Errorf("warning %q, preview\n%s", s.track.warning.Content, s.track.preview.Text)
	}
	test.Tap(s.track.take)
	if day := s.days()[0]; day.Distance != 10000 || day.Ascent != 420 || day.CampHeight != 460 || day.MovingHours.Known() {
		t.Errorf("day 1 is %+v", day)
	}
	if s.pictures.basis.Content == "from the track" {
		t.Error("a track without heights has no profile")
	}
}

func TestATrackCanBeLeft(t *testing.T) {
	s := openDemo(t)
	before := s.bench.Trip()
	s.readTrack(writeFile(t, meridian(level(5, 100))))
	s.track.close()
	if !trip.Equal(s.bench.Trip(), before) || s.beside.Objects[0] != s.day.content {
		t.Error("leaving it changed something")
	}
	s.readTrack(writeFile(t, "<html></html>"))
	if !strings.Contains(s.Said, "way.gpx") || s.beside.Objects[0] != s.day.content {
		t.Errorf("told %q", s.Said)
	}
	s.readTrack("/nowhere/way.gpx")
	if s.Said == "" {
		t.Error("a missing file is not told")
	}
}

func TestANewTripTakesFairDays(t *testing.T) {
	start, err := units.NewDate(2027, 6, 1)
	if err != nil {
		t.Fatal(err)
	}
	s := openTrip(t, trip.New("x", start))
	s.readTrack(writeFile(t, meridian(level(101, 100)))) // 100 km level: 20 h
	if s.track.count != 4 {
		t.Errorf("20 h are offered in %d days", s.track.count)
	}
	s.track.setCount(0)
	if s.track.count != 1 {
		t.Errorf("there are %d days", s.track.count)
	}
}
