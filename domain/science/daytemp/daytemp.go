// Package daytemp models the temperature of a day as a sine between its
// lowest and highest value, warmest at three in the afternoon (design choice),
// so that hours above a limit and losses over a day can be computed from the
// two figures a forecast gives.
package daytemp

import "math"

// PeakHour is the warmest hour of the day, coldest twelve hours apart.
const PeakHour = 15.0

// Day is one day's course of temperature in degrees Celsius. Low and High may
// be equal: a cellar.
type Day struct{ Low, High float64 }

// Mean is the middle of the course.
func (d Day) Mean() float64 { return (d.Low + d.High) / 2 }

// Amplitude is how far the course goes from its mean to either side.
func (d Day) Amplitude() float64 { return (d.High - d.Low) / 2 }

// Warmer returns the day shifted by kelvin, such as an offset.
func (d Day) Warmer(kelvin float64) Day { return Day{d.Low + kelvin, d.High + kelvin} }

// At returns the temperature at an hour; hours outside 0 to 24 belong to the
// days before and after, which have the same course.
func (d Day) At(hour float64) float64 {
	return d.Mean() + d.Amplitude()*math.Cos(2*math.Pi*(hour-PeakHour)/24)
}

// HoursAbove returns how many hours of the 24 are warmer than a limit.
func (d Day) HoursAbove(limit float64) float64 { return 2 * d.halfWidth(limit) }

// HoursAboveBetween returns how many hours from one hour to a later one are
// warmer than a limit; the hours may lie outside 0 to 24.
func (d Day) HoursAboveBetween(from, to, limit float64) float64 {
	half := d.halfWidth(limit)
	total := 0.0
	first := math.Floor((from-PeakHour-half)/24) * 24
	for shift := first; PeakHour+shift-half < to; shift += 24 {
		total += max(0, min(to, PeakHour+shift+half)-max(from, PeakHour+shift-half))
	}
	return total
}

// halfWidth returns the hours from the peak to where the course meets a limit.
func (d Day) halfWidth(limit float64) float64 {
	switch {
	case limit >= d.High:
		return 0
	case limit < d.Low:
		return 12
	default:
		return 12 / math.Pi * math.Acos((limit-d.Mean())/d.Amplitude())
	}
}
