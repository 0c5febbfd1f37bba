package gpx_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"sumpter/app/importer/gpx"
)

// Files written by hand after the GPX 1.1 and 1.0 schemas (from memory).
const (
	twoTracks = `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="by hand" xmlns="http://www.topografix.com/GPX/1/1" xmlns:x="urn:example:extension">
  <metadata><name>whole walk</name><bounds minlat="46" minlon="8" maxlat="47" maxlon="9"/></metadata>
  <wpt lat="46.5" lon="8.5"><ele>1</ele><name>spring</name></wpt>
  <rte><name>a plan</name><rtept lat="1" lon="1"/><rtept lat="2" lon="2"/></rte>
  <trk><name> Up &amp; over
    the pass </name>
    <trkseg>
      <trkpt lat="46.0000" lon="8.0000"><ele>1000</ele><time>2026-07-20T08:00:00Z</time></trkpt>
      <trkpt lat="46.0100" lon="8.0000"><extensions><x:ele>7</x:ele><x:hr>120</x:hr></extensions></trkpt>
      <trkpt lat="46.0200" lon="8.0000"><ele>1200.5</ele></trkpt>
    </trkseg>
    <trkseg><trkpt lat="46.03" lon="8"><ele>1300</ele></trkpt><trkpt lat="46.04" lon="8"><ele></ele></trkpt></trkseg>
    <trkseg><trkpt lat="46.03" lon="8"/></trkseg>
  </trk>
  <trk><trkseg><trkpt lat="46.05" lon="8"><ele>-32768</ele></trkpt><trkpt lat="46.06" lon="8"><ele>900</ele></trkpt></trkseg><name>Down</name></trk>
</gpx>`
	oldRoute = `<?xml version="1.0" encoding="ISO-8859-1"?>
<gpx version="1.0" creator="by hand" xmlns="http://www.topografix.com/GPX/1/0"><rte><name>H` + "\xfc" + `tte</name><number>1</number>
<rtept lat="-0.5" lon="179.9"><ele>10</ele></rtept><rtept lat="-0.5" lon="-179.9"><ele>20</ele></rtept></rte></gpx>`
	prefixed = `<g:gpx xmlns:g="http://www.topografix.com/GPX/1/1" version="1.1"><g:trk><g:trkseg><g:trkpt lat="0" lon="0"><g:ele>5</g:ele></g:trkpt><g:trkpt lat="0" lon="1"/></g:trkseg></g:trk></g:gpx>`
)

// written shows a way so that it can be compared.
func written(w *gpx.Way) string {
	var words []string
	for _, line := range w.Lines {
		words = append(words, fmt.Sprintf("%d %q", line.Track, line.Name))
		for _, p := range line.Points {
			words = append(words, fmt.Sprintf("%v,%v,%v", p.Latitude, p.Longitude, p.Height))
		}
	}
	return strings.Join(words, " ")
}

func TestReadByTheStandard(t *testing.T) {
	for _, c := range []struct{ name, file, want string }{
		{"two tracks", twoTracks, `0 "Up & over the pass" 46,8,1000 46.01,8,NaN 46.02,8,1200.5 0 "Up & over the pass" 46.03,8,1300 46.04,8,NaN 1 "Down" 46.05,8,NaN 46.06,8,900`},
		{"a route of version 1.0, in Latin-1", oldRoute, `0 "Hütte" -0.5,179.9,10 -0.5,-179.9,20`},
		{"names with a prefix", prefixed, `0 "" 0,0,5 0,1,NaN`},
	} {
		way, err := gpx.Read(strings.NewReader(c.file))
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if have := written(way); have != c.want {
			t.Errorf("%s:\nhave %s\nwant %s", c.name, have, c.want)
		}
	}
}

func TestReadRefuses(t *testing.T) {
	track := func(points string) string {
		return `<gpx version="1.1"><trk><trkseg>` + points + `</trkseg></trk></gpx>`
	}
	for _, c := range []struct{ name, file, says string }{
		{"nothing", "", "ends too early"},
		{"another file", "name,lat\n", "ends too early"},
		{"another vocabulary", "<kml></kml>", "right file"},
		{"cut off", strings.TrimSuffix(prefixed, "</g:gpx>"), "too early"},
		{"cut off in a tag", prefixed[:120], "not a whole GPX file"},
		{"crossed", "<gpx><trk></gpx></trk>", "not open"},
		{"two roots", "<gpx></gpx><gpx></gpx>", "one <gpx>"},
		{"only places", `<gpx><wpt lat="1" lon="1"><name>x</name></wpt></gpx>`, "no track"},
		{"one point", track(`<trkpt lat="1" lon="1"/>`), "no track"},
		{"no longitude", track("\n\n" + `<trkpt lat="1"/>`), "line 3: a point has no lon"},
		{"off the globe", track(`<trkpt lat="90.1" lon="1"/>`), "degrees from -90 to 90"},
		{"not a number", track(`<trkpt lat="NaN" lon="1"/>`), `lat is "NaN"`},
		{"endless", track(`<trkpt lat="1" lon="Inf"/>`), `lon is "Inf"`},
		{"entities that grow", `<!DOCTYPE gpx [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><gpx><trk><name>&b;</name></trk></gpx>`, "document type"},
		{"a file from the disk", `<!DOCTYPE gpx SYSTEM "file:///etc/hostname"><gpx></gpx>`, "document type"},
		{"an entity nobody declared", `<gpx><trk><name>&b;</name></trk></gpx>`, "not a whole GPX file"},
		{"nested", strings.Repeat("<gpx>", 100), "deeper than"},
		{"an encoding", `<?xml version="1.0" encoding="UTF-16"?><gpx></gpx>`, "UTF-8"},
	} {
		way, err := gpx.Read(strings.NewReader(c.file))
		if err == nil {
			t.Errorf("%s: read as %+v", c.name, way)
			continue
		}
		if !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: says %q, want %q in it", c.name, err, c.says)
		}
	}
	if _, err := gpx.Read(strings.NewReader(track(""))); !errors.Is(err, gpx.ErrNoWay) {
		t.Errorf("an empty track: %v", err)
	}
}

// repeated gives a text so many times without holding it.
type repeated struct {
	text string
	at   int
	left int
}

func (r *repeated) Read(into []byte) (int, error) {
	if r.left == 0 {
		return 0, errors.New("read past the bound")
	}
	n := copy(into, r.text[r.at:])
	if r.at += n; r.at == len(r.text) {
		r.at, r.left = 0, r.left-1
	}
	return n, nil
}

func TestReadKeepsItsBounds(t *testing.T) {
	const start = "<gpx><trk><trkseg>"
	points := &repeated{text: `<trkpt lat="1" lon="1"/>`, left: gpx.MaxPoints + 2}
	_, err := gpx.Read(strings.NewReader(start))
	if err == nil {
		t.Fatal("cut off, yet read")
	}
	if _, err := gpx.Read(join(start, points)); err == nil || !strings.Contains(err.Error(), "more than 500000 points") {
		t.Errorf("too many points: %v", err)
	}
	blank := &repeated{text: strings.Repeat(" ", 1<<16), left: gpx.MaxBytes>>16 + 2}
	if _, err := gpx.Read(join(start, blank)); err == nil || !strings.Contains(err.Error(), "larger than 64 MB") {
		t.Errorf("too many bytes: %v", err)
	}
}

type joined struct {
	start *strings.Reader
	rest  *repeated
}

func join(start string, rest *repeated) *joined { return &joined{strings.NewReader(start), rest} }

func (j *joined) Read(into []byte) (int, error) {
	if j.start.Len() > 0 {
		return j.start.Read(into)
	}
	return j.rest.Read(into)
}

// Whatever is in a file: no panic, and what is read lies on the globe and can
// be measured and cut.
func FuzzRead(f *testing.F) {
	for _, seed := range []string{twoTracks, oldRoute, prefixed, "", "<gpx/>", `<!DOCTYPE gpx><gpx></gpx>`} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, file []byte) {
		way, err := gpx.Read(strings.NewReader(string(file)))
		if err != nil {
			return
		}
		for _, line := range way.Lines {
			if len(line.Points) < 2 {
				t.Fatalf("a line of %d points", len(line.Points))
			}
			for _, p := range line.Points {
				if !(math.Abs(p.Latitude) <= 90 && math.Abs(p.Longitude) <= 180) || p.Height < -500 || p.Height > 9000 {
					t.Fatalf("%+v is not on the ground", p)
				}
			}
		}
		m := way.Measure()
		for _, days := range [][]gpx.Day{m.Split(3), m.Parts()} {
			sum := 0.0
			for _, day := range days {
				figures := []float64{float64(day.Distance), float64(day.Ascent), float64(day.Descent), float64(day.SteepDescent), float64(day.Hours)}
				if slices.ContainsFunc(figures, func(x float64) bool { return !(x >= 0) || math.IsInf(x, 0) }) || day.SteepDescent > day.Descent {
					t.Fatalf("a day of %+v", day)
				}
				sum += float64(day.Distance)
			}
			if math.Abs(sum-float64(m.Length())) > 1e-6*math.Max(1, sum) {
				t.Fatalf("the days make %v m, the way has %v", sum, m.Length())
			}
		}
	})
}
