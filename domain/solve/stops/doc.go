// Package stops chooses where to take on supplies along a line of days.
//
// Day d eats FoodGrams[d-1]. Boundary t lies after day t; at some boundaries
// there are points where a box waits or something can be bought. Leaving a
// stop t with supplies through day v means carrying, on the morning of day d,
// what days d..v eat. A gram bought at t and eaten on day d is carried d-t
// mornings, so
//
//	cost = stops + fees per parcel + premium on what is taken on
//	     + carry * sum over all food of (day eaten - boundary taken on)
//
// and the peak is the heaviest load with which any stop is left.
//
// The state is (stop, day supplied through on arriving there): food may be
// carried past a stop, which pays where a point limits or charges parcels.
// [Unbeaten] keeps, per state, all labels that no other beats (label setting
// for several objectives: Hansen 1980, Martins 1984, from memory) and returns
// every choice that nothing beats. With [Problem].WholeLegs nothing is carried
// past a stop and the states shrink to the stops alone: the shortest path of
// the lot-sizing problem of Wagner and Whitin (1958, from memory).
//
// The answer is exact for whole days' supplies eaten in the order taken on.
// Mass is in grams, money in thousandths of a cent ([Millicents]), so that
// cents per kilogram and whole grams multiply without rounding.
package stops
