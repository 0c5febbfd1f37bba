package menu

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// words is a paragraph of the side.
func words(text string) *look.Paragraph { return look.NewParagraph(text, look.Body, look.Ink) }

// note is a paragraph in small type.
func note(text string) *look.Paragraph { return look.NewParagraph(text, look.Caption, look.Ink) }

// heading opens a part of the side.
func heading(text string) fyne.CanvasObject {
	return container.NewVBox(widget.NewSeparator(), bench.Inset(look.NewHeading(text)))
}

// wide gives a field the room its texts need.
func wide(object fyne.CanvasObject, width float32) fyne.CanvasObject {
	return container.New(layout.NewGridWrapLayout(fyne.NewSize(width, object.MinSize().Height)), object)
}

func bareNumber(n int) string { return strconv.Itoa(n) }

// percent writes a share, never as nothing.
func percent(share float64) string { return written.Number(max(0.1, 100*share), 1) + " %" }

// massRange writes the least and the most of something.
func massRange(low, high units.Mass, system units.System) string {
	from, to := written.Quantity(low, system), written.Quantity(high, system)
	if from == to {
		return from
	}
	if number, unit, ok := strings.Cut(to, " "); ok && strings.HasSuffix(from, " "+unit) {
		return strings.TrimSuffix(from, " "+unit) + "–" + number + " " + unit
	}
	return from + "–" + to
}

// amountRange is massRange of a food, which may be counted.
func amountRange(food *trip.Food, low, high units.Mass, system units.System) string {
	switch {
	case food.PieceStep() == 0:
		return massRange(low, high, system)
	case low == high:
		return written.Amount(food, low, system)
	default:
		return written.Amount(food, low, system) + "–" + written.Amount(food, high, system)
	}
}

func numberRange(low, high float64) string {
	if math.Round(low) == math.Round(high) {
		return fmt.Sprintf("%.0f", low)
	}
	return fmt.Sprintf("%.0f–%.0f", low, high)
}

// mostNames is how many people a line names before it counts them.
const mostNames = 6

// namesOf lists members by name; of many, the first and how many more.
func namesOf(t *trip.Trip, members []trip.MemberID) string {
	var names []string
	for _, id := range members {
		if m := t.Member(id); m != nil {
			names = append(names, m.Name)
		}
	}
	if more := len(names) - mostNames; more > 1 {
		return strings.Join(names[:mostNames], ", ") + fmt.Sprintf(" +%d", more)
	}
	return strings.Join(names, ", ")
}
