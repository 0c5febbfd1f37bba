package carry

import (
	"sumpter/domain/bags"
	"sumpter/domain/trip"
)

// ObstacleKind is what keeps a thing from a member.
type ObstacleKind string

// Kinds of obstacle. Limits of mass and room are none: they depend on what
// else is carried.
const (
	NotThere   ObstacleKind = "not there"   // on that day
	Harmful    ObstacleKind = "harmful"     // an allergen of the member's is or may be in it
	OtherGroup ObstacleKind = "other group" // it stays with its cook group
)

// Obstacle is why a member may not carry a thing on a day. The zero value
// means that nothing stands in the way.
type Obstacle struct {
	Kind     ObstacleKind
	Group    trip.GroupID  // whose gear it is
	Allergen trip.Allergen // that harms
	Food     trip.FoodID   // that has it
	State    trip.Presence // of the allergen in the food
}

// BagObstacle tells what keeps a bag from a member on a day, if the leader puts
// it there by hand. The split by itself leaves an own share with its eater.
func BagObstacle(t *trip.Trip, bag *bags.Bag, member *trip.Member, day int) Obstacle {
	if !member.Present(day) {
		return Obstacle{Kind: NotThere}
	}
	if bag.Member == member.ID {
		return Obstacle{}
	}
	return harm(member, bag, t.Food)
}

// GearObstacle tells what keeps gear, or fuel, of a cook group from a member
// on a day, by the rules the split follows.
func GearObstacle(t *trip.Trip, group trip.GroupID, member *trip.Member, day int) Obstacle {
	switch {
	case !member.Present(day):
		return Obstacle{Kind: NotThere}
	case group == 0 || member.Group == group || len(t.Eaters(day, group)) == 0:
		return Obstacle{}
	default:
		return Obstacle{Kind: OtherGroup, Group: group}
	}
}

// harm looks for what in a bag harms who would carry it: an allergen that is
// in it and, where traces harm, all that is not declared free of it.
func harm(member *trip.Member, bag *bags.Bag, food func(trip.FoodID) *trip.Food) Obstacle {
	for _, allergy := range member.Allergies {
		for _, content := range bag.Contents {
			state := trip.NotKnown
			if f := food(content.Food); f != nil {
				state = f.Presence(allergy.Allergen)
			}
			if state == trip.Contains || allergy.Severe && state != trip.Free {
				return Obstacle{Kind: Harmful, Allergen: allergy.Allergen, Food: content.Food, State: state}
			}
		}
	}
	return Obstacle{}
}
