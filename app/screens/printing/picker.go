package printing

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/screens/bench"
)

// picker chooses some of a list. Nothing picked is all of it.
type picker struct {
	bench   *bench.Bench
	title   string
	all     string // what a choice of all is called
	names   []string
	picked  []bool
	button  *widget.Button
	changed func()
}

func newPicker(b *bench.Bench, title, all string, changed func()) *picker {
	p := &picker{bench: b, title: title, all: all, changed: changed}
	p.button = widget.NewButton(all, p.ask)
	p.button.Alignment = widget.ButtonAlignLeading
	return p
}

// offer takes up a new list; if it differs, all of it is chosen again.
func (p *picker) offer(names []string) {
	if !slices.Equal(names, p.names) {
		p.names, p.picked = names, make([]bool, len(names))
		p.tell()
	}
}

// chosen lists the places of what is picked, none for all.
func (p *picker) chosen() []int {
	var list []int
	for i, picked := range p.picked {
		if picked {
			list = append(list, i)
		}
	}
	if len(list) == len(p.names) {
		return nil
	}
	return list
}

func (p *picker) tell() {
	list := p.chosen()
	switch len(list) {
	case 0:
		p.button.SetText(p.all)
	case 1:
		p.button.SetText(p.names[list[0]])
	default:
		p.button.SetText(lang.X("picked-of", "{{.Count}} of {{.All}}", map[string]any{"Count": len(list), "All": len(p.names)}))
	}
}

// pick picks one by its place, or takes it back.
func (p *picker) pick(at int, on bool) {
	if at < len(p.picked) && p.picked[at] != on {
		p.picked[at] = on
		p.tell()
		p.changed()
	}
}

// pickOnly picks one by its place and nothing else.
func (p *picker) pickOnly(at int) {
	for i := range p.picked {
		p.picked[i] = i == at
	}
	p.tell()
	p.changed()
}

// ask shows the list with a box for each.
func (p *picker) ask() {
	boxes := container.NewVBox()
	var checks []*bench.DialogCheck
	for i, name := range p.names {
		check := bench.NewDialogCheck(name, func(on bool) { p.pick(i, on) })
		check.Checked = p.picked[i]
		checks = append(checks, check)
		boxes.Add(check)
	}
	none := bench.NewDialogButton(p.all, func() {
		for _, check := range checks {
			check.SetChecked(false)
		}
	})
	var d *dialog.CustomDialog
	d = bench.NewDialog(p.bench.Window, p.title, container.NewBorder(nil, none, nil, nil, container.NewVScroll(boxes)),
		bench.NewDialogButton(lang.L("Close"), func() { d.Hide() }))
	d.Resize(fyne.NewSize(360, 480))
	d.Show()
	if len(checks) > 0 {
		p.bench.Window.Canvas().Focus(checks[0])
	}
}
