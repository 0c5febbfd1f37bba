package prose_test

import (
	"encoding/json"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// german is a reader with a small dictionary.
func german() prose.Reader {
	words := map[string]string{
		"%s gets %s of %s for %s.": "Zum %[4]s bekommt %[1]s %[2]s %[3]s.",
		"dinner":                   "Abendessen",
		"%.1f hours":               "%.1f Stunden",
		"%s and %d more":           "%s und %d weitere",
		"%s %d %s %d":              "%s %d. %s %d",
		"Mon":                      "Mo", "Jul": "Juli", "cups": "Tassen",
		"%d day": "%d Tag", "%d days": "%d Tage",
	}
	return prose.Reader{DecimalSign: ",", Words: func(english string) string {
		if word, ok := words[english]; ok {
			return word
		}
		return english
	}}
}

func TestATextIsWrittenForItsReader(t *testing.T) {
	day, err := units.NewDate(2026, 7, 20)
	if err != nil {
		t.Fatal(err)
	}
	days := func(n int) prose.Text { return prose.Plural(n, prose.Say("%d day", n), prose.Say("%d days", n)) }
	us := german()
	us.Units = units.US
	for _, c := range []struct {
		text            prose.Text
		english, german string
	}{
		{prose.Text{}, "", ""},
		{prose.Verbatim("100 %"), "100 %", "100 %"},
		{prose.Say("100 %%"), "100 %", "100 %"},
		{prose.Say("%s gets %s of %s for %s.", "Jo", 12500*units.Gram, "dinner", trip.Dinner), "Jo gets 12.5 kg of dinner for dinner.", "Zum Abendessen bekommt Jo 12,5 kg dinner."},
		{prose.Say("%.1f hours", 7.25), "7.2 hours", "7,2 Stunden"},
		{prose.Say("%.1f hours", units.Hours(7.5)), "7.5 hours", "7,5 Stunden"},
		{prose.Say("%s", day), "Mon 20 Jul 2026", "Mo 20. Juli 2026"},
		{prose.Say("%s", units.Date(0)), "", ""},
		{prose.Say("%s and %d more", prose.List(", ", []string{"A", "B"}), 2), "A, B and 2 more", "A, B und 2 weitere"},
		{days(1), "1 day", "1 Tag"},
		{days(2), "2 days", "2 Tage"},
		{days(0), "0 days", "0 Tage"},
		{prose.Say("%s, %s", prose.Distance(1500), prose.Height(1500)), "1.5 km, 1500 m", "1,5 km, 1500 m"},
		{prose.Say("%s", units.Celsius(-3)), "-3 °C", "-3 °C"},
		{prose.Say("%s", 1500*units.Millilitre), "1.5 L", "1,5 L"},
		{prose.Say("%s", prose.Price{Amount: 1250, Currency: "EUR"}), "12.50 EUR", "12,50 EUR"},
		{prose.Say("One.").Then(prose.Text{}).Then(prose.Say("Two.")), "One. Two.", "One. Two."},
		{prose.List("; ", []prose.Text{{}, {}}), "", ""},
	} {
		if got := c.text.String(); got != c.english {
			t.Errorf("English: %q, want %q", got, c.english)
		}
		if got := c.text.In(german()); got != c.german {
			t.Errorf("German: %q, want %q", got, c.german)
		}
		if c.text.IsZero() != (c.english == "") && c.english != "" {
			t.Errorf("%q says nothing: %v", c.english, c.text.IsZero())
		}
	}
	if got := prose.Say("%s", 600*units.Millilitre).In(us); got != "2,5 Tassen" {
		t.Errorf("a US reader of German reads %q", got)
	}
}

func TestAWrittenTextReadsBackAsWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		said := prose.Say("%s: %q %.2f %s", rapid.String().Draw(t, "name"), "x", rapid.Float64Range(-1e6, 1e6).Draw(t, "number"),
			units.Mass(rapid.Int64Range(0, 1e12).Draw(t, "mass")))
		encoded, err := json.Marshal(said)
		if err != nil {
			t.Fatal(err)
		}
		var read prose.Text
		if err := json.Unmarshal(encoded, &read); err != nil {
			t.Fatal(err)
		}
		again, err := json.Marshal(read)
		if err != nil || string(again) != string(encoded) {
			t.Fatalf("%s is read as %s, %v", encoded, again, err)
		}
	})
}
