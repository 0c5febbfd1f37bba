package menu

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/screens/bench"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
)

// acceptForm asks for the reason why a danger is taken on.
type acceptForm struct {
	reason  *bench.LongText
	take    *widget.Button
	content fyne.CanvasObject
}

// offerToAccept lets the leader serve by hand what the program will not, for
// a reason of their own; the form opens in place.
func (d *side) offerToAccept(finding *findings.Finding) fyne.CanvasObject {
	at := finding.Place
	if d.accepting != at {
		open := widget.NewButton(lang.L("Serve it all the same, by hand…"), func() {
			d.accepting, d.form = at, nil
			d.show(d.k)
		})
		open.Importance = widget.LowImportance
		return container.NewHBox(open)
	}
	if d.form == nil {
		d.form = d.newAcceptForm(at)
	}
	return d.form.content
}

func (d *side) newAcceptForm(at findings.Place) *acceptForm {
	f := &acceptForm{reason: bench.NewLongText(lang.L("Why is it safe all the same? For example: read the label of this pack with her"), nil)}
	f.reason.SetMinRowsVisible(3)
	f.take = widget.NewButton(lang.L("I take this on"), func() {
		reason := strings.TrimSpace(f.reason.Text)
		if reason == "" {
			return
		}
		d.accepting, d.form = findings.Place{}, nil
		_ = d.s.accept(d.k, at.Recipe, at.Member, at.Food, reason)
	})
	f.take.Importance = widget.DangerImportance
	f.take.Disable()
	f.reason.OnChanged = func(text string) {
		if strings.TrimSpace(text) == "" {
			f.take.Disable()
		} else {
			f.take.Enable()
		}
	}
	leave := widget.NewButton(lang.L("Leave it"), func() {
		d.accepting, d.form = findings.Place{}, nil
		d.show(d.k)
	})
	f.content = container.NewVBox(words(d.danger(at)), f.reason, container.NewHBox(f.take, leave))
	return f
}

// danger is the caution before a danger is taken on, allergens in full.
func (d *side) danger(at findings.Place) string {
	o := d.s.seen
	who, food := o.trip.Member(at.Member), o.foods[at.Food]
	if who == nil || food == nil {
		return ""
	}
	var lines []string
	for _, objection := range who.Objections(food) {
		switch {
		case objection.Allergen != "":
			line := fmt.Sprintf("%s: %s %s. %s: %s.", who.Name, lang.L("allergic to"), bench.AllergenWord(objection.Allergen, o.trip.Units), food.Name, lang.L(string(objection.Presence)))
			if objection.Severe {
				line += " " + lang.L("Traces harm.")
			}
			lines = append(lines, line)
		case objection.Diet != "":
			lines = append(lines, fmt.Sprintf("%s: %s. %s: %s.", who.Name, bench.DietWord(objection.Diet), food.Name, lang.L(string(objection.Suits))))
		}
	}
	lines = append(lines, lang.L("A mistake here can harm or kill, days from help. Take it on only after reading the label of the very pack and asking the member and, in doubt, their doctor. It stays among the findings."))
	return strings.Join(lines, "\n")
}

// accepted shows a danger that was taken on, and lets it be taken back.
func (d *side) accepted(recipe trip.RecipeID, a trip.Acceptance) fyne.CanvasObject {
	o := d.s.seen
	who, food := o.trip.Member(a.Member), o.foods[a.Food]
	if who == nil || food == nil {
		return container.NewVBox()
	}
	text := lang.X("menu-accepted", "{{.Who}} is served {{.Food}} by your decision: {{.Reason}}", map[string]any{"Who": who.Name, "Food": food.Name, "Reason": a.Reason})
	back := widget.NewButton(lang.L("Take it back"), func() { _ = d.s.accept(d.k, recipe, a.Member, a.Food, "") })
	return container.NewBorder(nil, nil, besideText(findings.LookAt), container.NewVBox(back), note(text))
}
