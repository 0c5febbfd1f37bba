package bench

import (
	"strings"

	"fyne.io/fyne/v2/lang"
)

// AsideWords says whose packs the shares of choices between few hand-overs and a
// fair load leave out.
func AsideWords(names []string) string {
	return lang.X("choices-aside", "Own kit and what nobody else may carry are more than a fair load in any case for {{.Names}}. The shares of the choices are those of the others.",
		map[string]any{"Names": strings.Join(names, ", ")})
}
