package fairsplit

import "slices"

// gramCells finds loads of up to four members by cells of grams. The last member's is left
// out, as it follows from the others' where all is handed out.
type gramCells struct {
	members int
	wide    [3]int32
	heads   []int32 // by hash of a cell, the last in it
	chain   []int32
	mask    uint32
}

// setWidths makes cells about half as wide as the windows that will be asked for, at
// least 12 grams. It tells whether cells made before will not do.
func (c *gramCells) setWidths(members int, low, high [matchMembers]int32) bool {
	c.members = min(members-1, 3)
	changed := false
	for k := range c.wide {
		wide := int32(1)
		if k < c.members {
			wide = max(12, (high[k]-low[k])/2+1)
		}
		if c.wide[k] < wide*2/3 || c.wide[k] > wide*3/2 {
			c.wide[k], changed = wide, true
		}
	}
	return changed
}

func (c *gramCells) clear(size int) {
	c.mask = 1
	for int(c.mask) < size {
		c.mask *= 2
	}
	c.heads = slices.Grow(c.heads[:0], int(c.mask))[:c.mask]
	for n := range c.heads {
		c.heads[n] = -1
	}
	c.mask--
	c.chain = c.chain[:0]
}

func (c *gramCells) add(load *[matchMembers]int32) {
	var at [3]int32
	for k := range c.members {
		at[k] = load[k] / c.wide[k]
	}
	head := &c.heads[cellHash(at)&c.mask]
	c.chain = append(c.chain, *head)
	*head = int32(len(c.chain) - 1)
}

// near calls f for all that could be from low to high, the last added of a cell first,
// until f is false. It gives the work of looking at cells.
func (c *gramCells) near(low, high *[matchMembers]int32, f func(x int32) bool) (looks int64) {
	return c.nearest(low, high, func(x int32) verdict {
		if f(x) {
			return goOn
		}
		return enough
	})
}

// verdict is what to look at next.
type verdict int

const (
	goOn     verdict = iota
	nextCell         // the others of the cell are no use
	enough
)

// nearest is near, where those added before are no use if one is not.
func (c *gramCells) nearest(low, high *[matchMembers]int32, f func(x int32) verdict) (looks int64) {
	var from, to, at [3]int32
	for k := range c.members {
		if high[k] < 0 {
			return 1
		}
		from[k], to[k] = max(0, low[k])/c.wide[k], high[k]/c.wide[k]
	}
	for at[0] = from[0]; at[0] <= to[0]; at[0]++ {
		for at[1] = from[1]; at[1] <= to[1]; at[1]++ {
			for at[2] = from[2]; at[2] <= to[2]; at[2]++ {
				looks += 2
			cell:
				for x := c.heads[cellHash(at)&c.mask]; x >= 0; x = c.chain[x] {
					switch f(x) {
					case nextCell:
						break cell
					case enough:
						return looks
					}
				}
			}
		}
	}
	return looks
}
