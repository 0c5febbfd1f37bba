package carry

import (
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// filmGramsPerMillilitre is the density of low-density polyethylene film:
// 0.910 to 0.925 g/cm³ by the classes of ASTM D4976 (from memory).
const filmGramsPerMillilitre = 0.92

// pressedFilm is how many times its solid volume film takes when it is rolled
// and pressed by hand. Common practice, no source.
const pressedFilm = 4

// emptied is the room that takes what is left of a bag once it is eaten: film
// is pressed together, a bottle or jar stays as large as it was.
func (c *calculation) emptied(bag *bags.Bag) units.Volume {
	at := slices.IndexFunc(c.Trip.Bags, func(t trip.BagType) bool { return t.Name == bag.Type })
	if at >= 0 && c.Trip.Bags[at].Liquids {
		return c.Trip.Bags[at].Nominal
	}
	return units.FromMillilitres(bag.Tare.Grams() / filmGramsPerMillilitre * pressedFilm)
}
