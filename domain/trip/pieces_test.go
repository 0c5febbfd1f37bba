package trip_test

import (
	"testing"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func TestAmountInPieces(t *testing.T) {
	for _, c := range []struct {
		piece  float64
		halves bool
		grams  float64
		want   string
	}{
		{48, false, 96, "2 pieces (96 g)"},
		{48, false, 48, "1 piece (48 g)"},
		{48, false, 72, "72 g"}, // not to be halved
		{48, true, 72, "1½ pieces (72 g)"},
		{48, true, 24, "½ piece (24 g)"},
		{48, true, 30, "30 g"},
		{48, false, 0, "0 g"},
		{0, false, 96, "96 g"},
		{0, true, 96, "96 g"},
	} {
		food, mass := trip.Food{PieceMass: units.FromGrams(c.piece), PieceHalves: c.halves}, units.FromGrams(c.grams)
		if got := food.Amount(mass, mass.Format(units.Metric)).In(prose.Reader{}); got != c.want {
			t.Errorf("%g g of pieces of %g g: %q, want %q", c.grams, c.piece, got, c.want)
		}
	}
}
