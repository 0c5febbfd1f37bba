package tripbook

import (
	"math"
	"math/big"
	"regexp"
	"strconv"
	"strings"
)

// What spreadsheets and people write as a number.
var (
	plainNumber   = regexp.MustCompile(`^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d{1,3})?$`)
	groupedPoint  = regexp.MustCompile(`^[+-]?\d{1,3}(,\d{3})+\.\d+$`)                        // 1,234.5
	groupedComma  = regexp.MustCompile(`^[+-]?\d{1,3}(\.\d{3})+,\d+$`)                        // 1.234,5
	groupsOnly    = regexp.MustCompile(`^[+-]?\d{1,3}((\.\d{3}){2,}|(,\d{3}){2,})$`)          // 1,234,567
	decimalComma  = regexp.MustCompile(`^[+-]?\d*,\d+$`)                                      // 12,5
	twoMeanings   = regexp.MustCompile(`^[+-]?[1-9]\d{0,2},\d{3}$`)                           // 1,234
	spaced        = regexp.MustCompile(`^[+-]?\d{1,3}(['’ \x{a0}\x{202f}]\d{3})+([.,]\d+)?$`) // 1 234,5
	withUnit      = regexp.MustCompile(`^([+-]?[\d.,][\d.,'’ \x{a0}\x{202f}eE+-]*?)\s*([^\d\s.,+-][^\d]*)$`)
	groupingSigns = strings.NewReplacer("'", "", "’", "", " ", "", "\u00a0", "", "\u202f", "")
)

const longestNumber = 60 // digits; more is no measurement

// plainDecimal turns a number as people write it into Go's form, or says what
// is wrong with it. What could be read in two ways is refused: a factor of a
// thousand is not to be guessed at.
func plainDecimal(text string) (decimal, wrong string) {
	text = strings.ReplaceAll(strings.TrimSpace(text), "−", "-")
	if len(text) > longestNumber {
		return "", "is not a number"
	}
	if spaced.MatchString(text) {
		text = groupingSigns.Replace(text)
		if !strings.Contains(text, ".") {
			return strings.Replace(text, ",", ".", 1), ""
		}
		return text, ""
	}
	switch {
	case plainNumber.MatchString(text):
		return text, ""
	case groupedPoint.MatchString(text):
		return strings.ReplaceAll(text, ",", ""), ""
	case groupedComma.MatchString(text):
		return strings.Replace(strings.ReplaceAll(text, ".", ""), ",", ".", 1), ""
	case groupsOnly.MatchString(text):
		return strings.NewReplacer(",", "", ".", "").Replace(text), ""
	case twoMeanings.MatchString(text):
		return "", "can be read in two ways: write it without a comma"
	case decimalComma.MatchString(text):
		return strings.Replace(text, ",", ".", 1), ""
	default:
		return "", "is not a number"
	}
}

// amount reads a number with or without a unit behind it; a unit in the cell
// goes before the one in the heading.
func (q *quantity) amount(text string, heading unit) (value *big.Rat, in unit, wrong string) {
	in = heading
	if parts := withUnit.FindStringSubmatch(strings.TrimSpace(text)); parts != nil {
		written, known := q.named(parts[2])
		if !known {
			if _, bad := plainDecimal(parts[1]); bad == "" {
				return nil, in, "has a unit that does not belong here"
			}
			return nil, in, "is not a number"
		}
		text, in = parts[1], written
	}
	decimal, wrong := plainDecimal(text)
	if wrong != "" {
		return nil, in, wrong
	}
	if size, err := strconv.ParseFloat(decimal, 64); err != nil || math.Abs(size) > 1e15 || (size != 0 && math.Abs(size) < 1e-60) {
		return nil, in, "is too large or too small"
	}
	value, ok := new(big.Rat).SetString(decimal)
	if !ok {
		return nil, in, "is not a number"
	}
	return value, in, ""
}

// inside turns what is written in the unit into SI.
func (u unit) inside(written *big.Rat) *big.Rat {
	value := new(big.Rat).Mul(written, u.factor)
	return value.Add(value, u.offset)
}

// float reads a plain number of SI.
func (q *quantity) float(text string, heading unit) (float64, string) {
	written, in, wrong := q.amount(text, heading)
	if wrong != "" {
		return 0, wrong
	}
	value, _ := in.inside(written).Float64()
	return value, ""
}

// whole reads a whole number of the inner unit, milligrams say, to the nearest.
func (q *quantity) whole(text string, heading unit) (int64, string) {
	written, in, wrong := q.amount(text, heading)
	if wrong != "" {
		return 0, wrong
	}
	return nearest(in.inside(written))
}

const largestWhole = 1_000_000_000_000 // as in package units

func nearest(value *big.Rat) (int64, string) {
	two := big.NewInt(2)
	doubled := new(big.Int).Mul(value.Num(), two)
	doubled.Add(doubled, value.Denom())
	rounded := doubled.Div(doubled, new(big.Int).Mul(value.Denom(), two)) // floor(x + 1/2)
	if !rounded.IsInt64() || rounded.Int64() > largestWhole || rounded.Int64() < -largestWhole {
		return 0, "is too large"
	}
	return rounded.Int64(), ""
}

// mostDecimals is always enough: a float64 has 53 bits, and no factor of the
// table is above a million.
const mostDecimals = 40

// writeFloat writes the shortest decimal in the unit that reads back as value.
func (u unit) writeFloat(value float64) string {
	if u.plain() {
		return strconv.FormatFloat(value, 'f', -1, 64)
	}
	exact := new(big.Rat)
	if exact.SetFloat64(value) == nil {
		return ""
	}
	return u.shortest(exact, func(read *big.Rat) bool {
		back, _ := read.Float64()
		return back == value
	})
}

// writeWhole writes the shortest decimal in the unit that reads back as value.
func (u unit) writeWhole(value int64) string {
	return u.shortest(new(big.Rat).SetInt64(value), func(read *big.Rat) bool {
		back, wrong := nearest(read)
		return wrong == "" && back == value
	})
}

func (u unit) shortest(inside *big.Rat, good func(*big.Rat) bool) string {
	written := new(big.Rat).Sub(inside, u.offset)
	written.Quo(written, u.factor)
	text := ""
	for decimals := range mostDecimals {
		text = written.FloatString(decimals)
		read, _ := new(big.Rat).SetString(text)
		if good(u.inside(read)) {
			break
		}
	}
	if strings.Trim(text, "-0.") == "" {
		return "0"
	}
	return text
}

// plain tells a unit that is the inner one.
func (u unit) plain() bool { return u.offset.Sign() == 0 && u.factor.Cmp(big.NewRat(1, 1)) == 0 }
