package bench

import (
	"testing"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func TestClosedDatesAndRunsOfThem(t *testing.T) {
	var o trip.Opening
	for text, want := range map[string]string{
		"2027-12-24..2027-12-26, 2028-01-01": "2027-12-24–2027-12-26, 2028-01-01",
		"2028-02-28 - 2028-03-01":            "2028-02-28–2028-03-01",
		"2027-08-30":                         "2027-08-30",
		"":                                   "",
	} {
		if err := ReadClosed(&o, text); err != nil || ClosedText(o) != want {
			t.Errorf("%q is read as %q, %v", text, ClosedText(o), err)
		}
	}
	if err := ReadClosed(&o, "2028-02-28–2028-03-01"); err != nil || len(o.ClosedDates) != 3 || o.OpenOn(o.ClosedDates[1]) {
		t.Errorf("the leap day is not in %v: %v", o.ClosedDates, err)
	}
	for _, text := range []string{"tomorrow", "2027-12-26–2027-12-24", "2027-12-26–then", "2027-01-01–2029-01-01"} {
		if err := ReadClosed(&o, text); err == nil || len(o.ClosedDates) != 3 {
			t.Errorf("%q is taken: %v", text, o.ClosedDates)
		}
	}
}

func TestPriceByTheMany(t *testing.T) {
	p := trip.Package{Price: optional.Of[units.Money](400)}
	for _, text := range []string{"4: 3.45", "from 4: 3.45", "4 × 3.45", "4+ 3.45 EUR", "4 3.45"} {
		p.ManyFrom, p.ManyPrice = 0, optional.Unknown[units.Money]()
		if err := ReadMany(&p, text, "EUR"); err != nil || p.ManyFrom != 4 || p.ManyPrice != optional.Of[units.Money](345) || ManyText(&p, "EUR") != "from 4: 3.45" {
			t.Errorf("%q is read as %d, %v: %v", text, p.ManyFrom, p.ManyPrice, err)
		}
	}
	for _, text := range []string{"3.45", "four: 3.45", "1: 3.45", "4: dear", "4: 3.45: 2"} {
		if err := ReadMany(&p, text, "EUR"); err == nil {
			t.Errorf("%q is taken: %+v", text, p)
		}
	}
	if err := ReadMany(&p, "", "EUR"); err != nil || p.ManyFrom != 0 || p.ManyPrice.Known() || ManyText(&p, "EUR") != "" {
		t.Errorf("nothing is read as %+v, %v", p, err)
	}
}

func TestAddressesKeepTheirLines(t *testing.T) {
	address := "Poste restante\nPost Office, 2 Mill Lane\nQuarry Halt"
	if text := AddressText(address); text != "Poste restante, Post Office, 2 Mill Lane, Quarry Halt" || ReadAddress(text) != "Poste restante\nPost Office\n2 Mill Lane\nQuarry Halt" {
		t.Errorf("%q", text)
	}
}
