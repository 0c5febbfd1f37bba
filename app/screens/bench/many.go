package bench

import (
	"errors"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// ManyText writes the price of many bought at once: "from 4: 3.45".
func ManyText(p *trip.Package, currency string) string {
	each, known := p.ManyPrice.Get()
	if p.ManyFrom == 0 || !known {
		return ""
	}
	return lang.X("many-from", "from {{.Count}}: {{.Price}}", map[string]any{"Count": p.ManyFrom, "Price": written.Money(each, currency)})
}

// ReadMany reads the number from which on each costs less, and that price:
// "4: 3.45"; nothing takes it out.
func ReadMany(p *trip.Package, text, currency string) error {
	var parts []string
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ':' || r == '×' || r == '+' || r == '=' }) {
		if strings.ContainsAny(part, "0123456789") {
			parts = append(parts, part)
		}
	}
	if len(parts) == 0 && strings.TrimSpace(text) == "" {
		p.ManyFrom, p.ManyPrice = 0, optional.Unknown[units.Money]()
		return nil
	}
	if len(parts) != 2 {
		return errors.New(lang.L("Write from how many on, and what each costs then, such as 4: 3.45; nothing means no such price."))
	}
	from, err := typed.Whole(parts[0], 2, 1000)
	if err != nil {
		return err
	}
	each, err := typed.Money(parts[1], currency)
	if err == nil {
		p.ManyFrom, p.ManyPrice = from, optional.Of(each)
	}
	return err
}
