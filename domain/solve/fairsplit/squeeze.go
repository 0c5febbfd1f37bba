package fairsplit

// squeeze lowers the burdens aimed at bit by bit, each time the split is within them
// and within the hard limits, at a low and even temperature. It keeps the best split on
// the way. Where limits of mass, volume and class bind together this finds what
// cooling towards a fixed aim does not.
func (a *annealer) squeeze(burden []int64, budget int64, done func(score) bool) {
	const look = 1 << 16 // steps between looks at whether to stop
	parts := int64(mostLoose)
	aim := make([]int64, len(burden))
	tighten := func() {
		for d, b := range burden {
			aim[d] = b + b/1000*parts
		}
		a.setTargets(aim)
		a.recost()
		a.noted = never
	}
	a.heat, a.hard = squeezeHeat, 16
	tighten()
	a.note()
	end, next := a.steps+budget, a.steps+look
	for a.steps < end {
		if a.steps >= next {
			if next += look; done(a.kept.score) {
				return
			}
		}
		if a.propose() && a.weigh(&a.x, a.rise()) {
			a.exchangeNow(&a.x)
			if a.total < a.noted {
				a.noted = a.total
				if a.total < squeezeHeat {
					a.note()
				}
			}
			for a.total == 0 && parts > 0 {
				a.note()
				parts--
				tighten()
			}
			if a.total == 0 {
				a.note()
				return
			}
		}
		a.steps += 4
	}
	a.note()
}

const (
	mostLoose   = 12        // thousandths above the burdens of the crumbs to begin with
	squeezeHeat = 5 * 5 * 8 // of 5 g above a target on one day
)
