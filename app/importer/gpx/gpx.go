// Package gpx reads the way of a trip from GPX 1.0 and 1.1 files, the open
// format of satellite receivers and maps, and cuts it into days on foot. It
// reads tracks and routes and passes over the rest.
//
// Read gives the way as it is in the file, Measure what walking it means, and
// Measured.Split the days.
//
// Source of the format: the GPX 1.1 schema, http://www.topografix.com/GPX/1/1
// (names, nesting and ranges from memory).
package gpx

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Bounds of a file. A week recorded every second has some 200,000 points.
const (
	MaxBytes  = 64 << 20
	MaxPoints = 500_000

	mostDepth = 64
	mostText  = 1000 // bytes of a name or height that are looked at
	mostName  = trip.MaxNameRunes
)

// Heights outside these are marks for "no reading" or faults: no ground lies there.
const lowestGround, highestGround = -500, 9000

// Way is the lines of a file in their order.
type Way struct {
	Lines []Line
}

// Line is one unbroken piece: a segment of a track, or a route.
type Line struct {
	Track  int    // which track or route of the file it belongs to, from 0
	Name   string // of that track or route; may be empty
	Points []Point
}

// Point is one place of a line.
type Point struct {
	Latitude, Longitude float64 // degrees
	Height              float64 // metres above the sea; NaN: not known, which is not zero
}

// ErrNoWay is returned for a file without a track or route of two points.
var ErrNoWay = prose.Errorf("the file holds no track and no route, only single places or nothing: save the way itself as a track")

// Read reads a GPX file. Tracks count; only without any do routes. It refuses
// what is no GPX, declares entities, or passes the bounds, and says in which line.
func Read(r io.Reader) (*Way, error) {
	limited := &io.LimitedReader{R: r, N: MaxBytes + 1}
	p := &parser{decoder: xml.NewDecoder(limited)}
	p.decoder.CharsetReader = charset
	for {
		token, err := p.decoder.RawToken()
		if limited.N <= 0 {
			return nil, prose.Errorf("the file is larger than %d MB: save only the way of this trip", MaxBytes>>20)
		}
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, prose.Errorf("this is not a whole GPX file: %s", err)
		}
		if err := p.take(token); err != nil {
			line, _ := p.decoder.InputPos()
			return nil, prose.Errorf("line %d: %s", line, err)
		}
	}
	return p.way()
}

// parser follows the nesting of a file.
type parser struct {
	decoder *xml.Decoder
	names   []string // of the open elements, with their prefix
	prefix  string   // of the root
	began   bool
	count   int

	tracks, routes []Line
	current        *Line
	track, route   int // numbers of the open ones
	name           string
	text           strings.Builder
	reading        bool // the text of the open element matters
}

func (p *parser) take(token xml.Token) error {
	switch token := token.(type) {
	case xml.StartElement:
		return p.open(token)
	case xml.EndElement:
		return p.close(token)
	case xml.CharData:
		if p.reading && p.text.Len() < mostText {
			p.text.Write(token[:min(len(token), mostText)])
		}
	case xml.Directive:
		return prose.Errorf("it declares a document type or entities, which GPX never needs: the file is not read")
	}
	return nil
}

func (p *parser) open(element xml.StartElement) error {
	if len(p.names) >= mostDepth {
		return prose.Errorf("it is nested deeper than %d levels", mostDepth)
	}
	if len(p.names) == 0 {
		if p.began || element.Name.Local != "gpx" {
			return prose.Errorf("it holds <%s> where GPX has one <gpx>: is it the right file?", shown(element.Name.Local))
		}
		p.began, p.prefix = true, element.Name.Space
	}
	p.names = append(p.names, join(element.Name))
	p.reading = false
	switch p.path() {
	case "trk":
		p.name = ""
	case "trk/trkseg":
		p.current = &Line{Track: p.track, Name: p.name}
	case "rte":
		p.current = &Line{Track: p.route}
	case "trk/trkseg/trkpt", "rte/rtept":
		return p.point(element.Attr)
	case "trk/name", "rte/name", "trk/trkseg/trkpt/ele", "rte/rtept/ele":
		p.text.Reset()
		p.reading = true
	}
	return nil
}

func (p *parser) close(element xml.EndElement) error {
	if len(p.names) == 0 || p.names[len(p.names)-1] != join(element.Name) {
		return prose.Errorf("</%s> closes what is not open", shown(element.Name.Local))
	}
	switch p.path() {
	case "trk/trkseg":
		p.tracks = append(p.tracks, *p.current)
		p.current = nil
	case "trk":
		p.nameTrack()
		p.track++
	case "rte":
		p.routes = append(p.routes, *p.current)
		p.route, p.current = p.route+1, nil
	case "trk/name":
		p.name = p.trimmed()
	case "rte/name":
		p.current.Name = p.trimmed()
	case "trk/trkseg/trkpt/ele", "rte/rtept/ele":
		p.current.Points[len(p.current.Points)-1].Height = heightOf(p.trimmed())
	}
	p.reading = false
	p.names = p.names[:len(p.names)-1]
	return nil
}

// nameTrack gives the open track's name to its segments: it may stand behind them.
func (p *parser) nameTrack() {
	for i := range p.tracks {
		if p.tracks[i].Track == p.track {
			p.tracks[i].Name = p.name
		}
	}
}

// path names the open elements below the root, if all are of the root's
// vocabulary: what extensions hold is passed over.
func (p *parser) path() string {
	if len(p.names) < 2 || len(p.names) > 5 {
		return ""
	}
	path := strings.Join(p.names[1:], "/")
	if p.prefix != "" {
		return strings.ReplaceAll("/"+path, "/"+p.prefix+":", "/")[1:]
	}
	return path
}

func join(name xml.Name) string {
	if name.Space == "" {
		return name.Local
	}
	return name.Space + ":" + name.Local
}

func (p *parser) point(attributes []xml.Attr) error {
	if p.count++; p.count > MaxPoints {
		return prose.Errorf("there are more than %d points: thin the way out first", MaxPoints)
	}
	latitude, errLatitude := degrees(attributes, "lat", 90)
	longitude, errLongitude := degrees(attributes, "lon", 180)
	if err := errors.Join(errLatitude, errLongitude); err != nil {
		return err
	}
	p.current.Points = append(p.current.Points, Point{Latitude: latitude, Longitude: longitude, Height: math.NaN()})
	return nil
}

func degrees(attributes []xml.Attr, name string, most float64) (float64, error) {
	for _, attribute := range attributes {
		if attribute.Name.Local != name || attribute.Name.Space != "" {
			continue
		}
		value, err := strconv.ParseFloat(strings.TrimSpace(attribute.Value), 64)
		if err != nil || !(value >= -most && value <= most) {
			return 0, prose.Errorf("%s is %q and should be degrees from -%v to %v", name, shown(attribute.Value), most, most)
		}
		return value, nil
	}
	return 0, prose.Errorf("a point has no %s", name)
}

// heightOf reads metres. What is no height is not known: receivers write marks
// such as -32768 where they have none.
func heightOf(text string) float64 {
	height, err := strconv.ParseFloat(text, 64)
	if err != nil || !(height >= lowestGround && height <= highestGround) {
		return math.NaN()
	}
	return height
}

// trimmed gives the text of the open element on one line, as a trip takes it.
func (p *parser) trimmed() string {
	plain := strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(p.text.String(), ""))
	plain = strings.Join(strings.Fields(plain), " ")
	if runes := []rune(plain); len(runes) > mostName {
		return strings.TrimSpace(string(runes[:mostName]))
	}
	return plain
}

// way gives the lines that can be walked.
func (p *parser) way() (*Way, error) {
	if !p.began || len(p.names) > 0 {
		return nil, prose.Errorf("this is not a whole GPX file: it ends too early")
	}
	for _, lines := range [][]Line{p.tracks, p.routes} {
		way := &Way{}
		for _, line := range lines {
			if len(line.Points) > 1 {
				way.Lines = append(way.Lines, line)
			}
		}
		if len(way.Lines) > 0 {
			return way, nil
		}
	}
	return nil, ErrNoWay
}

// charset reads the other encodings old receivers write.
func charset(label string, input io.Reader) (io.Reader, error) {
	switch strings.ToLower(label) {
	case "utf-8", "utf8", "us-ascii", "ascii":
		return input, nil
	case "iso-8859-1", "latin1", "windows-1252":
		return &latin1{from: input}, nil
	default:
		return nil, prose.Errorf("the encoding %q is not read: save the file as UTF-8", shown(label))
	}
}

// latin1 turns ISO 8859-1, whose bytes are the first code points, into UTF-8.
type latin1 struct {
	from io.Reader
	rest []byte
}

func (l *latin1) Read(into []byte) (int, error) {
	for len(l.rest) == 0 {
		raw := make([]byte, 4096)
		n, err := l.from.Read(raw)
		for _, b := range raw[:n] {
			l.rest = append(l.rest, string(rune(b))...)
		}
		if n == 0 && err != nil {
			return 0, err
		}
	}
	n := copy(into, l.rest)
	l.rest = l.rest[n:]
	return n, nil
}

// shown cuts what a file holds to what fits a message.
func shown(text string) string {
	const most = 40
	if len(text) > most {
		return strings.ToValidUTF8(text[:most], "") + "…"
	}
	return text
}
