package triptest

import (
	"fmt"

	"sumpter/domain/optional"
)

// chance is true in about percent of all cases.
func (b *builder) chance(percent int) bool { return b.pick(1, 100) > 100-percent }

// rarely is true now and then in odd trips and never in plausible ones.
func (b *builder) rarely() bool { return b.odd && b.chance(15) }

// tenths draws a number with one decimal.
func (b *builder) tenths(low, high int) float64 { return float64(b.pick(low, high)) / 10 }

// hundredths draws a number with two decimals.
func (b *builder) hundredths(low, high int) float64 { return float64(b.pick(low, high)) / 100 }

// ids draws rising positive IDs with gaps, as editing leaves them.
func (b *builder) ids(count int) []int64 {
	ids := make([]int64, count)
	last := int64(0)
	for i := range ids {
		last += int64(b.pick(1, 3))
		ids[i] = last
	}
	return ids
}

// named makes a name that is alone in its kind.
func named(word string, id int64) string { return fmt.Sprintf("%s %d", word, id) }

// oneOf draws from a list.
func oneOf[T any](b *builder, list ...T) T { return list[b.pick(0, len(list)-1)] }

// some draws a sublist in the order of the list; nil if it is empty.
func some[T any](b *builder, percent int, list []T) []T {
	var chosen []T
	for _, item := range list {
		if b.chance(percent) {
			chosen = append(chosen, item)
		}
	}
	return chosen
}

// unsure makes a fact unknown in some odd trips.
func unsure[T any](b *builder, value T) optional.Value[T] {
	if b.rarely() {
		return optional.Unknown[T]()
	}
	return optional.Of(value)
}

// maybe makes a fact known in about percent of all cases.
func maybe[T any](b *builder, percent int, value T) optional.Value[T] {
	if b.chance(percent) {
		return optional.Of(value)
	}
	return optional.Unknown[T]()
}
