package fairsplit

import "slices"

// carrierGroup is a set of movable items with the same possible carriers.
type carrierGroup struct {
	allowed []int32
	items   []int32
}

// carrierGroups sorts the movable items by who may carry them, in order of first
// appearance.
func (in *instance) carrierGroups() []carrierGroup {
	var groups []carrierGroup
	place := map[string]int{}
	key := make([]byte, in.members)
	for _, j := range in.movable {
		for i := range key {
			key[i] = '0'
			if in.canCarry(j, i) {
				key[i] = '1'
			}
		}
		g, ok := place[string(key)]
		if !ok {
			g = len(groups)
			place[string(key)] = g
			groups = append(groups, carrierGroup{allowed: in.allowed[j]})
		}
		groups[g].items = append(groups[g].items, j)
	}
	return groups
}

// subsetLevel raises a burden until every set of items fits the members who may
// carry it, as far as grams go (Hall's condition in its weighted form). Each round
// a maximum flow either carries everything or shows, by its minimum cut, a set of
// members T too small for the items that only T may carry; the water level over T
// is then the next burden.
func (in *instance) subsetLevel(d int, groups []carrierGroup, burden int64, whole *reach) int64 {
	if len(groups) < 2 {
		return burden
	}
	supply := make([]int64, len(groups))
	room := make([]int64, in.members)
	for {
		for g, group := range groups {
			supply[g], _ = in.freeGrams(group.items, d)
		}
		for i := range room {
			room[i] = whole.capacity(i, d, burden, 1)
		}
		short, members := tightSubset(groups, supply, room)
		if short == nil {
			return burden
		}
		var items []int32
		for _, g := range short {
			items = append(items, groups[g].items...)
		}
		next := in.wholeLevel(d, members, items, burden, whole)
		if next == burden {
			return burden
		}
		burden = next
	}
}

// tightSubset looks for groups whose supply is more than the room of all members
// who may carry them. It returns nil if there are none.
func tightSubset(groups []carrierGroup, supply, room []int64) (short []int, members []bool) {
	f := flow{groups: groups, left: slices.Clone(supply), room: slices.Clone(room)}
	f.sent = make([][]int64, len(groups))
	for g := range f.sent {
		f.sent[g] = make([]int64, len(room))
	}
	for f.augment() {
	}
	for g := range groups {
		if f.reachedGroup[g] {
			short = append(short, g)
		}
	}
	return short, f.reachedMember
}

// flow is a transport of groups' supply into members' room.
type flow struct {
	groups        []carrierGroup
	left          []int64   // supply not sent yet
	room          []int64   // room not used yet
	sent          [][]int64 // per group and member
	reachedGroup  []bool
	reachedMember []bool
	groupFrom     []int // member from which a group was reached, -1 for the source
	memberFrom    []int // group from which a member was reached
}

// augment sends what it can along one shortest path with room left and reports
// whether it found one. Otherwise the reached sets hold the minimum cut.
func (f *flow) augment() bool {
	f.reachedGroup = make([]bool, len(f.groups))
	f.reachedMember = make([]bool, len(f.room))
	f.groupFrom = make([]int, len(f.groups))
	f.memberFrom = make([]int, len(f.room))
	var queue []int
	for g, left := range f.left {
		if left > 0 {
			f.reachedGroup[g], f.groupFrom[g] = true, -1
			queue = append(queue, g)
		}
	}
	for ; len(queue) > 0; queue = queue[1:] {
		g := queue[0]
		for _, i := range f.groups[g].allowed {
			if f.reachedMember[i] {
				continue
			}
			f.reachedMember[i], f.memberFrom[i] = true, g
			if f.room[i] > 0 {
				f.push(int(i))
				return true
			}
			for h := range f.groups {
				if !f.reachedGroup[h] && f.sent[h][i] > 0 {
					f.reachedGroup[h], f.groupFrom[h] = true, int(i)
					queue = append(queue, h)
				}
			}
		}
	}
	return false
}

// push sends as much as the path that ends at member i bears.
func (f *flow) push(i int) {
	amount := f.room[i]
	for k := i; ; {
		g := f.memberFrom[k]
		if f.groupFrom[g] < 0 {
			amount = min(amount, f.left[g])
			break
		}
		k = f.groupFrom[g]
		amount = min(amount, f.sent[g][k])
	}
	f.room[i] -= amount
	for k := i; ; {
		g := f.memberFrom[k]
		f.sent[g][k] += amount
		if f.groupFrom[g] < 0 {
			f.left[g] -= amount
			return
		}
		k = f.groupFrom[g]
		f.sent[g][k] -= amount
	}
}
