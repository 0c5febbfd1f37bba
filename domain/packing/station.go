package packing

import (
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Station is a place on the table.
type Station string

// Stations of packing night.
const (
	WeighDry Station = "weigh dry"
	CountOut Station = "count"
	Wet      Station = "wet" // oils, spreads: last, apart
	Label    Station = "label"
	Check    Station = "final check"
)

// Stations lists them in the order a bag passes them.
func Stations() []Station { return []Station{WeighDry, CountOut, Wet, Label, Check} }

// Name is what everybody calls the station, on screens and papers alike.
func (s Station) Name() prose.Text {
	switch s {
	case WeighDry:
		return prose.Say("Weigh dry")
	case CountOut:
		return prose.Say("Count out")
	case Wet:
		return prose.Say("Oils and spreads")
	case Label:
		return prose.Say("Close and label")
	default:
		return prose.Say("Final check")
	}
}

// StationOf is where a food is handled; one that is not known is weighed dry.
func StationOf(food *trip.Food) Station {
	switch {
	case food == nil:
		return WeighDry
	case food.PackedAsBought || food.Form == trip.Piece || food.PieceStep() > 0:
		return CountOut
	case food.Form == trip.Liquid || food.Form == trip.Spread:
		return Wet
	default:
		return WeighDry
	}
}
