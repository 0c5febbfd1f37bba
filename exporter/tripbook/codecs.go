package tripbook

import (
	"slices"
	"strconv"
	"strings"

	"sumpter/domain/optional"
	"sumpter/domain/units"
)

func says(text string) func(*scope) string { return func(*scope) string { return text } }

func textContent(text string) content { return content{text: text} }

func numberContent(text string) content { return content{text: text, numeric: text != ""} }

// spreadsheetErrors are what a cell shows whose formula failed.
var spreadsheetErrors = []string{"#REF!", "#N/A", "#VALUE!", "#NAME?", "#DIV/0!", "#NULL!", "#NUM!", "#SPILL!", "#CALC!"}

// line is one line of text, blanks around it taken away.
func line() codec[string] {
	return codec[string]{
		look: asLine, allowed: says("text"),
		write: func(text string, _ *scope, _ unit) content { return textContent(text) },
		read:  func(text string, _ *scope, _ unit) (string, string) { return strings.TrimSpace(text), "" },
	}
}

// notes is text of several lines, kept as it is.
func notes() codec[string] {
	c := line()
	c.look = asText
	c.read = func(text string, _ *scope, _ unit) (string, string) { return text, "" }
	return c
}

// word is one of a closed list; capitals and hyphens do not matter.
func word[T ~string](list []T) codec[T] {
	choices := make([]string, 0, len(list))
	byKey := make(map[string]T, len(list))
	for _, choice := range list {
		choices = append(choices, string(choice))
		byKey[wordKey(string(choice))] = choice
	}
	return codec[T]{
		look: asLine, choices: choices, strict: true, allowed: says(strings.Join(choices, ", ")),
		write: func(value T, _ *scope, _ unit) content { return textContent(string(value)) },
		read: func(text string, _ *scope, _ unit) (T, string) {
			if choice, ok := byKey[wordKey(text)]; ok {
				return choice, ""
			}
			return "", "is not known"
		},
	}
}

var joiners = strings.NewReplacer("-", "", "_", "", " ", "")

// wordKey is how headings and words of a list are compared: letters only.
func wordKey(text string) string { return joiners.Replace(nameKey(text)) }

// How people answer a question on paper and in spreadsheets.
var (
	yesWords = []string{"yes", "y", "true", "1", "x", "✓", "✔", "☑", "ok", "ja", "j", "oui", "si", "sí", "sim", "wahr", "vrai"}
	noWords  = []string{"no", "n", "false", "0", "-", "–", "✗", "✘", "☐", "none", "nein", "non", "não", "falsch", "faux"}
)

func yesNo() codec[bool] {
	return codec[bool]{
		look: asLine, choices: []string{"yes", "no"}, allowed: says("yes or no"),
		write: func(value bool, _ *scope, _ unit) content {
			if value {
				return textContent("yes")
			}
			return textContent("no")
		},
		read: func(text string, _ *scope, _ unit) (bool, string) {
			switch key := nameKey(text); {
			case slices.Contains(yesWords, key):
				return true, ""
			case slices.Contains(noWords, key):
				return false, ""
			default:
				return false, "is neither yes nor no"
			}
		},
	}
}

// count is a whole number from 0.
func count() codec[int] {
	return codec[int]{
		look: asNumber, allowed: says("a whole number from 0"),
		write: func(value int, _ *scope, _ unit) content { return numberContent(strconv.Itoa(value)) },
		read: func(text string, _ *scope, _ unit) (int, string) {
			decimal, wrong := plainDecimal(text)
			if wrong != "" {
				return 0, wrong
			}
			size, err := strconv.ParseFloat(decimal, 64)
			if err != nil || size != float64(int(size)) || size < 0 || size > 1e9 {
				return 0, "is not a whole number from 0"
			}
			return int(size), ""
		},
	}
}

// number is a float in the inner unit of the quantity.
func number[T ~float64](q *quantity) codec[T] {
	return codec[T]{
		look: asNumber, quantity: q, allowed: says(aNumber(q)),
		write: func(value T, _ *scope, u unit) content { return numberContent(u.writeFloat(float64(value))) },
		read: func(text string, _ *scope, u unit) (T, string) {
			value, wrong := q.float(text, u)
			return T(value), wrong
		},
	}
}

// exact is a whole number of the inner unit: milligrams, microlitres.
func exact[T ~int64](q *quantity) codec[T] {
	return codec[T]{
		look: asNumber, quantity: q, allowed: says(aNumber(q)),
		write: func(value T, _ *scope, u unit) content { return numberContent(u.writeWhole(int64(value))) },
		read: func(text string, _ *scope, u unit) (T, string) {
			value, wrong := q.whole(text, u)
			return T(value), wrong
		},
	}
}

func aNumber(q *quantity) string {
	if symbols := q.symbols(); symbols != "" {
		return "a number (" + symbols + ")"
	}
	return "a number"
}

func money() codec[units.Money] {
	return codec[units.Money]{
		look: asNumber, money: true, allowed: func(s *scope) string { return "an amount in " + s.currency },
		write: func(value units.Money, s *scope, _ unit) content { return numberContent(value.Decimal(s.currency)) },
		read: func(text string, s *scope, _ unit) (units.Money, string) {
			text = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), s.currency))
			decimal, wrong := plainDecimal(text)
			if wrong != "" {
				return 0, wrong
			}
			size, err := strconv.ParseFloat(decimal, 64)
			if err != nil || size > 1e12 || size < -1e12 {
				return 0, "is too large"
			}
			// What a spreadsheet computed may end in ...0000000004.
			rounded := strings.TrimRight(strings.TrimRight(strconv.FormatFloat(size, 'f', 6, 64), "0"), ".")
			amount, err := units.ParseMoney(rounded, s.currency)
			if err != nil {
				return 0, "has more decimals than " + s.currency + " has coins for"
			}
			return amount, ""
		},
	}
}

func date() codec[units.Date] {
	return codec[units.Date]{
		look: asDate, allowed: says(allowedDate),
		write: func(value units.Date, _ *scope, _ unit) content {
			if !value.IsSet() {
				return content{}
			}
			return numberContent(strconv.Itoa(serial(value)))
		},
		read: func(text string, s *scope, _ unit) (units.Date, string) { return parseDate(text, s.from1904) },
	}
}

// maybe is a value that may be unknown: a blank cell.
func maybe[T any](c codec[T]) codec[optional.Value[T]] {
	return codec[optional.Value[T]]{
		look: c.look, quantity: c.quantity, choices: c.choices, strict: c.strict, money: c.money,
		allowed: func(s *scope) string { return c.allowed(s) + ", or nothing where it is unknown" },
		write: func(value optional.Value[T], s *scope, u unit) content {
			known, ok := value.Get()
			if !ok {
				return content{}
			}
			return c.write(known, s, u)
		},
		read: func(text string, s *scope, u unit) (optional.Value[T], string) {
			value, wrong := c.read(text, s, u)
			return optional.Of(value), wrong
		},
	}
}

// orBlank writes the zero value as a blank cell.
func orBlank[T comparable](c codec[T]) codec[T] {
	write := c.write
	c.write = func(value T, s *scope, u unit) content {
		var zero T
		if value == zero {
			return content{}
		}
		return write(value, s, u)
	}
	return c
}

// currency is the code of ISO 4217.
func currency() codec[string] {
	c := line()
	c.allowed = says("three letters of ISO 4217, such as EUR")
	c.read = func(text string, _ *scope, _ unit) (string, string) { return currencyCode(text) }
	return c
}

func currencyCode(text string) (string, string) {
	code := strings.ToUpper(strings.TrimSpace(text))
	if len(code) != 3 || strings.Trim(code, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "" {
		return "", "is not the code of a currency"
	}
	return code, ""
}
