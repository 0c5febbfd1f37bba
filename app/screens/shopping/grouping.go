package shopping

import (
	"cmp"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/domain/units"
)

// grouping is how the list is taken apart.
type grouping int

const (
	byShop grouping = iota
	byDeadline
	byFood // by aisle, then by name
)

// groupings gives the words of the choice, in its order.
func groupings() []string {
	return []string{lang.L("By shop"), lang.L("By deadline"), lang.L("By food")}
}

// Groups that come after those of the choice, in this order.
const (
	restFuel = iota + 1
	restHome
	restExtra
	restOther
)

// place gives the group of a row: its sort key and its word.
func (l *list) place(r *row, by grouping) (rest int, key, word string) {
	switch r.kind {
	case homeRow:
		return restHome, "", lang.L("Enough at home")
	case extraRow:
		return restExtra, "", lang.L("Bought, not on the list")
	case otherRow:
		return restOther, "", lang.L("Other costs")
	case fuelRow:
		if by == byShop && r.fuel.Point != 0 {
			return restFuel, l.placeName(r.fuel.Point), l.placeName(r.fuel.Point)
		}
		return restFuel, "", lang.L("Fuel")
	}
	switch by {
	case byShop:
		if r.buy.Shop == "" {
			return 0, "\uffff", lang.L("Any shop")
		}
		return 0, r.buy.Shop, r.buy.Shop
	case byDeadline:
		if !r.line.Deadline.IsSet() {
			return 0, "\uffff", lang.L("No date set")
		}
		return 0, r.line.Deadline.String(), lang.X("home-by", "At home by {{.Date}}", data{"Date": bench.DayWords(r.line.Deadline)})
	default:
		aisle := ""
		if food := l.trip.Food(r.line.Food); food != nil {
			aisle = food.Aisle
		}
		if aisle == "" {
			return 0, "\uffff", lang.L("No aisle given")
		}
		return 0, aisle, aisle
	}
}

// grouped sorts the rows into groups, each behind its head.
func (l *list) grouped(by grouping) []*row {
	type placed struct {
		row  *row
		rest int
		key  string
		word string
	}
	all := make([]placed, len(l.rows))
	for i, r := range l.rows {
		rest, key, word := l.place(r, by)
		all[i] = placed{r, rest, key, word}
	}
	slices.SortStableFunc(all, func(a, b placed) int {
		return cmp.Or(cmp.Compare(a.rest, b.rest), strings.Compare(a.key, b.key), strings.Compare(l.sortName(a.row, by), l.sortName(b.row, by)),
			cmp.Compare(l.date(a.row), l.date(b.row)))
	})
	var rows []*row
	var head *row
	for i, p := range all {
		if i == 0 || p.rest != all[i-1].rest || p.key != all[i-1].key {
			head = &row{kind: headRow, key: "head " + p.word, group: p.word, rank: 2 * len(rows)}
			rows = append(rows, head)
		}
		p.row.group, p.row.rank = p.word, head.rank+1
		head.sum.add(l, p.row)
		rows = append(rows, p.row)
	}
	return rows
}

// sortName orders the rows of a group: through the shop by aisle, then by name.
func (l *list) sortName(r *row, by grouping) string {
	name := strings.ToLower(l.name(r))
	if by == byFood || r.line == nil {
		return name
	}
	aisle := "\uffff"
	if food := l.trip.Food(r.line.Food); food != nil && food.Aisle != "" {
		aisle = strings.ToLower(food.Aisle)
	}
	return aisle + "\x00" + name
}

func (l *list) date(r *row) units.Date {
	if r.line != nil {
		return r.line.Deadline
	}
	return 0
}

// name is what a row is called.
func (l *list) name(r *row) string {
	switch r.kind {
	case headRow:
		return r.group
	case fuelRow:
		return r.fuel.Name
	case otherRow:
		return l.trip.Progress.Purchases[r.purchase].Other
	}
	if r.goods.fuel != "" {
		return r.goods.fuel
	}
	if food := l.trip.Food(r.goods.food); food != nil {
		return food.Name
	}
	return "–"
}
