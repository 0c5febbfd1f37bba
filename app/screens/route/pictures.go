package route

import (
	"math"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/charts"
	"sumpter/app/importer/gpx"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// mostSpots keeps the profile quick to draw.
const mostSpots = 400

// sameWay is how far the days may differ in length from a track that is still
// taken for their way, as a share: figures of days are rounded.
const sameWay = 0.01

// pictures are the heights of the way and the temperatures of its days.
type pictures struct {
	bench   *bench.Bench
	choose  func(day int)
	basis   *look.Text
	profile *charts.ProfileChart
	air     *charts.TemperatureChart
	content fyne.CanvasObject
}

func newPictures(b *bench.Bench, choose func(int)) *pictures {
	p := &pictures{bench: b, choose: choose, basis: look.NewText("", look.Caption, look.Quiet).Yielding(), profile: charts.NewProfileChart("km", "m"), air: charts.NewTemperatureChart()}
	heights := container.NewBorder(bench.Inset(look.NewHeading(lang.L("Heights")), p.basis), nil, nil, nil, p.profile)
	air := container.NewBorder(bench.Inset(look.NewHeading(lang.L("Temperatures")), look.NewText(lang.L("lowest to highest"), look.Caption, look.Quiet).Yielding()), nil, nil, nil, p.air)
	split := container.NewHSplit(heights, air)
	split.Offset = 0.62
	p.content = split
	return p
}

// show draws the way with a day marked. The track counts while the days still
// have its length.
func (p *pictures) show(day int, track *gpx.Measured) {
	t := p.bench.Trip()
	u := t.Units
	var spots []gpx.Spot
	p.basis.SetContent(lang.L("a sketch: the order of climbs within a day is not known"))
	if track != nil && track.HeightsKnown && math.Abs(float64(length(t)/track.Length())-1) <= sameWay {
		spots = track.Profile(mostSpots)
		p.basis.SetContent(lang.L("from the track"))
	} else {
		spots = sketch(t)
	}
	if len(spots) == 0 {
		p.basis.SetContent(lang.L("The way is drawn from distance, ascent and descent."))
	}
	points := make([]charts.Point, len(spots))
	for i, spot := range spots {
		points[i] = charts.Point{Distance: inUnit(spot.Distance, u), Height: heightInUnit(spot.Height, u)}
	}
	p.profile.Set(typed.DistanceUnit(u), typed.HeightUnit(u), points, stops(t, day))
	p.showAir(t, day)
}

func (p *pictures) showAir(t *trip.Trip, chosen int) {
	degrees := func(c units.Celsius) float64 {
		if t.Units == units.US {
			return c.Fahrenheit()
		}
		return float64(c)
	}
	days := make([]charts.Air, len(t.Days))
	for i, day := range t.Days {
		days[i] = charts.Air{Label: strconv.Itoa(i + 1), Low: degrees(day.Low), High: degrees(day.High), Marked: i+1 == chosen, Tapped: func() { p.choose(i + 1) }}
	}
	p.air.Set(typed.TemperatureUnit(t.Units), degrees(0), days)
}

func length(t *trip.Trip) units.Metres {
	sum := units.Metres(0)
	for _, day := range t.Days {
		sum += day.Distance
	}
	return sum
}

// sketch draws each day as a climb and a descent from camp to camp.
func sketch(t *trip.Trip) []gpx.Spot {
	if len(t.Days) == 0 || length(t) <= 0 {
		return nil
	}
	first := t.Days[0]
	at := units.Metres(0)
	spots := []gpx.Spot{{Distance: 0, Height: first.CampHeight - first.Ascent + first.Descent}}
	for _, day := range t.Days {
		if both := day.Ascent + day.Descent; day.Ascent > 0 && day.Descent > 0 {
			top := max(day.CampHeight+day.Descent, spots[len(spots)-1].Height, day.CampHeight)
			spots = append(spots, gpx.Spot{Distance: at + day.Distance*day.Ascent/both, Height: top})
		}
		at += day.Distance
		spots = append(spots, gpx.Spot{Distance: at, Height: day.CampHeight})
	}
	return spots
}

// stops are the camps, and the resupply points that are used.
func stops(t *trip.Trip, chosen int) []charts.Stop {
	var list []charts.Stop
	at := units.Metres(0)
	for i, day := range t.Days {
		at += day.Distance
		var names []string
		for _, point := range t.Points {
			if point.Use && point.AfterDay == i+1 {
				names = append(names, point.Name)
			}
		}
		list = append(list, charts.Stop{Distance: inUnit(at, t.Units), Label: strconv.Itoa(i + 1), Name: strings.Join(names, ", "), Strong: i+1 == chosen})
	}
	return list
}

func inUnit(m units.Metres, u units.System) float64 {
	if u == units.US {
		return m.Miles()
	}
	return m.Kilometres()
}

func heightInUnit(m units.Metres, u units.System) float64 {
	if u == units.US {
		return m.Feet()
	}
	return float64(m)
}
