package window

import (
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/domain/units"
)

// Currencies by ISO 4217 as Unicode CLDR assigns them to regions.
func TestANewTripBeginsInTheUnitsOfTheRegion(t *testing.T) {
	for locale, want := range map[fyne.Locale]struct {
		system   units.System
		currency string
	}{
		"en-US": {units.US, "USD"}, "de-DE": {units.Metric, "EUR"}, "de-CH": {units.Metric, "CHF"}, "en-GB": {units.Metric, "GBP"},
		"es-US": {units.US, "USD"}, "sv-SE": {units.Metric, "SEK"}, "ja-JP": {units.Metric, "JPY"}, "en": {units.Metric, "EUR"}, "": {units.Metric, "EUR"}, "C": {units.Metric, "EUR"},
	} {
		if system, currency := usualIn(locale); system != want.system || currency != want.currency {
			t.Errorf("%q begins with %s and %s, want %s and %s", locale, system, currency, want.system, want.currency)
		}
	}
}
