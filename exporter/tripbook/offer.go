package tripbook

import (
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Lengths that a spreadsheet allows for the prompt beside a cell.
const (
	longestPromptTitle = 32
	longestPrompt      = 250
)

// offer puts the help of a column beside its cells, and its drop-down into them.
func (b *book) offer(sheet, cells string, h *head) error {
	offered := excelize.NewDataValidation(true)
	offered.SetSqref(cells)
	offered.SetInput(cut(h.title, longestPromptTitle), cut(h.help, longestPrompt))
	source, err := b.source(h)
	if err != nil {
		return err
	}
	if source != "" {
		offered.SetSqrefDropList(source)
		offered.ShowErrorMessage = false
		if h.strict {
			offered.SetError(excelize.DataValidationErrorStyleStop, cut(h.title, longestPromptTitle), cut("Allowed: "+h.allowed(b.scope), 220))
		}
	}
	return b.file.AddDataValidation(sheet, offered)
}

// source gives the range a drop-down takes its words from: the names on
// another sheet, or a column of the helper sheet.
func (b *book) source(h *head) (string, error) {
	if h.refers != nil {
		return fmt.Sprintf("'%s'!$A$2:$A$%d", h.refers(b.scope).sheet, lastRow), nil
	}
	if len(h.choices) == 0 {
		return "", nil
	}
	key := strings.Join(h.choices, "\n")
	column := slices.Index(b.lists, key)
	if column < 0 {
		column = len(b.lists)
		b.lists = append(b.lists, key)
		for i, choice := range h.choices {
			if err := b.put(sheetLists, cellName(column, i+1), textContent(choice)); err != nil {
				return "", err
			}
		}
	}
	letters, err := excelize.ColumnNumberToName(column + 1)
	if err != nil {
		return "", err
	}
	return fmt.Sprintf("%s!$%s$1:$%s$%d", sheetLists, letters, letters, len(h.choices)), nil
}

func cut(text string, most int) string {
	if runes := []rune(text); len(runes) > most {
		return string(runes[:most-1]) + "…"
	}
	return text
}
