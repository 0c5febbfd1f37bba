package window

import (
	"embed"
	"strings"
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
)

// The texts of the window in each language, the files named as the toolkit
// wants them: by the bare language, since a region hides the toolkit's own words.
//
//go:embed translation/*.json
var translations embed.FS

const translationFolder = "translation"

// toolkitOnly are the languages the toolkit speaks and we do not.
var toolkitOnly = []fyne.Locale{"cs", "el", "es", "fr", "ja", "pl", "pt", "pt-BR", "ru", "sv", "ta", "uk", "zh-Hans"}

// addTranslations hands the texts to the toolkit, once: it keeps them for as
// long as the program runs.
var addTranslations = sync.OnceFunc(useTranslations)

// useTranslations makes the window speak the system's language. Where only the
// toolkit speaks it, the English texts stand in: otherwise each of them would
// be looked for and reported as missing every time it is shown.
func useTranslations() {
	if err := lang.AddTranslationsFS(translations, translationFolder); err != nil {
		fyne.LogError("The translations cannot be read", err)
		return
	}
	spoken, _, _ := strings.Cut(lang.SystemLocale().String(), "-")
	for _, language := range toolkitOnly {
		if base, _, _ := strings.Cut(language.String(), "-"); base == spoken {
			standIn(language)
		}
	}
}

func standIn(language fyne.Locale) {
	english, err := translations.ReadFile(translationFolder + "/en.json")
	if err == nil {
		err = lang.AddTranslationsForLocale(english, language)
	}
	if err != nil {
		fyne.LogError("The English texts cannot stand in for "+language.String(), err)
	}
}
