package resupply

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/domain/optional"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
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
	return prose.Errorf("%s: %s", lang.L("One of"), strings.Join(kindWords(), ", "))
}

func openText(p *trip.ResupplyPoint) string { return bench.OpenText(p.Opening) }

func setOpen(p *trip.ResupplyPoint, text string) error { return bench.ReadOpen(&p.Opening, text) }

func closedText(p *trip.ResupplyPoint) string { return bench.ClosedText(p.Opening) }

func setClosed(p *trip.ResupplyPoint, text string) error { return bench.ReadClosed(&p.Opening, text) }
