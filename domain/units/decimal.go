package units

import (
	"errors"
	"math/big"
	"strconv"
	"strings"
)

// largestQuantity bounds what any field may hold, in thousandths: a million
// kilograms. It keeps sums of thousands of fields far from overflow.
const largestQuantity = 1_000_000_000_000

var (
	errNotNumber = errors.New("not a number")
	errTooFine   = errors.New("more than three decimals")
	errTooLarge  = errors.New("too large")
)

// thousandths writes n/1000 as the shortest exact decimal.
func thousandths(n int64) []byte {
	sign, rest := magnitude(n)
	text := sign + strconv.FormatUint(rest/1000, 10)
	if rest %= 1000; rest != 0 {
		fraction := strconv.FormatUint(rest+1000, 10)[1:]
		text += "." + strings.TrimRight(fraction, "0")
	}
	return []byte(text)
}

// magnitude splits a number into its sign and the rest, which fits even where
// the number is the smallest there is.
func magnitude(n int64) (sign string, rest uint64) {
	if n < 0 {
		return "-", -uint64(n)
	}
	return "", uint64(n)
}

// notInNumbers tells the signs that no JSON number holds; fractions and
// binary digits are the parser's, not ours.
func notInNumbers(r rune) bool { return !strings.ContainsRune("0123456789+-.eE", r) }

// readThousandths reads a JSON number exactly, with no float between.
func readThousandths(data []byte) (int64, error) {
	text := string(data)
	if len(text) > 40 || strings.ContainsFunc(text, notInNumbers) {
		return 0, errNotNumber
	}
	if i := strings.IndexAny(text, "eE"); i >= 0 {
		exponent, err := strconv.Atoi(text[i+1:])
		if err != nil || exponent > 15 || exponent < -15 {
			return 0, errTooLarge
		}
	}
	value, ok := new(big.Rat).SetString(text)
	if !ok {
		return 0, errNotNumber
	}
	value.Mul(value, big.NewRat(1000, 1))
	if !value.IsInt() {
		return 0, errTooFine
	}
	whole := value.Num()
	if !whole.IsInt64() || whole.Int64() > largestQuantity || whole.Int64() < -largestQuantity {
		return 0, errTooLarge
	}
	return whole.Int64(), nil
}
