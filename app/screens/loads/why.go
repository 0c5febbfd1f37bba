package loads

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/trip"
)

// mostListed bounds how many names one sentence holds.
const mostListed = 8

// why answers "why does she carry this?": the reason the split gives, who
// else might, who must not, and what it would mean for the heaviest pack.
func (s *Screen) why(t thing) string {
	v := s.view
	if t.kind == waterKind {
		return strings.Join(append(v.whyWater(t.carrier, s.day), t.fixed()), "\n")
	}
	parts := []string{sentences(t.why)}
	if why := t.fixed(); why != "" {
		return strings.Join(append(parts, why), "\n")
	}
	var may, full []string
	var mustNot []string
	best, bestWorst, now := trip.MemberID(0), 0.0, v.worst(s.day)
	for _, i := range v.order {
		id := v.plan.Trip.Crew[i].ID
		if id == t.carrier {
			continue
		}
		if obstacle := v.obstacle(&t, id, s.day); obstacle != "" {
			if v.there(id, s.day) {
				mustNot = append(mustNot, obstacle)
			}
			continue
		}
		may = append(may, v.memberName(id))
		if o := v.weigh(move{thing: t, to: id}, s.day); o.over > 0 || o.cramped {
			full = append(full, v.memberName(id))
			continue
		}
		if worst := v.worstAfter(move{thing: t, to: id}, s.day); best == 0 || worst < bestWorst {
			best, bestWorst = id, worst
		}
	}
	parts = append(parts, mayWords(may))
	if best != 0 {
		parts = append(parts, v.compare(best, now, bestWorst, s.day, s.bound(t)))
	}
	if len(full) > 0 {
		parts = append(parts, lang.X("why-full", "Over the load limit or out of room with it: {{.Names}}.", data{"Names": listed(full)}))
	}
	parts = append(parts, unique(mustNot)...)
	return strings.Join(parts, "\n")
}

// bound tells whether a thing is where it is for another reason than the fair
// split: by hand, or as the own share of who carries it.
func (s *Screen) bound(t thing) bool {
	pinned := slices.ContainsFunc(s.bench.Trip().Pins, func(p trip.Pin) bool { return !p.Forbid && t.concerns(p) })
	return pinned || t.bag != nil && t.bag.Member == t.carrier
}

// compare says what it would mean if the next best carried a thing; bound is
// whether something else than the split put it where it is.
func (v *view) compare(best trip.MemberID, now, after float64, day int, bound bool) string {
	values := data{"Name": v.memberName(best), "Day": day, "Now": percent(now), "After": percent(after)}
	switch same := percent(now) == percent(after); {
	case !same && after > now:
		return lang.X("why-heavier", "With anybody else the heaviest pack of day {{.Day}} would rise from {{.Now}}: with {{.Name}}, who is next best, to {{.After}}.", values)
	case !same && bound:
		return lang.X("why-bound", "With {{.Name}} the heaviest pack of day {{.Day}} would fall from {{.Now}} to {{.After}}.", values)
	case !same:
		return lang.X("why-lighter", "With {{.Name}} the heaviest pack of day {{.Day}} would fall from {{.Now}} to {{.After}}; the split also weighs the other days, the room in the packs, and that no pack holds too much of the dinners.", values)
	default:
		return lang.X("why-equal", "{{.Name}} could take it: the heaviest pack of day {{.Day}} would stay at {{.Now}}.", values)
	}
}

func mayWords(names []string) string {
	switch {
	case len(names) == 0:
		return lang.L("Nobody else who is there may carry it.")
	case len(names) > mostListed:
		return lang.X("why-may-many", "{{.Count}} others may carry it.", data{"Count": len(names)})
	default:
		return lang.X("why-may", "Others who may carry it: {{.Names}}.", data{"Names": strings.Join(names, ", ")})
	}
}

// listed names a few people, and how many more there are.
func listed(names []string) string {
	if len(names) > mostListed {
		return strings.Join(names[:mostListed], ", ") + fmt.Sprintf(", … %d", len(names)-mostListed)
	}
	return strings.Join(names, ", ")
}

// worst is the heaviest share of a morning.
func (v *view) worst(day int) float64 {
	worst := 0.0
	for _, member := range v.plan.Carry.Members {
		worst = max(worst, member.Days[day-1].Share)
	}
	return worst
}

// worstAfter is the heaviest share of a morning once a thing has moved.
func (v *view) worstAfter(m move, day int) float64 {
	o := v.weigh(m, day)
	worst := max(o.from.Share, o.to.Share)
	for i, member := range v.plan.Carry.Members {
		if id := v.plan.Trip.Crew[i].ID; id != m.to && id != m.thing.carrier {
			worst = max(worst, member.Days[day-1].Share)
		}
	}
	return worst
}

// sentences turns the reasons of the plan, parted by semicolons, into
// sentences.
func sentences(why string) string {
	var list []string
	for _, reason := range strings.Split(why, "; ") {
		if reason != "" {
			text := []rune(reason)
			list = append(list, strings.ToUpper(string(text[:1]))+string(text[1:])+".")
		}
	}
	return strings.Join(list, " ")
}

// unique keeps the first of equal lines, and says how many are left out
// where there are many.
func unique(lines []string) []string {
	var list []string
	seen := map[string]bool{}
	for _, line := range lines {
		if !seen[line] {
			seen[line] = true
			list = append(list, line)
		}
	}
	if len(list) > mostListed {
		list = append(list[:mostListed], fmt.Sprintf("… %d %s", len(list)-mostListed, lang.L("more reasons")))
	}
	return list
}
