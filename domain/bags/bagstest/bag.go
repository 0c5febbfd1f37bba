package bagstest

import "sumpter/domain/bags"

// EatenAtOnce fills in the one use of a bag that is eaten at one meal, and a
// food for what it weighs where none is told.
func EatenAtOnce(b bags.Bag) bags.Bag {
	b.LastDay = b.Day
	if b.Contents == nil {
		b.Contents = []bags.Content{{Mass: b.Food}}
	}
	use := bags.Use{Day: b.Day, Meal: b.Meal, Recipe: b.Recipe, Batch: 1, Place: b.Place, Contents: b.Contents, Kcal: b.Kcal}
	if b.Member != 0 {
		use.Shares = []bags.Share{{Member: b.Member, Mass: b.Food}}
	}
	b.Uses = []bags.Use{use}
	return b
}
