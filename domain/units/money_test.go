package units

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestMoneyDecimal(t *testing.T) {
	for _, c := range []struct {
		money    Money
		currency string
		want     string
	}{
		{0, "EUR", "0.00"}, {5, "EUR", "0.05"}, {50, "USD", "0.50"}, {1234, "CHF", "12.34"},
		{-5, "EUR", "-0.05"}, {-1234, "EUR", "-12.34"},
		{1234, "JPY", "1234"}, {0, "JPY", "0"}, {-7, "KRW", "-7"}, {7, "KWD", "0.007"}, {1234567, "TND", "1234.567"},
		{math.MaxInt64, "EUR", "92233720368547758.07"}, {math.MinInt64, "EUR", "-92233720368547758.08"},
	} {
		if have := c.money.Decimal(c.currency); have != c.want {
			t.Errorf("%d %s: have %s, want %s", c.money, c.currency, have, c.want)
		}
		if have := c.money.Format(c.currency); have != c.want+" "+c.currency {
			t.Errorf("%d %s is shown as %s", c.money, c.currency, have)
		}
	}
}

func TestParseMoney(t *testing.T) {
	for _, c := range []struct {
		text, currency string
		want           Money
	}{
		{"12.5", "EUR", 1250}, {"12", "EUR", 1200}, {" 12.34 ", "EUR", 1234}, {".5", "EUR", 50}, {"3.", "EUR", 300},
		{"-0.05", "EUR", -5}, {"1234", "JPY", 1234}, {"0.007", "KWD", 7}, {"0", "EUR", 0},
		{"999999999999.99", "EUR", 99_999_999_999_999},
	} {
		if have, err := ParseMoney(c.text, c.currency); err != nil || have != c.want {
			t.Errorf("%q %s: have %d, %v; want %d", c.text, c.currency, have, err, c.want)
		}
	}
}

func TestMoneyThatIsNot(t *testing.T) {
	for _, c := range []struct{ text, currency string }{
		{"", "EUR"}, {".", "EUR"}, {"-", "EUR"}, {"--5", "EUR"}, {"1,50", "EUR"}, {"1.505", "EUR"}, {"1.5", "JPY"},
		{"1e3", "EUR"}, {"0x10", "EUR"}, {"five", "EUR"}, {"1.2.3", "EUR"}, {"1 000", "EUR"}, {"١٢", "EUR"},
		{"1234567890123", "EUR"}, {"NaN", "EUR"}, {"Inf", "EUR"},
	} {
		if have, err := ParseMoney(c.text, c.currency); err == nil {
			t.Errorf("%q %s: have %d, want an error", c.text, c.currency, have)
		}
	}
}

func TestMoneySurvivesText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		money := Money(rapid.Int64Range(-99_999_999_999, 99_999_999_999).Draw(t, "money"))
		currency := rapid.SampledFrom([]string{"EUR", "JPY", "KWD", "USD"}).Draw(t, "currency")
		back, err := ParseMoney(money.Decimal(currency), currency)
		if err != nil || back != money {
			t.Fatalf("%d %s became %s became %d, %v", money, currency, money.Decimal(currency), back, err)
		}
	})
}

func FuzzParseMoney(f *testing.F) {
	for _, text := range []string{"12.5", "-0.05", "", ".", "1e9", "999999999999.99", "00012.50"} {
		f.Add(text, "EUR")
		f.Add(text, "JPY")
	}
	f.Fuzz(func(t *testing.T, text, currency string) {
		money, err := ParseMoney(text, currency)
		if err != nil {
			return
		}
		if back, err := ParseMoney(money.Decimal(currency), currency); err != nil || back != money {
			t.Errorf("%q was read as %d, which is written %s and read as %d, %v", text, money, money.Decimal(currency), back, err)
		}
	})
}
