package recipes

import (
	"cmp"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/document"
	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/findings"
	"sumpter/domain/menu"
	"sumpter/domain/trip"
)

// eatersTab is for whom the recipe can be served, with which swaps, and for
// whom not and why.
type eatersTab struct {
	side    *sidePanel
	recipe  trip.RecipeID
	summary *look.Paragraph
	diets   *look.Paragraph
	table   *grid.Grid[trip.MemberID]
	why     *look.Paragraph
	content fyne.CanvasObject
}

func newEatersTab(side *sidePanel) *eatersTab {
	words := func() *look.Paragraph { return look.NewParagraph("", look.Body, look.Ink) }
	e := &eatersTab{side: side, summary: words(), diets: words(), why: words()}
	b := side.screen.bench
	e.table = grid.New([]grid.Column[trip.MemberID]{
		{Title: lang.L("Member"), Width: 120, Text: func(id trip.MemberID) string {
			if m := b.Trip().Member(id); m != nil {
				return m.Name
			}
			return ""
		}},
		{Title: lang.L("Eats it"), Width: 110, Text: e.eats, Tone: e.tone},
		{Title: lang.L("How, or why not"), Width: 420, Text: e.how},
	}, grid.Options[trip.MemberID]{
		Key: func(id trip.MemberID) string { return bench.IDText(int64(id)) }, Sticky: 1, OnSelect: e.explain, OnProblem: b.Say, Clipboard: b.Clipboard,
		OnOpen: func(id trip.MemberID) {
			b.Document.GoTo(document.Place{Screen: "crew", Place: findings.Place{Member: id}})
		},
	})
	caution := bench.SmallPrint(lang.L("By the labels as entered. Read each label again when you buy, and ask the member and, in doubt, their doctor."))
	e.content = container.NewBorder(container.NewVBox(e.summary, e.diets), container.NewVBox(e.why, caution), nil, nil, e.table)
	return e
}

func (e *eatersTab) show(recipe *trip.Recipe) {
	e.recipe = recipe.ID
	tasted := e.side.tasting(recipe)
	rows := make([]trip.MemberID, len(tasted.tried))
	for i, one := range tasted.tried {
		rows[i] = one.Member
	}
	slices.SortStableFunc(rows, func(a, b trip.MemberID) int { return cmp.Compare(e.ease(a), e.ease(b)) })
	e.table.SetRows(rows)
	e.summary.SetContent(servedWords(e.side.screen.bench.Trip(), tasted))
	e.diets.SetContent(lang.L("Suits, swaps taken:") + " " + e.side.facts(recipe).dietWords() + ".")
	if id, ok := e.table.Selected(); ok {
		e.explain(id)
	}
}

// servedWords says for how many it can be served and from how many pots.
func servedWords(t *trip.Trip, f *tasting) string {
	pots := 0
	for _, one := range f.tried {
		if one.Served {
			pots = max(pots, one.Pot+1)
		}
	}
	values := map[string]any{"Served": len(f.tried) - len(f.refused), "All": len(f.tried), "Pots": pots, "Names": refusedNames(t, f)}
	switch {
	case len(f.refused) > 0:
		return lang.X("served-some", "Can be served to {{.Served}} of {{.All}}; not to {{.Names}}.", values)
	case pots > 1:
		return lang.X("served-pots", "Can be served to all {{.All}}, from {{.Pots}} pots because of swaps.", values)
	default:
		return lang.X("served-all", "Can be served to all {{.All}} from one pot.", values)
	}
}

func (e *eatersTab) tasting(id trip.MemberID) (*trip.Recipe, menu.Tasting) {
	if recipe := e.side.current(); recipe != nil {
		for _, one := range e.side.tasting(recipe).tried {
			if one.Member == id {
				return recipe, one
			}
		}
	}
	return nil, menu.Tasting{}
}

func (e *eatersTab) eats(id trip.MemberID) string {
	recipe, one := e.tasting(id)
	switch {
	case recipe == nil:
		return ""
	case !one.Served:
		return lang.L("no")
	case swapsOf(e.side.screen.bench.Trip(), recipe, one) != "":
		return lang.L("with swaps")
	default:
		return lang.L("as written")
	}
}

// ease puts first who cannot eat the recipe, then who takes swaps.
func (e *eatersTab) ease(id trip.MemberID) int {
	recipe, one := e.tasting(id)
	switch {
	case recipe == nil || !one.Served:
		return 0
	case swapsOf(e.side.screen.bench.Trip(), recipe, one) != "":
		return 1
	default:
		return 2
	}
}

func (e *eatersTab) tone(id trip.MemberID) fyne.ThemeColorName {
	if _, one := e.tasting(id); !one.Served {
		return look.Brick
	}
	return look.Spruce
}

func (e *eatersTab) how(id trip.MemberID) string {
	recipe, one := e.tasting(id)
	if recipe == nil {
		return ""
	}
	if !one.Served {
		return whyNot(e.side.screen.bench.Trip(), one)
	}
	return swapsOf(e.side.screen.bench.Trip(), recipe, one)
}

// explain writes the whole of what the table may cut.
func (e *eatersTab) explain(id trip.MemberID) {
	if m := e.side.screen.bench.Trip().Member(id); m != nil {
		text := e.eats(id)
		if how := e.how(id); how != "" {
			text += ": " + how
		}
		e.why.SetContent(m.Name + ": " + text + ".")
	}
}
