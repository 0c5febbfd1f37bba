package gpx

import (
	"math"

	"sumpter/domain/science/earth"
	"sumpter/domain/science/walktime"
	"sumpter/domain/units"
)

// steepOver is the least length over which a slope is taken: over less, the
// noise of heights makes cliffs (design choice).
const steepOver = 50.0 // m

// Measured is a way as it is walked: running sums along its points, lines in
// a row. From the end of one line to the start of the next nothing is walked.
type Measured struct {
	HeightsKnown bool // false: the file has no heights at all; climbs and heights are then 0 and mean nothing

	distance    []float64 // m from the start, of each point
	height      []float64 // m; single gaps are filled along the line
	up, down    []float64 // m, by the threshold of package earth
	steep       []float64 // m of descent on slopes above 12 degrees
	hours       []float64 // by Naismith
	starts      []int     // point at which each line begins
	tracks      []int     // track of each line
	names       []string  // of each line
	trackChange bool      // the lines are of several tracks or routes
}

// Measure works out distances on the sphere (haversine), heights, ascent,
// descent and moving time along a way.
func (w *Way) Measure() *Measured {
	m := &Measured{}
	total := 0.0
	for i, line := range w.Lines {
		m.starts = append(m.starts, len(m.distance))
		m.tracks = append(m.tracks, line.Track)
		m.names = append(m.names, line.Name)
		m.trackChange = m.trackChange || line.Track != w.Lines[0].Track
		for j, point := range line.Points {
			if j > 0 {
				before := w.Lines[i].Points[j-1]
				total += earth.Distance(before.Latitude, before.Longitude, point.Latitude, point.Longitude)
			}
			m.distance = append(m.distance, total)
			m.height = append(m.height, point.Height)
			m.HeightsKnown = m.HeightsKnown || !math.IsNaN(point.Height)
		}
	}
	m.fillHeights()
	m.measureClimbs()
	m.measureSteep()
	m.hours = make([]float64, len(m.distance))
	for i := range m.hours {
		m.hours[i] = walktime.Naismith(m.distance[i]/1000, m.up[i])
	}
	return m
}

// fillHeights draws a straight slope over points without height; before the
// first and behind the last known height the ground is taken as level.
func (m *Measured) fillHeights() {
	known := -1
	for i, height := range m.height {
		if math.IsNaN(height) {
			continue
		}
		for j := known + 1; j < i; j++ {
			m.height[j] = height
			if known >= 0 {
				m.height[j] = between(m.distance[j], m.distance[known], m.distance[i], m.height[known], height)
			}
		}
		known = i
	}
	for j := known + 1; j < len(m.height); j++ {
		m.height[j] = 0
		if known >= 0 {
			m.height[j] = m.height[known]
		}
	}
}

// measureClimbs counts within each line: how somebody came from the end of one
// to the start of the next is not known.
func (m *Measured) measureClimbs() {
	climbed, fallen := 0.0, 0.0
	for line, first := range m.starts {
		up, down := earth.Climbs(m.height[first:m.lastOf(line)+1], earth.AscentThreshold)
		for i := range up {
			m.up, m.down = append(m.up, climbed+up[i]), append(m.down, fallen+down[i])
		}
		climbed, fallen = m.up[len(m.up)-1], m.down[len(m.down)-1]
	}
}

// measureSteep looks at stretches of at least steepOver within each line.
func (m *Measured) measureSteep() {
	m.steep = make([]float64, len(m.distance))
	sum := 0.0
	for line := range m.starts {
		first, last := m.starts[line], m.lastOf(line)
		m.steep[first] = sum
		for from := first; from < last; {
			to := from + 1
			for to < last && m.distance[to]-m.distance[from] < steepOver {
				to++
			}
			length, drop := m.distance[to]-m.distance[from], m.height[from]-m.height[to]
			fallen := 0.0
			if length >= steepOver && drop >= earth.AscentThreshold {
				_, fallen = walktime.DescentKinds(length/1000, drop)
			}
			for i := from + 1; i <= to; i++ {
				m.steep[i] = between(m.distance[i], m.distance[from], m.distance[to], sum, sum+fallen)
			}
			sum += fallen
			m.steep[to] = sum
			from = to
		}
	}
}

func (m *Measured) lastOf(line int) int {
	if line+1 < len(m.starts) {
		return m.starts[line+1] - 1
	}
	return len(m.distance) - 1
}

// between gives the value at x of the straight line from (x1, y1) to (x2, y2).
func between(x, x1, x2, y1, y2 float64) float64 {
	if x2 <= x1 {
		return y1
	}
	return y1 + (y2-y1)*min(1, max(0, (x-x1)/(x2-x1)))
}

// Length is the length of the whole way.
func (m *Measured) Length() units.Metres {
	return units.Metres(m.distance[len(m.distance)-1])
}

// place is a point of the way, or between two: 2.5 is halfway from the third
// point to the fourth.
type place float64

// at gives a running sum or the height at a place.
func (m *Measured) at(sums []float64, p place) float64 {
	i := int(p)
	if i+1 >= len(sums) {
		return sums[len(sums)-1]
	}
	return sums[i] + (sums[i+1]-sums[i])*(float64(p)-float64(i))
}

// Spot is a place along the way.
type Spot struct {
	Distance units.Metres // from the start
	Height   units.Metres
}

// Profile gives at most so many spots along the way, the highest and lowest
// ground between them kept; none if there are no heights.
func (m *Measured) Profile(most int) []Spot {
	if !m.HeightsKnown || most < 4 {
		return nil
	}
	if len(m.distance) <= most {
		return m.spots(0, len(m.distance))
	}
	var profile []Spot
	bins := most / 2
	for bin := range bins {
		from, to := bin*len(m.distance)/bins, (bin+1)*len(m.distance)/bins
		low, high := from, from
		for i := from; i < to; i++ {
			if m.height[i] < m.height[low] {
				low = i
			}
			if m.height[i] > m.height[high] {
				high = i
			}
		}
		first, second := min(low, high), max(low, high)
		if bin == 0 {
			first = 0
		}
		if bin == bins-1 {
			second = len(m.distance) - 1
		}
		profile = append(profile, m.spots(first, first+1)...)
		if second != first {
			profile = append(profile, m.spots(second, second+1)...)
		}
	}
	return profile
}

func (m *Measured) spots(from, to int) []Spot {
	var list []Spot
	for i := from; i < to; i++ {
		list = append(list, Spot{units.Metres(m.distance[i]), units.Metres(m.height[i])})
	}
	return list
}
