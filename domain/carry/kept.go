package carry

import (
	"slices"
	"strconv"

	"sumpter/domain/trip"
)

// ThingOf names what a trip says changes hands.
func ThingOf(over trip.HandOver) Thing {
	switch {
	case over.Bag != "":
		return Thing{BagItem, over.Bag}
	case over.Gear != 0:
		return Thing{GearItem, strconv.FormatInt(int64(over.Gear), 10)}
	default:
		return Thing{FuelItem, over.Fuel}
	}
}

// HandOver is the thing as a trip stores it, from nobody to nobody. It is
// false for rubbish, which is never stored.
func (t Thing) HandOver() (trip.HandOver, bool) {
	switch t.Kind {
	case BagItem:
		return trip.HandOver{Bag: t.Key}, true
	case FuelItem:
		return trip.HandOver{Fuel: t.Key}, true
	case GearItem:
		id, err := strconv.ParseInt(t.Key, 10, 64)
		return trip.HandOver{Gear: trip.GearID(id)}, err == nil
	default:
		return trip.HandOver{}, false
	}
}

// Packs gives the split as a trip keeps it: in whose pack each thing is from
// the first morning of each stage on, nothing chosen.
func (r *Result) Packs() []trip.KeptPacks {
	var list []trip.KeptPacks
	for i := range r.Stages {
		kept := trip.KeptPacks{Day: r.Stages[i].FirstDay}
		for _, item := range r.Stages[i].Items {
			if over, ok := (Thing{item.Kind, item.Key}).HandOver(); ok {
				over.From = item.Carrier
				kept.Things = append(kept.Things, over)
			}
		}
		if len(kept.Things) > 0 {
			list = append(list, kept)
		}
	}
	return list
}

// Choose gives the kept packs with a choice of a stage taken: the plan then
// holds to it.
func Choose(kept []trip.KeptPacks, stage *Stage, choice int) []trip.KeptPacks {
	if choice < 0 || choice >= len(stage.Choices) {
		return kept
	}
	kept = slices.Clone(kept)
	at := slices.IndexFunc(kept, func(k trip.KeptPacks) bool { return k.Day == stage.FirstDay })
	if at < 0 {
		at = len(kept)
		kept = append(kept, trip.KeptPacks{Day: stage.FirstDay})
		if before := keptOn(kept[:at], stage.FirstDay); before != nil {
			kept[at].Things = before.Things
		}
	}
	was := map[Thing]trip.MemberID{}
	for _, over := range kept[at].Things {
		was[ThingOf(over)] = over.From
	}
	kept[at].Things = nil
	for _, item := range stage.Items {
		thing := Thing{item.Kind, item.Key}
		over, ok := thing.HandOver()
		if !ok {
			continue
		}
		over.From, over.To = was[thing], stage.Choices[choice].Carriers[thing]
		if over.From != 0 || over.To != 0 {
			kept[at].Things = append(kept[at].Things, over)
		}
	}
	return kept
}

// Moved lists what is in another pack at the start of a stage by one of its
// choices than in the kept packs; what is new in the packs is left out.
func (s *Stage) Moved(kept []trip.KeptPacks, choice int) []trip.HandOver {
	packs := keptOn(kept, s.FirstDay)
	if packs == nil || choice < 0 || choice >= len(s.Choices) {
		return nil
	}
	was := map[Thing]trip.MemberID{}
	for _, over := range packs.Things {
		was[ThingOf(over)] = over.From
	}
	var list []trip.HandOver
	for _, item := range s.Items {
		thing := Thing{item.Kind, item.Key}
		over, ok := thing.HandOver()
		if from, to := was[thing], s.Choices[choice].Carriers[thing]; ok && from != 0 && from != to {
			over.From, over.To = from, to
			list = append(list, over)
		}
	}
	return list
}

// keptOn finds the packs that hold on a morning, or nil.
func keptOn(kept []trip.KeptPacks, day int) *trip.KeptPacks {
	var found *trip.KeptPacks
	for i := range kept {
		if kept[i].Day <= day && (found == nil || kept[i].Day > found.Day) {
			found = &kept[i]
		}
	}
	return found
}
