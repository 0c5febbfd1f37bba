package fairsplit

import (
	"cmp"
	"slices"
)

// totalTooMuch compares all items with all room.
func (in *instance) totalTooMuch(p Problem) []Reason {
	var list []Reason
	for _, limit := range []Limit{MassLimit, VolumeLimit} {
		need, have := int64(0), int64(0)
		for _, size := range in.sizes(limit) {
			need += size
		}
		for _, room := range in.rooms(limit) {
			have += room
		}
		if need > have {
			list = append(list, in.shortage(TotalTooMuch, limit, nil, nil, need, have))
		}
	}
	return list
}

// sizes gives grams or millilitres per item.
func (in *instance) sizes(limit Limit) []int64 {
	if limit == VolumeLimit {
		return in.bulk[:in.items]
	}
	list := make([]int64, in.items)
	for j := range list {
		list[j] = int64(in.mass[j])
	}
	return list
}

// rooms gives the grams or millilitres per member that items may take.
func (in *instance) rooms(limit Limit) []int64 {
	if limit == VolumeLimit {
		return slices.Clone(in.room)
	}
	list := make([]int64, in.members)
	for i := range list {
		list[i] = max(0, int64(in.maxGrams[i]-in.base[i]))
	}
	return list
}

func (in *instance) shortage(rule Rule, limit Limit, items, members []int, need, have int64) Reason {
	return Reason{
		Rule: rule, Limit: limit, Items: items, Members: members, Need: need, Have: have,
		Change: []Change{{Kind: RaiseLimit, Member: Nobody, Item: Nobody, Limit: limit, By: need - have}},
	}
}

// classTooTight looks for classes that cannot be spread over those who may carry
// them: by energy, or by counting how many of the smallest items fit one share.
func (in *instance) classTooTight(p Problem) []Reason {
	var list []Reason
	for c := range in.classes {
		var energies []int64
		carriers := make([]bool, in.members)
		var items []int
		for j := range in.items {
			if in.class[j] == int32(c) && in.energy[j] > 0 && len(in.allowed[j]) > 0 {
				items = append(items, j)
				energies = append(energies, in.energy[j])
				for _, i := range in.allowed[j] {
					carriers[i] = true
				}
			}
		}
		slices.Sort(energies)
		count := int64(0)
		for _, yes := range carriers {
			if yes {
				count++
			}
		}
		if spreads(energies, count, in.classCap[c]) {
			continue
		}
		low, high := in.classCap[c], in.classTotal[c]
		for low+1 < high {
			mid := low + (high-low)/2
			if spreads(energies, count, mid) {
				high = mid
			} else {
				low = mid
			}
		}
		list = append(list, Reason{
			Rule: ClassTooTight, Limit: ClassLimit, Class: p.Classes[c].Name, Items: items,
			Need: high, Have: in.classCap[c],
			Change: []Change{in.shareChange(p, p.Classes[c].Name, high-in.classCap[c])},
		})
	}
	return list
}

// spreads tells whether packs that each hold energy up to a limit could take all
// items, as far as sums and counts tell.
func spreads(sorted []int64, packs, limit int64) bool {
	sum, fit := int64(0), int64(0)
	total := int64(0)
	for _, e := range sorted {
		total += e
		if sum+e <= limit {
			sum += e
			fit++
		}
	}
	return len(sorted) == 0 || total <= packs*limit && int64(len(sorted)) <= packs*fit && sorted[len(sorted)-1] <= limit
}

// subsetTooSmall looks for items that only some members may carry and that are more
// than those have room for.
func (in *instance) subsetTooSmall(Problem) []Reason {
	var list []Reason
	groups := in.carrierGroups()
	for _, limit := range []Limit{MassLimit, VolumeLimit} {
		sizes, room := in.sizes(limit), in.rooms(limit)
		for i := range room {
			if limit == MassLimit {
				room[i] = max(0, int64(in.maxGrams[i]-in.pinned[i*in.days]))
			} else {
				room[i] = max(0, room[i]-in.pinnedBulk[i])
			}
		}
		supply := make([]int64, len(groups))
		for g, group := range groups {
			for _, j := range group.items {
				supply[g] += sizes[j]
			}
		}
		short, set := tightSubset(groups, supply, room)
		if short == nil {
			continue
		}
		var items, members []int
		need, have := int64(0), int64(0)
		for _, g := range short {
			need += supply[g]
			for _, j := range groups[g].items {
				items = append(items, int(j))
			}
		}
		for i, isIn := range set {
			if isIn {
				members = append(members, in.member[i])
				have += room[i]
			}
		}
		slices.Sort(items)
		list = append(list, in.shortage(SubsetTooSmall, limit, items, members, need, have))
	}
	return list
}

// wholeItemsMisfit counts the room in multiples of the largest mass or volume of
// which all items are multiples. The least that helps fills up the packs that lack
// least to the next multiple.
func (in *instance) wholeItemsMisfit(Problem) []Reason {
	var list []Reason
	for _, limit := range []Limit{MassLimit, VolumeLimit} {
		piece, need, have := int64(0), int64(0), int64(0)
		sizes := in.sizes(limit)
		for _, j := range in.movable {
			need += sizes[j]
			piece = gcd(piece, sizes[j])
		}
		if piece == 0 {
			continue
		}
		lacks := make([]Change, in.members) // of each pack to the next multiple
		for i := range in.members {
			room := int64(in.maxGrams[i] - in.pinned[i*in.days])
			if limit == VolumeLimit {
				room = in.room[i] - in.pinnedBulk[i]
			}
			room = max(0, room)
			have += room / piece * piece
			lacks[i] = Change{Kind: RaiseLimit, Member: in.member[i], Item: Nobody, Limit: limit, By: piece - room%piece}
		}
		if need <= have {
			continue
		}
		slices.SortStableFunc(lacks, func(a, b Change) int { return cmp.Compare(a.By, b.By) })
		pieces := (need - have) / piece
		lacks = lacks[:min(pieces, int64(len(lacks)))]
		lacks[0].By += piece * (pieces - int64(len(lacks)))
		list = append(list, Reason{Rule: WholeItemsMisfit, Limit: limit, Need: need, Have: have, Change: lacks})
	}
	return list
}
