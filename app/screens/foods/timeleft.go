package foods

import (
	"cmp"
	"slices"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/charts"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/plan"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
)

// timeLeft is a picture of what will not keep for ever: from packed to eaten,
// and where its time runs out.
type timeLeft struct {
	bench   *bench.Bench
	choose  func(trip.FoodID)
	chart   *charts.SpanChart
	nothing *look.Text
	content *fyne.Container
}

func newTimeLeft(b *bench.Bench, choose func(trip.FoodID)) *timeLeft {
	v := &timeLeft{bench: b, choose: choose, chart: charts.NewSpanChart(), nothing: look.NewText("", look.Body, look.Quiet)}
	caption := bench.SmallPrint(lang.L("Foods that do not keep to the end of the trip, or use half their life: a bar from packed to eaten over the days; the stroke is where time runs out. A hatched bar: nobody knows."))
	v.content = container.NewBorder(caption, nil, nil, nil, bench.NewScroll(container.NewVBox(v.nothing, v.chart)))
	v.content.Hide()
	return v
}

func (v *timeLeft) refresh() {
	if !v.content.Visible() {
		return
	}
	p := v.bench.Plan()
	if p == nil {
		v.nothing.SetContent(lang.L("How long each food lasts comes with the plan."))
		v.nothing.Show()
		v.chart.Set(nil, nil)
		return
	}
	spans := v.spans(p)
	days := make([]string, len(p.Trip.Days))
	for i := range days {
		days[i] = strconv.Itoa(i + 1)
	}
	v.nothing.SetContent(lang.L("Everything on the menu keeps to the end of the trip with half its life to spare."))
	bench.SetShown(v.nothing, len(spans) == 0)
	if len(spans) == 0 {
		days = nil
	}
	v.chart.Set(days, spans)
}

// spans gives a bar for each pressing food, the most pressing first.
func (v *timeLeft) spans(p *plan.Plan) []charts.Span {
	var spans []charts.Span
	for _, fate := range spoilage.EatFirst(p.Trip, p.Spoilage) {
		food := p.Trip.Food(fate.Food)
		if food == nil {
			continue
		}
		spans = append(spans, v.span(p, food, fate))
	}
	return spans
}

func (v *timeLeft) span(p *plan.Plan, food *trip.Food, worst spoilage.Fate) charts.Span {
	first, last, verdict := worst.Day, worst, worst.Verdict
	for _, fate := range p.Spoilage.Fates {
		if fate.Food != food.ID {
			continue
		}
		first = min(first, fate.Day)
		if cmp.Compare(eatenAt(fate), eatenAt(last)) > 0 {
			last = fate
		}
		if rank(fate.Verdict) > rank(verdict) {
			verdict = fate.Verdict
		}
	}
	leg := p.Legs[max(0, trip.LegOf(p.Legs, first))]
	span := charts.Span{
		Label: food.Name, From: float64(leg.FirstDay - 1), To: eatenAt(last), Ends: float64(worst.LatestDay),
		EndKnown: worst.LatestDay > 0, Lasting: lasting(verdict), Word: lang.L(string(verdict)),
		Tapped: func() { v.choose(food.ID) },
	}
	if verdict == spoilage.Safe && worst.QualityKnown {
		span.Word = daysLeft(&worst)
	}
	return span
}

// lasting gives a verdict its look; what nobody knows never looks safe.
func lasting(verdict spoilage.Verdict) charts.Lasting {
	switch verdict {
	case spoilage.Safe:
		return charts.Lasts
	case spoilage.NotSafe:
		return charts.RunsOut
	default:
		return charts.LastsUnknown
	}
}

// eatenAt is when a slot is eaten, in days from the start.
func eatenAt(fate spoilage.Fate) float64 {
	return float64(fate.Day-1) + (float64(slices.Index(trip.Meals(), fate.Meal))+1)/float64(len(trip.Meals()))
}

// rank orders verdicts, the worst highest.
func rank(verdict spoilage.Verdict) int {
	return slices.Index([]spoilage.Verdict{spoilage.Safe, spoilage.NotKnown, spoilage.NotSafe}, verdict)
}
