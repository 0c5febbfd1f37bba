package trip

// The lists below hold every value a closed choice may take, in the order a
// reader is offered them. Whoever reads or checks a trip asks them, so that a
// new value is added in one place.

// Sexes lists what may be known of a member's sex.
func Sexes() []Sex { return []Sex{Female, Male, SexNotGiven} }

// Terrains lists the kinds of ground.
func Terrains() []Terrain {
	return []Terrain{Road, DirtRoad, Trail, RoughTrail, LightBrush, HeavyBrush, Scree, Bog, Sand, SoftSnow}
}

// WalkingEquations lists the equations that may plan the cost of walking.
func WalkingEquations() []WalkingEquation {
	return []WalkingEquation{LCDABackpacking, LCDAWalking, Pandolf}
}

// CarbConventions lists what a carbohydrate figure may include.
func CarbConventions() []CarbConvention {
	return []CarbConvention{TotalCarbohydrate, AvailableCarbohydrate}
}

// TCSStates lists the states of time/temperature control.
func TCSStates() []TCS { return []TCS{TCSYes, TCSNo, TCSUnknown} }

// Forms lists how a food may behave in a bag.
func Forms() []Form { return []Form{Dry, Powder, Liquid, Spread, Piece} }

// Presences lists the states of an allergen, worst first.
func Presences() []Presence { return []Presence{Contains, MayContain, NotKnown, Free} }

// Suitabilities lists whether a diet may allow a food.
func Suitabilities() []Suitability { return []Suitability{Suits, DoesNotSuit, SuitsUnknown} }

// Roles lists how an ingredient may follow the size of a portion.
func Roles() []Role { return []Role{Base, ToTaste} }

// Places lists where an ingredient may meet the others.
func Places() []Place { return []Place{InPot, AtBowl} }

// GearKinds lists what a piece of gear may be for.
func GearKinds() []GearKind { return []GearKind{Stove, Pot, Shelter, FoodStorage, OtherGear} }

// PointKinds lists the kinds of resupply point.
func PointKinds() []PointKind { return []PointKind{PostOffice, ShopOnWay, Hut, Cache, Meeting} }

// OpenDayNames lists the words of a point's opening days, Monday first.
func OpenDayNames() []string { return []string{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"} }

// ReserveEnds lists what may become of a reserve that was not needed.
func ReserveEnds() []ReserveEnd { return []ReserveEnd{ReserveTakenHome, ReserveEatenLast} }

// Ends lists what may become of a bag on the trail.
func Ends() []End { return []End{Eaten, ThrownAway, Lost, TakenAlong, NotPacked} }
