package resupply

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/typed"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// known writes a value that may be unknown; unknown is an empty cell.
func known[T any](value optional.Value[T], write func(T) string) string {
	if v, ok := value.Get(); ok {
		return write(v)
	}
	return ""
}

// setKnown reads a value; an empty text makes it unknown.
func setKnown[T any](value *optional.Value[T], text string, read func(string) (T, error)) error {
	if strings.TrimSpace(text) == "" {
		*value = optional.Unknown[T]()
		return nil
	}
	v, err := read(text)
	if err == nil {
		*value = optional.Of(v)
	}
	return err
}

// holdText says that nobody knows, where nobody knows.
func holdText(p *trip.ResupplyPoint) string {
	if days, ok := p.HoldDays.Get(); ok {
		return fmt.Sprint(days)
	}
	return lang.L("unknown")
}

func setHold(p *trip.ResupplyPoint, text string) error {
	if strings.EqualFold(text, lang.L("unknown")) || text == "?" {
		text = ""
	}
	return setKnown(&p.HoldDays, text, func(text string) (int, error) { return typed.Whole(text, 0, longestWait) })
}

func kindWords() []string {
	var list []string
	for _, kind := range trip.PointKinds() {
		list = append(list, lang.L(string(kind)))
	}
	return list
}

func setKind(p *trip.ResupplyPoint, text string) error {
	for _, kind := range trip.PointKinds() {
		if strings.EqualFold(text, lang.L(string(kind))) || strings.EqualFold(text, string(kind)) {
			p.Kind = kind
			return nil
		}
	}
	return fmt.Errorf("%s: %s", lang.L("One of"), strings.Join(kindWords(), ", "))
}

// openText writes runs of days as people do: "Mon–Sat", "every day".
func openText(p *trip.ResupplyPoint) string {
	if len(p.OpenDays) == 0 || len(p.OpenDays) == 7 {
		return lang.L("every day")
	}
	names := trip.OpenDayNames()
	var parts []string
	for from := 0; from < len(names); from++ {
		to := from
		for to < len(names) && slices.Contains(p.OpenDays, names[to]) {
			to++
		}
		switch to - from {
		case 0:
			continue
		case 1, 2:
			for _, day := range names[from:to] {
				parts = append(parts, lang.L(day))
			}
		default:
			parts = append(parts, lang.L(names[from])+"–"+lang.L(names[to-1]))
		}
		from = to
	}
	return strings.Join(parts, ", ")
}

// setOpen reads days of the week and runs of them.
func setOpen(p *trip.ResupplyPoint, text string) error {
	p.OpenDays = nil
	if text == "" || strings.EqualFold(text, lang.L("every day")) {
		return nil
	}
	names := trip.OpenDayNames()
	open := make([]bool, len(names))
	for _, part := range typed.List(text) {
		first, last, run := strings.Cut(strings.ReplaceAll(part, "-", "–"), "–")
		if !run {
			last = first
		}
		from, to := weekday(first), weekday(last)
		if from < 0 || to < 0 {
			return errors.New(lang.L("Write days as Mon, Tue, Wed, Thu, Fri, Sat, Sun, or Mon–Fri; nothing means every day."))
		}
		for day := from; ; day = (day + 1) % len(names) {
			open[day] = true
			if day == to {
				break
			}
		}
	}
	for i, name := range names {
		if open[i] {
			p.OpenDays = append(p.OpenDays, name)
		}
	}
	return nil
}

func weekday(text string) int {
	text = strings.ToLower(strings.TrimSpace(text))
	for i, name := range trip.OpenDayNames() {
		for _, known := range []string{name, lang.L(name)} {
			if len(text) >= 2 && strings.HasPrefix(text, strings.ToLower(known)) || text == strings.ToLower(known) {
				return i
			}
		}
	}
	return -1
}

func closedText(p *trip.ResupplyPoint) string {
	var list []string
	for _, date := range p.ClosedDates {
		list = append(list, date.String())
	}
	return strings.Join(list, ", ")
}

func setClosed(p *trip.ResupplyPoint, text string) error {
	p.ClosedDates = nil
	for _, part := range typed.List(text) {
		date, err := units.ParseDate(part)
		if err != nil {
			return err
		}
		p.ClosedDates = append(p.ClosedDates, date)
	}
	return nil
}
