package resupply

import (
	"slices"
	"strings"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// address writes the label. A box that somebody brings needs none, though it
// gets what is known.
func (b *Box) address(t *trip.Trip, p *trip.ResupplyPoint) []findings.Finding {
	s := &p.Sending
	b.Label = Label{From: lines(t.Posting.ReturnAddress)}
	b.Label.To = lines(s.Addressee)
	if careOf := strings.TrimSpace(s.CareOf); careOf != "" {
		b.Label.To = append(b.Label.To, "c/o "+careOf)
	}
	b.Label.To = append(b.Label.To, lines(p.Address)...)
	if !b.Posted || len(b.Bags) == 0 {
		return nil
	}
	var lacks []prose.Text
	for _, part := range []struct {
		what prose.Text
		text string
	}{
		{prose.Say("the name of who fetches it"), s.Addressee}, {prose.Say("an address"), p.Address},
		{prose.Say("a return address"), t.Posting.ReturnAddress},
	} {
		if strings.TrimSpace(part.text) == "" {
			lacks = append(lacks, part.what)
		}
	}
	if len(lacks) == 0 {
		return nil
	}
	return []findings.Finding{labelIncomplete(p, lacks)}
}

// lines takes a text apart, without empty lines.
func lines(text string) []string {
	list := strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == '\r' })
	for i := range list {
		list[i] = strings.TrimSpace(list[i])
	}
	return slices.DeleteFunc(list, func(line string) bool { return line == "" })
}
