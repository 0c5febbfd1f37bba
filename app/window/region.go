package window

import (
	"slices"

	"fyne.io/fyne/v2"
	"golang.org/x/text/currency"
	"golang.org/x/text/language"

	"sumpter/domain/units"
)

// customary are the regions that weigh in pounds and walk in miles (Unicode
// CLDR, measurement systems, from memory).
var customary = []string{"US", "LR", "MM"}

// usualIn gives the units and the currency of a region, as a new trip begins
// with them; metric and EUR where a locale names no region.
func usualIn(locale fyne.Locale) (units.System, string) {
	tag, err := language.Parse(locale.String())
	region, sure := tag.Region()
	if err != nil || sure != language.Exact {
		return units.Metric, "EUR"
	}
	system := units.Metric
	if slices.Contains(customary, region.String()) {
		system = units.US
	}
	if money, ok := currency.FromRegion(region); ok {
		return system, money.String()
	}
	return system, "EUR"
}
