package loads

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/limits"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// raise offers, where packs are over their limits, to raise these until the
// plan passes none. That takes several plans, made away from the screen.
type raise struct {
	screen  *Screen
	words   *look.Paragraph
	button  *widget.Button
	working *fyne.Container
	known   *look.Paragraph // how far the work is
	cancel  context.CancelFunc
	run     int // number of the last work started
	content *fyne.Container
}

func newRaise(s *Screen) *raise {
	r := &raise{screen: s, words: bench.SmallPrint(""), known: bench.SmallPrint("")}
	r.button = widget.NewButton(lang.L("Raise these limits"), r.do)
	r.working = container.NewBorder(nil, nil, nil, widget.NewButton(lang.L("Stop"), r.stop), r.known)
	r.working.Hide()
	r.content = container.NewVBox(container.NewBorder(nil, nil, nil, container.NewVBox(r.button), r.words), r.working)
	return r
}

func (r *raise) show() {
	v := r.screen.view
	var list []limits.Raised
	if v != nil && v.rest == nil {
		list = limits.Passed(v.plan)
	}
	bench.SetShown(r.content, len(list) > 0 || r.cancel != nil)
	r.words.SetContent(lang.X("raise-limits", "The split shown would fit with these limits: {{.Names}}. With other limits the load is split anew; so more may be raised, until no pack is over its limit. They are of bodies and packs: ask first.", data{"Names": r.names(list)}))
}

// names says who gets which limits.
func (r *raise) names(list []limits.Raised) string {
	on, system := r.screen.bench.Trip(), r.screen.bench.Units()
	var names []string
	for _, one := range list {
		m := on.Member(one.Member)
		if m == nil {
			continue
		}
		if load, ok := one.Load.Get(); ok {
			names = append(names, lang.X("raise-to", "{{.Name}} to {{.Limit}}", data{"Name": m.Name, "Limit": written.Quantity(load, system)}))
		}
		if room, ok := one.Room.Get(); ok {
			names = append(names, lang.X("raise-to", "{{.Name}} to {{.Limit}}", data{"Name": m.Name, "Limit": written.Quantity(room, system)}))
		}
	}
	return strings.Join(names, ", ")
}

// do looks for limits that are all kept, and raises them in one step of undo.
func (r *raise) do() {
	if v := r.screen.view; v == nil || v.rest != nil || r.cancel != nil {
		return
	}
	asked := r.screen.bench.Trip()
	ctx, cancel := context.WithCancel(context.Background())
	r.cancel = cancel
	r.run++
	run := r.run
	r.known.SetContent(lang.L("Looking for limits that are all kept …"))
	r.working.Show()
	r.button.Disable()
	var found []limits.Raised
	var failed error
	r.screen.bench.Document.Background(func() {
		found, failed = limits.Raise(ctx, asked, r.hear(run))
	}, func() {
		cancel()
		if run != r.run {
			return
		}
		r.end()
		switch {
		case failed != nil:
		case r.screen.bench.Trip() != asked:
			r.screen.bench.Say(lang.L("The trip was changed meanwhile: no limit was raised."))
		case len(found) > 0:
			r.store(found)
		}
	})
}

// hear shows how many packs are over a limit with what is raised so far.
func (r *raise) hear(run int) func(over int) {
	return func(over int) {
		r.screen.bench.Document.OnScreen(func() {
			if run == r.run && r.cancel != nil && over > 0 {
				r.known.SetContent(written.Counted(over, prose.Say("One pack is over a limit …"), prose.Say("%d packs are over a limit …", over)))
			}
		})
	}
}

func (r *raise) store(found []limits.Raised) {
	err := r.screen.bench.Edit(lang.L("raise limits of packs"), func(on *trip.Trip) error {
		limits.Set(on, found)
		return nil
	})
	if err == nil {
		r.screen.bench.Say(lang.X("limits-raised", "Raised: {{.Names}}.", data{"Names": r.names(found)}))
	}
}

func (r *raise) end() {
	r.cancel = nil
	r.working.Hide()
	r.button.Enable()
	r.show()
}

// stop ends the work and leaves the limits as they are.
func (r *raise) stop() {
	if r.cancel != nil {
		r.cancel()
		r.run++
		r.end()
	}
}
