package trip

import (
	"slices"
	"strings"

	"sumpter/domain/units"
)

// Shop is a place where food is bought. Packages bear its name. A shop that a
// package names and nobody listed is reckoned as one near home, open every
// day, that costs nothing to visit and takes any order.
type Shop struct {
	Name    string  `json:"name"`
	Use     bool    `json:"use"`               // the leader's choice: nothing is bought where it is not used
	Point   PointID `json:"point,omitempty"`   // the resupply point it stands at: what it sells is bought there and not sent; 0: near home
	Address string  `json:"address,omitempty"` // or how to get there
	Opening
	VisitFee   units.Money `json:"visit_fee"`   // fare or delivery, each time something is bought there
	LeastOrder units.Money `json:"least_order"` // below it nothing is sold; 0: none
	Notes      string      `json:"notes,omitempty"`
}

// NewShop gives a shop near home that is used.
func NewShop(name string) Shop {
	return Shop{Name: name, Use: true, Opening: Opening{OpenDays: weekdaysOfPost()}}
}

// ShopKey is how names of shops are compared: capitals and blanks aside.
func ShopKey(name string) string { return strings.ToLower(strings.TrimSpace(name)) }

// Shop finds a shop by its name, or nil.
func (t *Trip) Shop(name string) *Shop {
	for i := range t.Shops {
		if ShopKey(t.Shops[i].Name) == ShopKey(name) {
			return &t.Shops[i]
		}
	}
	return nil
}

// ShopNames lists every shop of the trip: those listed, then those that only
// packages name, in the order they are found.
func (t *Trip) ShopNames() []string {
	var names []string
	seen := map[string]bool{"": true}
	add := func(name string) {
		if key := ShopKey(name); !seen[key] {
			seen[key] = true
			names = append(names, strings.TrimSpace(name))
		}
	}
	for i := range t.Shops {
		add(t.Shops[i].Name)
	}
	for i := range t.Foods {
		for _, sold := range t.Foods[i].Packages {
			add(sold.Shop)
		}
	}
	return names
}

// RenameShop gives a shop another name everywhere: in the list, on packages
// and on what was bought there.
func (t *Trip) RenameShop(from, to string) {
	for i := range t.Shops {
		if ShopKey(t.Shops[i].Name) == ShopKey(from) {
			t.Shops[i].Name = to
		}
	}
	for i := range t.Foods {
		for j := range t.Foods[i].Packages {
			if p := &t.Foods[i].Packages[j]; ShopKey(p.Shop) == ShopKey(from) {
				p.Shop = to
			}
		}
	}
	for i := range t.Progress.Purchases {
		if p := &t.Progress.Purchases[i]; ShopKey(p.Shop) == ShopKey(from) {
			p.Shop = to
		}
	}
}

// FoodsSoldAt tells which foods are bought at a resupply point on the way.
func (t *Trip) FoodsSoldAt(point PointID) map[FoodID]bool {
	sold := map[FoodID]bool{}
	if !slices.ContainsFunc(t.Shops, func(s Shop) bool { return s.Use && s.Point == point }) {
		return sold
	}
	for i := range t.Foods {
		if t.SoldAt(point, &t.Foods[i]) {
			sold[t.Foods[i].ID] = true
		}
	}
	return sold
}

// SoldAt tells whether a food is bought at a resupply point on the way: a shop
// that stands there and is used sells it.
func (t *Trip) SoldAt(point PointID, food *Food) bool {
	if point == 0 || food == nil {
		return false
	}
	for _, sold := range food.Packages {
		if shop := t.Shop(sold.Shop); shop != nil && shop.Use && shop.Point == point {
			return true
		}
	}
	return false
}
