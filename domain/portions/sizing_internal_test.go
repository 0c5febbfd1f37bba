package portions

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// drawDay makes a day of servings with bounds, from watery soup to pure fat.
func drawDay(t *rapid.T) *day {
	d := &day{}
	for range rapid.IntRange(1, 7).Draw(t, "servings") {
		grams := rapid.Float64Range(0, 300).Draw(t, "grams")
		density := rapid.Float64Range(0.3, 9).Draw(t, "density")
		protein := density / 4 * rapid.Float64Range(0, 1).Draw(t, "protein") // no more than the energy holds at 4 kcal/g
		o := &serving{
			fixed:      content{grams: 3, kcal: rapid.Float64Range(0, 20).Draw(t, "fixed")},
			grows:      content{grams, grams * density, grams * protein},
			leastScale: rapid.Float64Range(0.2, 1).Draw(t, "least"),
		}
		o.mostScale = o.leastScale + rapid.Float64Range(0, 2).Draw(t, "room")
		o.wished = o.clamp(rapid.Float64Range(0, 3).Draw(t, "wished"))
		d.servings = append(d.servings, o)
	}
	return d
}

// ends gives the energy of the day with every portion at its least and at its most.
func (d *day) ends() (least, most float64) {
	for _, o := range d.servings {
		least += o.at(o.leastScale).kcal
		most += o.at(o.mostScale).kcal
	}
	return least, most
}

// TestMeetsWhatCanBeMet: the energy exactly where the bounds allow it, else the nearest end; every scale within its bounds.
func TestMeetsWhatCanBeMet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDay(t)
		target := rapid.Float64Range(0, 6000).Draw(t, "target")
		d.meet(target)
		least, most := d.ends()
		want := min(max(target, least), most)
		if got := d.sum().kcal; math.Abs(got-want) > 0.01+0.001*want {
			t.Errorf("%.2f kcal, want %.2f (from %.2f to %.2f)", got, want, least, most)
		}
		for _, o := range d.servings {
			if o.scale < o.leastScale || o.scale > o.mostScale {
				t.Errorf("scale %v outside %v to %v", o.scale, o.leastScale, o.mostScale)
			}
		}
	})
}

// TestProteinAtTheSameEnergy: more protein is found without more energy, or it is said that it cannot be.
func TestProteinAtTheSameEnergy(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDay(t)
		least, most := d.ends()
		target := least + rapid.Float64Range(0, 1).Draw(t, "part")*(most-least)
		d.meet(target)
		before := d.sum()
		asked := before.protein * rapid.Float64Range(1, 1.5).Draw(t, "more")
		reached := d.meetProtein(target, asked)
		after := d.sum()
		if math.Abs(after.kcal-target) > 0.01+0.001*target {
			t.Errorf("%.2f kcal, want %.2f", after.kcal, target)
		}
		if reached && after.protein < asked-0.01-0.001*asked {
			t.Errorf("%.2f g protein of %.2f is called enough", after.protein, asked)
		}
		if !reached && after.protein < before.protein-0.01-0.001*before.protein {
			t.Errorf("trying for protein lost some: %.2f before, %.2f after", before.protein, after.protein)
		}
	})
}
