package shopping

import (
	"slices"
	"testing"

	"sumpter/app/demo"
	"sumpter/domain/shopping"
)

// The leader gives a shop another cost of visit, takes
// another choice of shops, and takes it back.
func TestShopsAreListedEditedAndChosen(t *testing.T) {
	example := demo.Trip()
	s := open(t, &example)
	s.Refresh()
	s.tabs.SelectIndex(shopsPlace)
	tab := s.shops
	if len(tab.table.Rows()) != 3 {
		t.Fatalf("shops %v", tab.table.Rows())
	}
	if err := tab.columns()[4].Set("Saltmarsh wholesale", "40"); err != nil {
		t.Fatal(err)
	}
	if shop := s.bench.Trip().Shop("Saltmarsh wholesale"); shop == nil || shop.VisitFee != 4000 || !shop.Use {
		t.Fatalf("%+v", shop)
	}
	if err := tab.columns()[2].Set("Saltmarsh wholesale", "Quarry Halt post office"); err != nil || s.bench.Trip().Shop("Saltmarsh wholesale").Point != 1 {
		t.Errorf("%v: %+v", err, s.bench.Trip().Shops)
	}
	if err := tab.columns()[2].Set("Saltmarsh wholesale", "nowhere"); err == nil {
		t.Error("a shop stands nowhere")
	}
	if err := s.Screen.bench.Document.Undo(); err != nil {
		t.Fatal(err)
	}
	s.Refresh()
	errands := s.list.plan.Shopping.Errands
	at := slices.IndexFunc(errands, func(e shopping.Errand) bool { return !e.Current })
	if at < 0 {
		t.Fatal("the demo has one choice of shops")
	}
	tab.take(errands[at])
	for _, name := range s.bench.Trip().ShopNames() {
		if s.bench.Trip().Shop(name).Use != slices.Contains(errands[at].Shops, name) {
			t.Errorf("%s: %+v of %v", name, s.bench.Trip().Shop(name), errands[at].Shops)
		}
	}
	if err := tab.remove("Saltmarsh wholesale"); err != nil || s.bench.Trip().Shop("Saltmarsh wholesale") != nil {
		t.Errorf("%v", err)
	}
}
