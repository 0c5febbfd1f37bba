package menu

import (
	"fmt"
	"slices"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/charts"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
)

// foodPicture is need against food: of one member over the days, or of the
// whole group on the day of the cursor.
type foodPicture struct {
	s       *Screen
	k       slot
	member  trip.MemberID // 0: the group on one day
	heading *look.Text
	whose   *widget.Select
	chart   *charts.NeedChart
	content fyne.CanvasObject
}

func newFoodPicture(s *Screen) *foodPicture {
	f := &foodPicture{s: s, heading: look.NewHeading(""), chart: charts.NewNeedChart("kcal")}
	f.whose = widget.NewSelect(nil, func(string) { f.chosen() })
	f.content = bench.Headed(f.chart, bench.Head(bench.Inset(f.heading), wide(f.whose, 190)))
	return f
}

// show follows the cursor to a slot.
func (f *foodPicture) show(k slot) {
	f.k = k
	t := f.s.seen.trip
	if t.Member(f.member) == nil {
		f.member = 0
	}
	f.offer(t)
	p := f.s.seen.plan
	if p == nil {
		f.heading.SetContent(lang.L("Food against need comes with the plan."))
		f.chart.Set(nil)
		return
	}
	if f.member == 0 {
		f.showDay(p)
	} else {
		f.showMember(p)
	}
}

// offer lists everybody of the day first, then the crew by name.
func (f *foodPicture) offer(t *trip.Trip) {
	options, chosen := []string{lang.L("Everybody on the day")}, 0
	for i := range t.Crew {
		options = append(options, t.Crew[i].Name)
		if t.Crew[i].ID == f.member {
			chosen = i + 1
		}
	}
	if slices.Equal(options, f.whose.Options) && f.whose.SelectedIndex() == chosen {
		return
	}
	f.whose.OnChanged = nil
	f.whose.Options = options
	f.whose.SetSelectedIndex(chosen)
	f.whose.OnChanged = func(string) { f.chosen() }
}

func (f *foodPicture) chosen() {
	f.member = 0
	if i := f.whose.SelectedIndex(); i > 0 {
		f.member = f.s.seen.trip.Crew[i-1].ID
	}
	f.show(f.k)
}

// chooseMember shows one member over the days.
func (f *foodPicture) chooseMember(id trip.MemberID) {
	f.member = id
	f.show(f.k)
}

func (f *foodPicture) showDay(p *plan.Plan) {
	var bars []charts.Intake
	for i := range p.Trip.Crew {
		m := &p.Trip.Crew[i]
		if m.Group != f.k.group || f.k.day > len(p.Trip.Days) || !m.Present(f.k.day) {
			continue
		}
		bar := intake(p, i, f.k.day-1)
		bar.Label, bar.Tapped = m.Name, func() { f.chooseMember(m.ID) }
		bars = append(bars, bar)
	}
	f.heading.SetContent(lang.X("menu-food-day", "Day {{.Day}}: food (bar) against need (line)", map[string]any{"Day": f.k.day}))
	f.chart.Set(bars)
}

func (f *foodPicture) showMember(p *plan.Plan) {
	place := slices.IndexFunc(p.Trip.Crew, func(m trip.Member) bool { return m.ID == f.member })
	if place < 0 {
		f.chart.Set(nil)
		return
	}
	var bars []charts.Intake
	for d := range p.Trip.Days {
		bar := intake(p, place, d)
		bar.Label = strconv.Itoa(d + 1)
		bar.Tapped = func() {
			if at, ok := f.s.board.placeOf(slot{d + 1, f.k.meal, f.k.group}); ok {
				f.s.board.moveTo(at, false)
			}
		}
		bars = append(bars, bar)
	}
	f.heading.SetContent(fmt.Sprintf("%s: %s", p.Trip.Crew[place].Name, lang.L("food (bar) against need (line), day by day")))
	f.chart.Set(bars)
}

// intake is one member's day: what is eaten from the packs over what is needed.
func intake(p *plan.Plan, member, d int) charts.Intake {
	need, eaten := p.Needs.Members[member].Days[d], p.Portions.Intakes[member].Days[d]
	return charts.Intake{
		Eaten: float64(eaten.Kcal), Need: float64(need.TargetKcal), Absent: !need.Present,
		Low: float64(need.Low) * need.FromPacks, High: float64(need.High) * need.FromPacks,
		Short: float64(eaten.Kcal) < float64(need.TargetKcal)*p.Trip.Settings.DayLow-0.5,
	}
}
