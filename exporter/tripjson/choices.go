package tripjson

import (
	"reflect"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// choices lists the closed choices of a trip: what the schema enumerates is
// what Read accepts.
var choices = map[reflect.Type][]string{
	reflect.TypeFor[units.System]():         words([]units.System{units.Metric, units.US}),
	reflect.TypeFor[trip.Sex]():             words(trip.Sexes()),
	reflect.TypeFor[trip.Terrain]():         words(trip.Terrains()),
	reflect.TypeFor[trip.Meal]():            words(trip.Meals()),
	reflect.TypeFor[trip.CarbConvention]():  words(trip.CarbConventions()),
	reflect.TypeFor[trip.TCS]():             words(trip.TCSStates()),
	reflect.TypeFor[trip.Form]():            words(trip.Forms()),
	reflect.TypeFor[trip.Presence]():        words(trip.Presences()),
	reflect.TypeFor[trip.Suitability]():     words(trip.Suitabilities()),
	reflect.TypeFor[trip.Role]():            words(trip.Roles()),
	reflect.TypeFor[trip.Place]():           words(trip.Places()),
	reflect.TypeFor[trip.GearKind]():        words(trip.GearKinds()),
	reflect.TypeFor[trip.FuelKind]():        words(trip.FuelKinds()),
	reflect.TypeFor[trip.PointKind]():       words(trip.PointKinds()),
	reflect.TypeFor[trip.End]():             words(trip.Ends()),
	reflect.TypeFor[trip.WalkingEquation](): words(trip.WalkingEquations()),
}

func words[T ~string](list []T) []string {
	plain := make([]string, len(list))
	for i, word := range list {
		plain[i] = string(word)
	}
	return plain
}
