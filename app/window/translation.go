package window

import (
	"strings"
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/window/translation"
)

// toolkitOnly are the languages the toolkit speaks and we do not.
var toolkitOnly = []fyne.Locale{"cs", "el", "es", "fr", "ja", "pl", "pt", "pt-BR", "ru", "sv", "ta", "uk", "zh-Hans"}

// addTranslations hands the texts to the toolkit, once: it keeps them for as
// long as the program runs.
var addTranslations = sync.OnceFunc(useTranslations)

// useTranslations makes the window speak the system's language. Where only the
// toolkit speaks it, the English texts stand in: otherwise each of them would
// be looked for and reported as missing every time it is shown.
func useTranslations() {
	for _, language := range translation.Languages() {
		use(language, fyne.Locale(language))
	}
	spoken, _, _ := strings.Cut(lang.SystemLocale().String(), "-")
	for _, language := range toolkitOnly {
		if base, _, _ := strings.Cut(language.String(), "-"); base == spoken {
			use(translation.English, language)
		}
	}
}

// use hands the texts of a language to the toolkit, for a locale.
func use(language string, locale fyne.Locale) {
	texts, err := translation.Files.ReadFile(language + ".json")
	if err == nil {
		err = lang.AddTranslationsForLocale(texts, locale)
	}
	if err != nil {
		fyne.LogError("The "+language+" texts cannot be used for "+locale.String(), err)
	}
}
