package packing

import (
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/bags"
)

// find looks for a bag by its code as people type or call it out: small
// letters, without the dash, or only its beginning. It gives nil and says why
// if there is none, or more than one.
func (w *work) find(text string) (*bags.Bag, string) {
	wanted := plainCode(text)
	if wanted == "" {
		return nil, ""
	}
	var found *bags.Bag
	count := 0
	for i := range w.plan.Bags.Bags {
		bag := &w.plan.Bags.Bags[i]
		code := plainCode(bag.Code)
		if code == wanted {
			return bag, ""
		}
		if strings.HasPrefix(code, wanted) {
			found = bag
			count++
		}
	}
	shown := strings.ToUpper(strings.TrimSpace(text))
	switch {
	case count == 1:
		return found, ""
	case count > 1:
		return nil, lang.X("find-many", "{{.Count}} bags begin with {{.Code}}: type on.", data{"Count": count, "Code": shown})
	case endsInLetter(wanted):
		return nil, lang.X("find-wrong", "No bag is called {{.Code}}: digits and letter do not belong together. Read it again.", data{"Code": shown})
	default:
		return nil, lang.X("find-none", "No bag begins with {{.Code}}.", data{"Code": shown})
	}
}

func plainCode(text string) string {
	return strings.ToUpper(strings.NewReplacer("-", "", " ", "", "–", "").Replace(strings.TrimSpace(text)))
}

func endsInLetter(code string) bool {
	last := code[len(code)-1]
	return last >= 'A' && last <= 'Z'
}
