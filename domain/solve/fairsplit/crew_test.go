package fairsplit

import "fmt"

// binding says which limits of an invented crew bind.
type binding struct {
	mass, volume, class bool
}

func (b binding) String() string {
	name := ""
	for _, part := range []struct {
		on   bool
		name string
	}{{b.mass, "mass"}, {b.volume, "volume"}, {b.class, "class"}} {
		if part.on {
			name += "+" + part.name
		}
	}
	if name == "" {
		return "loose"
	}
	return name[1:]
}

var (
	loose      = binding{}
	tightMass  = binding{mass: true}
	tightRoom  = binding{volume: true}
	tightClass = binding{class: true}
	tightAll   = binding{true, true, true}
)

// inventCrew makes a problem like those of real trips: own kits and strengths that
// differ, four bags per eater and day, shared gear, fuel whose empty cartridge stays,
// members who may not carry bags with an allergen. Where a limit binds, the crew as
// a whole has a few percent to spare and some members much less than their fair part.
// The same arguments give the same problem.
func inventCrew(seed uint64, members, days int, tight binding) Problem {
	g := inventor{random: random{state: seed*7919 + uint64(members)*31 + uint64(days)}}
	g.Days = days
	for range days {
		g.HoursTenths = append(g.HoursTenths, int64(g.between(35, 90)))
	}
	g.Classes = []Class{{Name: "dinner", Share: Ratio{1, 1}}, {Name: "fuel", Share: Ratio{1, 1}}}
	if members > 1 {
		g.Classes[0].Share, g.Classes[1].Share = Ratio{1, 2}, Ratio{2, 3}
	}
	for range members {
		strength := g.between(480, 950)
		g.Crew = append(g.Crew, Member{Strength: int64(strength), BaseGrams: int64(g.between(5200, 8800) + strength), VolumeMl: Unlimited, MaxGrams: Unlimited})
	}
	g.addAllergies()
	g.addFood()
	g.addGear()
	g.bind(tight)
	return g.Problem
}

type inventor struct {
	random
	Problem
	careful [2][]int // members who may carry each allergen
}

// below draws as when the figures of the contributor guide were measured: a seed means
// the same crew whatever becomes of the search's own random numbers.
func (g *inventor) below(n int) int { return int(g.next() % uint64(n)) }

func (g *inventor) between(low, high int) int { return low + g.below(high-low+1) }

func (g *inventor) addAllergies() {
	for a := range g.careful {
		for i := range g.Crew {
			if g.below(9) > 0 {
				g.careful[a] = append(g.careful[a], i)
			}
		}
		if len(g.careful[a]) < 2 {
			g.careful[a] = nil
		}
	}
}

func (g *inventor) addFood() {
	meals := []struct {
		class     string
		low, high int
		density   int // grams per litre
	}{{"", 90, 160, 480}, {"", 150, 260, 620}, {"", 80, 190, 550}, {"dinner", 130, 230, 430}}
	for d := range g.Days {
		for _, meal := range meals {
			base := g.between(meal.low, meal.high)
			var allowed []int
			if k := g.below(8); k < len(g.careful) {
				allowed = g.careful[k]
			}
			for i := range g.Crew {
				grams := base * g.between(80, 125) / 100 * (60 + int(g.Crew[i].Strength)/18) / 100
				g.Items = append(g.Items, Item{
					MassGrams: int64(grams + 6),
					VolumeMl:  int64(grams * 1000 / (meal.density * g.between(85, 115) / 100)),
					GoneAfter: d + 1,
					Energy:    int64(grams * 4),
					Class:     meal.class,
					Allowed:   allowed,
				})
			}
		}
	}
}

func (g *inventor) addGear() {
	people := len(g.Crew)
	for range people*8/10 + 1 {
		grams := g.between(180, 1900)
		g.Items = append(g.Items, Item{MassGrams: int64(grams), VolumeMl: int64(grams * g.between(15, 30) / 10), GoneAfter: g.Days})
	}
	net := []int{110, 230, 450}[g.below(3)]
	for k := range people*g.Days*2/7 + 1 {
		last := 1 + k*g.Days/(people*g.Days*2/7+1)
		g.Items = append(g.Items, Item{MassGrams: int64(net + net/2 + 40), VolumeMl: int64(net * 3), GoneAfter: last, ResidualGrams: int64(net/2 + 40), Energy: int64(net), Class: "fuel"})
	}
}

// bind draws limits from how a fair split by strength would look.
func (g *inventor) bind(tight binding) {
	var grams, volume, strength, kit int64
	for _, it := range g.Items {
		grams, volume = grams+it.MassGrams, volume+it.VolumeMl
	}
	for _, m := range g.Crew {
		strength, kit = strength+m.Strength, kit+m.BaseGrams
	}
	fair := func(i int) int64 {
		return max((kit+grams)*g.Crew[i].Strength/strength-g.Crew[i].BaseGrams, 0)
	}
	if tight.mass {
		g.spread(grams, 103, fair, func(i int, part int64) { g.Crew[i].MaxGrams = g.Crew[i].BaseGrams + part })
	}
	if tight.volume {
		part := func(i int) int64 { return fair(i) * volume / grams }
		g.spread(volume, 104, part, func(i int, part int64) { g.Crew[i].VolumeMl = part })
	}
	if tight.class && len(g.Crew) > 1 {
		g.Classes[0].Share = Ratio{int64(1350 + 100*(6/len(g.Crew))), int64(1000 * len(g.Crew))}
		g.Classes[1].Share = Ratio{int64(2000), int64(1000 * len(g.Crew))}
	}
}

// spread shares out percent of an amount as limits, some well below and most a
// little above what is fair.
func (g *inventor) spread(amount, percent int64, fair func(int) int64, set func(int, int64)) {
	part := make([]int64, len(g.Crew))
	sum := int64(0)
	for i := range part {
		p := int64(g.between(100, 120))
		if g.below(4) == 0 {
			p = int64(g.between(70, 95))
		}
		part[i] = fair(i)*p/100 + 50
		sum += part[i]
	}
	for i := range part {
		set(i, part[i]*amount/sum*percent/100+part[i]*amount%sum/sum+1)
	}
}

func crewName(members, days int, tight binding) string {
	return fmt.Sprintf("%dx%d/%v", members, days, tight)
}
