package window

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"log"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/app/window/translation"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

var update = flag.Bool("update", false, "write translation/en.json anew from the source")

// TestMain pins the language: the tests press buttons by their English names.
func TestMain(m *testing.M) {
	flag.Parse()
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANGUAGE"} {
		if err := os.Unsetenv(name); err != nil {
			log.Fatal(err)
		}
	}
	if err := os.Setenv("LANG", "en_US.UTF-8"); err != nil {
		log.Fatal(err)
	}
	os.Exit(m.Run())
}

// speak changes the language until the test ends. Unix reads it from the
// environment each time texts are added.
func speak(t *testing.T, locale string) {
	t.Helper()
	addTranslations()
	t.Cleanup(useTranslations) // runs after the environment is as it was
	t.Setenv("LANG", locale)
	useTranslations()
}

// logged gives what the program reported while a test ran.
func logged(t *testing.T) *bytes.Buffer {
	t.Helper()
	was, text := log.Writer(), &bytes.Buffer{}
	log.SetOutput(text)
	t.Cleanup(func() { log.SetOutput(was) })
	return text
}

// readTranslation reads a file of texts. A text whose key the format keeps for
// itself, such as "other", is written as {"other": {"other": "text"}}.
func readTranslation(t *testing.T, language string) map[string]string {
	t.Helper()
	content, err := translation.Files.ReadFile(language + ".json")
	if err != nil {
		t.Fatal(err)
	}
	var raw map[string]any
	if err := json.Unmarshal(content, &raw); err != nil {
		t.Fatal(err)
	}
	read := map[string]string{}
	for key, value := range raw {
		if wrapped, ok := value.(map[string]any); ok {
			value = wrapped["other"]
		}
		text, ok := value.(string)
		if !ok || text == "" {
			t.Fatalf("%s.json: %q has no text", language, key)
		}
		read[key] = text
	}
	return read
}

var variable = regexp.MustCompile(`{{\s*\.(\w+)\s*}}`)

// variables lists what a text wants filled in, and verbs of the fmt package.
func variables(text string) []string {
	var names []string
	for _, match := range variable.FindAllStringSubmatch(text, -1) {
		names = append(names, match[1])
	}
	slices.Sort(names)
	return slices.Compact(names)
}

var verb = regexp.MustCompile(`%[-+#0]*[\d.]*(?:\[(\d+)\])?([a-zA-Z%])`)

// verbs lists which arguments of package fmt a text wants and by which verbs:
// "2d". A language may put them in another order and say one twice.
func verbs(text string) []string {
	var list []string
	next := 1
	for _, match := range verb.FindAllStringSubmatch(text, -1) {
		if match[2] == "%" {
			continue
		}
		if at, err := strconv.Atoi(match[1]); err == nil {
			next = at
		}
		list = append(list, strconv.Itoa(next)+match[2])
		next++
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// TestGermanIsWrittenWhole writes every German format with arguments for its
// verbs, in case package fmt and verbs read one differently.
func TestGermanIsWrittenWhole(t *testing.T) {
	samples := map[byte]any{'s': "s", 'q': "q", 'v': "v", 'd': 2, 'U': 'u', 'f': 1.5, 'g': 1.5, 'e': 1.5, 'x': 3}
	for english, translated := range readTranslation(t, "de") {
		wanted := verbs(english)
		if len(wanted) == 0 {
			continue
		}
		args := make([]any, len(wanted))
		for _, verb := range wanted {
			at, err := strconv.Atoi(verb[:len(verb)-1])
			if err != nil || at > len(args) {
				t.Fatalf("%q: %v", english, wanted)
			}
			args[at-1] = samples[verb[len(verb)-1]]
		}
		if got := fmt.Sprintf(translated, args...); strings.Contains(got, "%!") {
			t.Errorf("%q is written %q", translated, got)
		}
	}
}

func TestVerbsAreToldApart(t *testing.T) {
	for text, want := range map[string]string{
		"plain, 5 %%": "", "%s %d": "1s 2d", "%[2]d, %[1]s": "1s 2d", "%.1f %% of %s": "1f 2s", "%[2]s %s": "2s 3s", "%+.0f %.1[1]f": "1f",
	} {
		if got := strings.Join(verbs(text), " "); got != want {
			t.Errorf("%q wants %q, not %q", text, got, want)
		}
	}
}

func TestTheSourceSaysItsTextsRightly(t *testing.T) {
	found := collectTexts(t)
	for _, problem := range found.wrong {
		t.Error(problem)
	}
	if len(found.english) < 500 {
		t.Errorf("only %d texts were found in the source", len(found.english))
	}
}

func TestGermanIsComplete(t *testing.T) {
	found, german := collectTexts(t), readTranslation(t, "de")
	for _, key := range slices.Sorted(maps.Keys(found.english)) {
		english := found.english[key]
		translated, ok := german[key]
		switch {
		case !ok:
			t.Errorf("%s: de.json lacks %q (%s)", found.where[key], key, english)
		case !slices.Equal(variables(english), variables(translated)):
			t.Errorf("%s: %q fills in %v in English, %v in German", found.where[key], key, variables(english), variables(translated))
		case !slices.Equal(verbs(english), verbs(translated)):
			t.Errorf("%s: %q and its German %q differ in their verbs", found.where[key], english, translated)
		case strings.Count(translated, "{{") != len(variable.FindAllString(translated, -1)):
			t.Errorf("%s: the German of %q has a variable that is not one: %s", found.where[key], key, translated)
		case strings.TrimSpace(translated) != translated:
			t.Errorf("%s: the German of %q begins or ends with a space", found.where[key], key)
		}
	}
	for _, key := range slices.Sorted(maps.Keys(german)) {
		if _, used := found.english[key]; !used {
			t.Errorf("de.json has %q, which nothing says any more", key)
		}
	}
}

func TestEnglishIsWhatTheSourceSays(t *testing.T) {
	found := collectTexts(t)
	if *update {
		writeEnglish(t, found.english)
		t.Skip("en.json is written; run again without -update")
	}
	if !maps.Equal(found.english, readTranslation(t, "en")) {
		t.Error("en.json is not what the source says: go test ./app/window -run English -update")
	}
}

func writeEnglish(t *testing.T, english map[string]string) {
	t.Helper()
	content := map[string]any{}
	for key, text := range english {
		content[key] = text
		if key == "other" {
			content[key] = map[string]string{"other": text}
		}
	}
	var written bytes.Buffer
	encoder := json.NewEncoder(&written)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "\t")
	if err := encoder.Encode(content); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join("translation", "en.json"), written.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

func TestUnderAGermanSystemTheWindowSpeaksGerman(t *testing.T) {
	speak(t, "de_DE.UTF-8")
	reported := logged(t)
	w, _ := openDemo(t)
	german := readTranslation(t, "de")
	for i, screen := range w.screens {
		w.showScreen(i)
		if w.shown != i {
			t.Errorf("the screen %s does not come up", screen.Name())
		}
	}
	for name, key := range map[string]string{"crew": "Crew", "menu": "Menu", "packing": "Packing night"} {
		if got := titleOf(w, name); got != german[key] || got == key {
			t.Errorf("the navigation calls %s %q, not %q", name, got, german[key])
		}
	}
	if undo := actionNamed(w, "Rückgängig"); undo == nil {
		t.Error("there is no Rückgängig among the actions")
	}
	if reported.Len() > 0 {
		t.Errorf("reported while showing every screen: %.2000s", reported)
	}
}

// titleOf is what the navigation shows for a screen.
func titleOf(w *Workbench, name string) string {
	for i, screen := range w.screens {
		if screen.Name() == name {
			return w.navigation.entries[i].word
		}
	}
	return ""
}

func TestALanguageOfTheToolkitAloneIsQuiet(t *testing.T) {
	for _, language := range toolkitOnly {
		t.Run(language.String(), func(t *testing.T) {
			speak(t, strings.ReplaceAll(language.String(), "-Hans", "_CN")+".UTF-8")
			reported := logged(t)
			if got := lang.L("Packing night"); got != "Packing night" {
				t.Errorf("the packing night is called %q", got)
			}
			if got := lang.L("Yes"); got == "Yes" {
				t.Errorf("the toolkit does not speak %s: it needs no stand-in", language)
			}
			if reported.Len() > 0 {
				t.Errorf("reported: %s", reported)
			}
		})
	}
}

func TestWithoutALanguageOfOursTheWindowSpeaksEnglish(t *testing.T) {
	for _, locale := range []string{"", "C", "nl_NL.UTF-8"} {
		speak(t, locale)
		reported := logged(t)
		if got := lang.L("Packing night"); got != "Packing night" || strings.Contains(reported.String(), "ranslation") {
			t.Errorf("under LANG=%q the packing night is called %q; reported %s", locale, got, reported)
		}
	}
}

func TestAllergensTypedInGermanAreTheSameAllergens(t *testing.T) {
	speak(t, "de_DE.UTF-8")
	german := readTranslation(t, "de")
	for _, allergen := range trip.KnownAllergens() {
		word := bench.AllergenWord(allergen, units.Metric)
		if word != german[string(allergen)] {
			t.Errorf("%s is shown as %q", allergen, word)
		}
		if got := bench.ReadAllergen(strings.ToUpper(word)); got != allergen {
			t.Errorf("%q is read as %q, not %s: foods would not declare it", word, got, allergen)
		}
	}
	for _, diet := range trip.KnownDiets() {
		if got := bench.ReadDiet(bench.DietWord(diet)); got != diet {
			t.Errorf("%q is read as %q, not %s", bench.DietWord(diet), got, diet)
		}
	}
	if date, err := units.ParseDate("2026-03-02"); err != nil || bench.DateWords(date) != "Mo 2. März 2026" {
		t.Errorf("a date is written %q, %v", bench.DateWords(date), err)
	}
}
