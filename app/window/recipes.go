package window

import (
	"errors"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/demo"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/cookbook"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// takeRecipes asks for another trip to take recipes from.
func (w *Workbench) takeRecipes() {
	w.askFile([]string{ending}, w.takeRecipesOf)
}

// takeRecipesOf reads the other trip off the screen; its file stays as it is.
func (w *Workbench) takeRecipesOf(path string) {
	w.scheduler.Background(func() {
		theirs, err := readAside(path)
		w.scheduler.Screen(func() {
			if err != nil {
				w.sayAlways(written.Error(err))
				return
			}
			w.offerRecipes(theirs, filepath.Base(path), lang.L("Foods that come along keep what was read on their labels then: makers change recipes, so read each label again."))
		})
	})
}

// takeDemoRecipes offers those of the demo, whose labels and prices are invented.
func (w *Workbench) takeDemoRecipes() {
	example := demo.Trip()
	w.offerRecipes(cookbook.WithoutLabels(&example), lang.L("the demo trip"), lang.L("The labels and prices of the demo are invented, so they do not come along: of each food that comes, read the label."))
}

// recipeOffer is the dialog in which recipes of another trip are ticked.
type recipeOffer struct {
	w      *Workbench
	mine   *trip.Trip
	theirs *trip.Trip
	name   string // of what they come from
	offers []cookbook.Offer
	chosen []bool
	list   *bench.DialogList
	sum    *look.Paragraph // what would come
	dialog *dialog.CustomDialog
}

func (w *Workbench) offerRecipes(theirs *trip.Trip, name, caution string) {
	if w.document == nil {
		return
	}
	mine := w.document.Trip()
	o := &recipeOffer{w: w, mine: mine, theirs: theirs, name: name, offers: cookbook.Offers(mine, theirs), sum: bench.SmallPrint("")}
	if len(o.offers) == 0 {
		w.say(lang.X("no-recipes-there", "{{.Name}} holds no recipes.", map[string]any{"Name": name}))
		return
	}
	o.chosen = make([]bool, len(o.offers))
	o.list = bench.NewDialogList(func() int { return len(o.offers) }, o.newRow, o.fill)
	o.list.OnSelected = func(i widget.ListItemID) {
		o.list.Unselect(i)
		o.tick(i, !o.chosen[i])
		o.list.RefreshItem(i)
	}
	foot := bench.NewScroll(o.sum)
	foot.SetMinSize(fyne.NewSize(200, 96*look.Scale()))
	o.dialog = bench.NewDialog(w.window, lang.X("recipes-there", "Recipes of {{.Name}}", map[string]any{"Name": name}),
		container.NewBorder(look.NewParagraph(lang.L("Tick what to take. Foods are matched by name: what this trip says of a food stays.")+" "+caution, look.Body, look.Ink), foot, nil, nil, o.list),
		bench.NewDialogButton(lang.L("Tick all"), func() { o.tickAll(true) }),
		bench.NewDialogButton(lang.L("Tick none"), func() { o.tickAll(false) }),
		bench.NewDialogButton(lang.L("Close"), func() { o.dialog.Hide() }),
		bench.NewDialogButton(lang.L("Take what is ticked"), o.take).First())
	o.tell()
	o.dialog.Resize(fyne.NewSize(860, 600))
	o.dialog.Show()
	w.window.Canvas().Focus(o.list)
}

func (o *recipeOffer) newRow() fyne.CanvasObject {
	texts := container.NewVBox(look.NewText("", look.Body, look.Ink).Yielding(), look.NewText("", look.Caption, look.Quiet).Yielding())
	return container.NewBorder(nil, nil, bench.NewDialogCheck("", nil), nil, texts)
}

func (o *recipeOffer) fill(i widget.ListItemID, object fyne.CanvasObject) {
	row := object.(*fyne.Container)
	texts, tick := row.Objects[0].(*fyne.Container), row.Objects[1].(*bench.DialogCheck)
	tick.OnChanged = nil
	tick.SetChecked(o.chosen[i])
	tick.OnChanged = func(on bool) { o.tick(i, on) }
	note, tone := o.note(&o.offers[i])
	texts.Objects[0].(*look.Text).SetContent(o.offers[i].Name)
	below := texts.Objects[1].(*look.Text)
	below.SetTone(tone)
	below.SetContent(note)
}

// note says in one line what comes with a recipe.
func (o *recipeOffer) note(offer *cookbook.Offer) (string, fyne.ThemeColorName) {
	var parts, fresh, differs []string
	tone := look.Quiet
	if offer.Here {
		parts = append(parts, lang.L("a recipe of that name is here: it would come as another"))
	}
	for _, food := range offer.Foods {
		switch {
		case food.New:
			fresh = append(fresh, food.Name)
		case len(food.Differs) > 0:
			differs = append(differs, food.Name)
		}
	}
	if len(fresh) > 0 {
		parts = append(parts, lang.X("recipe-brings", "brings {{.Foods}}", map[string]any{"Foods": strings.Join(fresh, ", ")}))
	}
	if len(differs) > 0 {
		tone = look.Ochre
		parts = append(parts, lang.X("recipe-differs", "another food here: {{.Foods}}", map[string]any{"Foods": strings.Join(differs, ", ")}))
	}
	if len(parts) == 0 {
		parts = append(parts, lang.L("all its foods are here"))
	}
	return strings.Join(parts, " · "), tone
}

func (o *recipeOffer) tick(i int, on bool) {
	o.chosen[i] = on
	o.tell()
}

func (o *recipeOffer) tickAll(on bool) {
	for i := range o.chosen {
		o.chosen[i] = on
	}
	o.list.Refresh()
	o.tell()
}

// tell says what the ticked recipes bring, and in what foods differ.
func (o *recipeOffer) tell() {
	system := o.mine.Units
	recipes := 0
	var fresh, differs []string
	for i, offer := range o.offers {
		if !o.chosen[i] {
			continue
		}
		recipes++
		for _, food := range offer.Foods {
			if food.New && !slices.Contains(fresh, food.Name) {
				fresh = append(fresh, food.Name)
			}
			if len(food.Differs) == 0 {
				continue
			}
			said := food.Name + " (" + written.Text(prose.List(", ", food.Differs), system) + ")"
			if !slices.Contains(differs, said) {
				differs = append(differs, said)
			}
		}
	}
	if recipes == 0 {
		o.sum.SetContent(lang.L("Nothing is ticked yet."))
		return
	}
	said := written.Counted(recipes, prose.Say("One recipe is ticked."), prose.Say("%d recipes are ticked.", recipes))
	if len(fresh) > 0 {
		said += " " + lang.X("foods-come", "Foods that come along: {{.Foods}}.", map[string]any{"Foods": strings.Join(fresh, ", ")})
	}
	if len(differs) > 0 {
		said += "\n" + lang.X("foods-stay", "Foods that stay as they are here, though they differ there: {{.Foods}}.", map[string]any{"Foods": strings.Join(differs, "; ")})
	}
	o.sum.SetContent(said)
}

// take makes the ticked recipes part of the open trip in one step.
func (o *recipeOffer) take() {
	var ids []trip.RecipeID
	for i, on := range o.chosen {
		if on {
			ids = append(ids, o.offers[i].Recipe)
		}
	}
	if len(ids) == 0 {
		o.sum.SetContent(lang.L("Tick what to take first."))
		return
	}
	foods := len(o.mine.Foods)
	edit := written.Counted(len(ids), prose.Say("take a recipe of %s", o.name), prose.Say("take %d recipes of %s", len(ids), o.name))
	err := o.w.document.Edit(edit, func(t *trip.Trip) error {
		if !trip.Equal(t, o.mine) {
			return errors.New(lang.L("The trip was changed meanwhile: open the recipes once more."))
		}
		taken, err := cookbook.Take(t, o.theirs, ids)
		if err == nil {
			*t = *taken
		}
		return err
	})
	if err != nil {
		o.sum.SetContent(written.Error(err))
		return
	}
	o.dialog.Hide()
	fresh := len(o.w.document.Trip().Foods) - foods
	o.w.say(written.Text(prose.Plural(len(ids), prose.Say("Took one recipe and %d foods of %s.", fresh, o.name), prose.Say("Took %d recipes and %d foods of %s.", len(ids), fresh, o.name)), units.Metric))
}
