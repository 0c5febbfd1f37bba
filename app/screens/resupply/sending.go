package resupply

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
)

// sendingFields say what is written on a box, who sends it and when, and who
// fetches it.
func (s *Screen) sendingFields() []field {
	return []field{
		{title: lang.L("Addressee"), width: 140, text: func(p *trip.ResupplyPoint) string { return p.Sending.Addressee },
			set: func(p *trip.ResupplyPoint, text string) error { p.Sending.Addressee = text; return nil }},
		{title: lang.L("Care of"), width: 110, text: func(p *trip.ResupplyPoint) string { return p.Sending.CareOf },
			set: func(p *trip.ResupplyPoint, text string) error { p.Sending.CareOf = text; return nil }},
		{title: lang.L("Fetched by"), width: 110, text: func(p *trip.ResupplyPoint) string { return s.memberName(p.Sending.Collector) },
			choices: s.memberNames(), set: func(p *trip.ResupplyPoint, text string) error {
				id, known := s.memberCalled(text)
				if text != "" && !known {
					return fmt.Errorf("%s", lang.X("no-member", "Nobody of the crew is called {{.Name}}.", data{"Name": text}))
				}
				p.Sending.Collector = id
				return nil
			}},
		{title: lang.L("Sent by"), width: 110, text: s.senderName, set: func(p *trip.ResupplyPoint, text string) error {
			id, known := s.memberCalled(text)
			p.Sending.Sender, p.Sending.Helper = id, ""
			if !known {
				p.Sending.Helper = text // somebody at home
			}
			return nil
		}},
		{title: lang.L("Leaves home"), width: 120, text: func(p *trip.ResupplyPoint) string {
			if p.Sending.SendOn.IsSet() {
				return p.Sending.SendOn.String()
			}
			return ""
		}, set: func(p *trip.ResupplyPoint, text string) (err error) {
			p.Sending.SendOn = 0
			if strings.TrimSpace(text) != "" {
				p.Sending.SendOn, err = typed.Date(text, s.bench.Units())
			}
			return err
		}},
	}
}

func (s *Screen) senderName(p *trip.ResupplyPoint) string {
	if p.Sending.Sender != 0 {
		return s.memberName(p.Sending.Sender)
	}
	return p.Sending.Helper
}

func (s *Screen) memberName(id trip.MemberID) string {
	if m := s.bench.Trip().Member(id); m != nil {
		return m.Name
	}
	return ""
}

func (s *Screen) memberNames() []string {
	names := []string{""}
	for i := range s.bench.Trip().Crew {
		names = append(names, s.bench.Trip().Crew[i].Name)
	}
	return names
}

func (s *Screen) memberCalled(name string) (trip.MemberID, bool) {
	for i := range s.bench.Trip().Crew {
		if m := &s.bench.Trip().Crew[i]; strings.EqualFold(m.Name, strings.TrimSpace(name)) {
			return m.ID, true
		}
	}
	return 0, false
}

// sendingWords say when a box leaves home and what is written on it.
func sendingWords(p *plan.Plan, box *resupply.Box) []string {
	var words []string
	if box.SendOn.IsSet() {
		text := lang.X("leaves-home", "Leaves home on {{.Day}}.", data{"Day": bench.DateWords(box.SendOn)})
		if box.Posted {
			text += " " + written.Counted(box.LiesThere, prose.Say("If the post is slow it lies there for one day."), prose.Say("If the post is slow it lies there for %d days.", box.LiesThere))
		}
		words = append(words, text)
	}
	if len(box.Label.To) > 0 {
		label := strings.Join(box.Label.To, "\n")
		if box.PickUp.IsSet() {
			label += "\n" + lang.X("hold-for", "Hold for walker, expected {{.Day}}", data{"Day": bench.DateWords(box.PickUp)})
		}
		words = append(words, label)
	}
	if len(box.BoughtThere) > 0 {
		foods := map[trip.FoodID]bool{}
		var names []string
		for _, bought := range box.BoughtThere {
			if food := p.Trip.Food(bought.Food); food != nil && !foods[food.ID] {
				foods[food.ID] = true
				names = append(names, food.Name)
			}
		}
		words = append(words, lang.X("bought-there", "Bought there, not sent: {{.Foods}}.", data{"Foods": strings.Join(names, ", ")}))
	}
	return words
}
