package units

import (
	"fmt"
	"strconv"
	"strings"
)

// Money is an amount in the smallest unit of the trip's currency (cents where
// it has them). It is never a float.
type Money int64

// minorDigits lists the currencies of ISO 4217 that do not have two decimals
// (from memory of the standard's table A.1).
var minorDigits = map[string]int{
	"BHD": 3, "CLP": 0, "ISK": 0, "IQD": 3, "JPY": 0, "JOD": 3, "KRW": 0, "KWD": 3,
	"LYD": 3, "OMR": 3, "PYG": 0, "RWF": 0, "TND": 3, "UGX": 0, "UYI": 0, "VND": 0,
	"VUV": 0, "XAF": 0, "XOF": 0, "XPF": 0,
}

// CurrencyDigits gives the decimals of an ISO 4217 currency code.
func CurrencyDigits(currency string) int {
	if digits, ok := minorDigits[currency]; ok {
		return digits
	}
	return 2
}

// Format writes the amount with the decimals its currency has, then the code.
func (m Money) Format(currency string) string { return m.Decimal(currency) + " " + currency }

// Decimal writes the amount with the decimals its currency has.
func (m Money) Decimal(currency string) string {
	digits := CurrencyDigits(currency)
	sign, rest := magnitude(int64(m))
	text := strconv.FormatUint(rest, 10)
	if digits == 0 {
		return sign + text
	}
	if len(text) <= digits {
		text = strings.Repeat("0", digits-len(text)+1) + text
	}
	return sign + text[:len(text)-digits] + "." + text[len(text)-digits:]
}

// ParseMoney reads a plain decimal amount ("12.5") exactly. It refuses more
// decimals than the currency has.
func ParseMoney(text, currency string) (Money, error) {
	digits := CurrencyDigits(currency)
	text = strings.TrimSpace(text)
	whole, fraction, _ := strings.Cut(strings.TrimPrefix(text, "-"), ".")
	if len(fraction) > digits {
		return 0, fmt.Errorf("%q has more than %d decimals, and %s has no smaller coin", text, digits, currency)
	}
	if len(whole) > 12 || strings.Trim(whole+fraction, "0123456789") != "" || whole+fraction == "" {
		return 0, fmt.Errorf("%q is not an amount of money", text)
	}
	n, err := strconv.ParseInt(whole+fraction+strings.Repeat("0", digits-len(fraction)), 10, 64)
	if err != nil {
		return 0, fmt.Errorf("%q is not an amount of money", text)
	}
	if strings.HasPrefix(text, "-") {
		n = -n
	}
	return Money(n), nil
}
