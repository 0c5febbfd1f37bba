package loads

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/charts"
	"sumpter/app/look"
	"sumpter/domain/carry"
	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// hand makes a view of two members whose loads are 10 and 12 kg on three days.
func hand(system units.System) *view {
	on := &trip.Trip{Units: system, Days: make([]trip.Day, 3), Groups: []trip.CookGroup{{ID: 1, Name: "All"}}, Crew: []trip.Member{{ID: 1, Name: "Ada", Group: 1}, {ID: 2, Name: "Bo", Group: 1}}}
	p := &plan.Plan{Trip: on}
	for i, kilograms := range []float64{10, 12} {
		day := carry.Day{Present: true, Load: units.FromKilograms(kilograms), Share: kilograms / 60}
		p.Carry.Members = append(p.Carry.Members, carry.Member{Member: trip.MemberID(i + 1), Capability: units.FromKilograms(60), Days: []carry.Day{day, day, day}})
	}
	return newView(p, nil)
}

func TestNearnessInWords(t *testing.T) {
	v := hand(units.Metric)
	for _, c := range []struct {
		name  string
		stage carry.Stage
		want  []string
	}{
		{"proven", carry.Stage{FirstDay: 1, Worst: 0.2, WorstBound: 0.19, Proven: true}, []string{"Proven: nobody could lighten"}},
		{"on its bounds", carry.Stage{FirstDay: 1, Worst: 0.2, WorstBound: 0.2, Mean: 0.18, MeanBound: 0.18}, []string{"Proven: nobody could lighten"}},
		// 0.2 over 0.18: a tenth of the heaviest load of 12 kg might go.
		{"a gap on the first morning", carry.Stage{FirstDay: 1, Worst: 0.2, WorstBound: 0.18, Mean: 0.2, MeanBound: 0.2}, []string{"best that was found", "first morning by more than 1200 g."}},
		{"a gap over the days", carry.Stage{FirstDay: 1, Worst: 0.2, WorstBound: 0.2, Mean: 0.2, MeanBound: 0.19}, []string{"proven for the first morning", "by more than 5.0 %"}},
		{"gaps in both", carry.Stage{FirstDay: 1, Worst: 0.2, WorstBound: 0.18, Mean: 0.2, MeanBound: 0.19}, []string{"1200 g", "5.0 %"}},
		{"no bound known", carry.Stage{FirstDay: 1, Worst: 0.2, Mean: 0.2}, []string{"is not known"}},
		{"no walking", carry.Stage{FirstDay: 1, Worst: 0.2, WorstBound: 0.2}, []string{"Proven: nobody could lighten"}},
		{"nothing", carry.Stage{FirstDay: 1}, []string{"Nothing is carried."}},
	} {
		got := v.nearness(&c.stage)
		for _, want := range c.want {
			if !strings.Contains(got, want) {
				t.Errorf("%s: %q does not say %q", c.name, got, want)
			}
		}
	}
}

func TestHandOversInWords(t *testing.T) {
	v := hand(units.Metric)
	for _, c := range []struct {
		first, count int
		want         string
	}{{1, 0, ""}, {2, 0, "Nothing changes packs at its start."}, {2, 1, "One thing changes packs at its start."}, {2, 7, "7 things change packs at its start."}} {
		if got := v.handOvers(&carry.Stage{FirstDay: c.first, HandOvers: c.count}); got != c.want {
			t.Errorf("day %d, %d: %q, want %q", c.first, c.count, got, c.want)
		}
	}
}

func TestAStageIsToldInFull(t *testing.T) {
	v := hand(units.Metric)
	text := v.stageWords(&carry.Stage{FirstDay: 2, LastDay: 3, Worst: 0.2, WorstBound: 0.195, Mean: 0.18, MeanBound: 0.179, HandOvers: 2})
	for _, want := range []string{"Days 2 to 3", "Bo's", "20.0 %", "19.5 %", "18.0 %", "17.9 %", "2 things change packs"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in %s", want, text)
		}
	}
	if got := dayRange(&carry.Stage{FirstDay: 4, LastDay: 4}); got != "Day 4" {
		t.Errorf("one day is called %q", got)
	}
}

func TestMassesStandInTheReadersUnits(t *testing.T) {
	if got := hand(units.Metric).kilograms(12 * units.Kilogram); got != "12.0 kg" {
		t.Errorf("metric: %q", got)
	}
	if got := hand(units.US).kilograms(units.FromGrams(453.59237 * 20)); got != "20.0 lb" {
		t.Errorf("US: %q", got)
	}
}

func TestFindingsOfTheLoadsLeadToTheirPlace(t *testing.T) {
	s := openDemo(t)
	if err := s.Document.Edit("x", func(on *trip.Trip) error {
		on.Crew[1].LoadLimit = optional.Of(on.Crew[1].OwnKit - units.Kilogram)
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	s.tabs.SelectIndex(fairnessTab)
	if s.Waiting() == 0 {
		t.Error("a limit below own kit is not counted")
	}
	shown, button := "", (*widget.Button)(nil)
	for _, object := range s.fairness.found.Box.Objects {
		walk(object, func(o fyne.CanvasObject) {
			switch o := o.(type) {
			case *look.Paragraph:
				shown += o.Content + "\n"
			case *widget.Button:
				if button == nil {
					button = o
				}
			}
		})
	}
	if !strings.Contains(shown, "Tomas") || !strings.Contains(shown, "limit") || button == nil {
		t.Fatalf("shown is\n%s", shown)
	}
	test.Tap(button)
	if s.tabs.SelectedIndex() != 0 || s.member != s.named("Tomas") {
		t.Errorf("it leads to tab %d, member %d", s.tabs.SelectedIndex(), s.member)
	}
}

func walk(object fyne.CanvasObject, visit func(fyne.CanvasObject)) {
	visit(object)
	if c, ok := object.(*fyne.Container); ok {
		for _, child := range c.Objects {
			walk(child, visit)
		}
	}
}

func TestALoadAboveItsLimitIsSaidOnTheColumn(t *testing.T) {
	s := openDemo(t)
	ruth := s.view.place(s.named("Ruth"))
	d := s.view.plan.Carry.Members[ruth].Days[0]
	fits := s.column(ruth, d, charts.AtRest)
	if fits.Warn || fits.Limit <= 0 || len(fits.Parts) != 5 {
		t.Errorf("within the limit: %+v", fits)
	}
	d.Load += 3 * units.Kilogram
	if over := s.column(ruth, d, charts.AtRest); !over.Warn || over.Notes[1] != "over limit" {
		t.Errorf("3 kg more: %+v", over)
	}
	pablo := s.view.place(s.named("Pablo"))
	if away := s.column(pablo, s.view.plan.Carry.Members[pablo].Days[0], charts.AtRest); len(away.Parts) != 0 || away.Notes[0] != "not there" {
		t.Errorf("before he comes: %+v", away)
	}
}

func TestThePanelTellsLimitRoomAndPins(t *testing.T) {
	s := openDemo(t)
	s.showMember(s.named("Ruth"))
	for _, want := range []string{"fair: ", "limit 9.5 kg", "of 18.0 L room"} {
		if !strings.Contains(s.pack.detail.Content, want) {
			t.Errorf("%q does not say %q", s.pack.detail.Content, want)
		}
	}
	bag := s.at("Olek", shared)
	if err := s.give(bag, s.named("Olek")); err != nil {
		t.Fatal(err)
	}
	r := newRow(s.pack.tap, s.pack.openMenu, s.dragTo, s.drop)
	for i, x := range s.pack.things {
		if x.id() == bag.id() {
			s.pack.fill(i, r)
		}
	}
	if !strings.HasPrefix(r.shown.about, "pinned") || r.shown.tone != look.Spruce {
		t.Errorf("the row of a pinned bag shows %+v", r.shown)
	}
	r.Tapped(nil)
	if s.chosen != bag.id() || s.Window.Canvas().Focused() != fyne.Focusable(s.pack.list) {
		t.Error("a tap on the row does not choose it")
	}
	s.pack.step(1)
	if s.chosen == bag.id() {
		t.Error("the next thing is the same")
	}
}

func TestReasonsAreNotRepeated(t *testing.T) {
	many := []string{"a", "b", "a"}
	for i := range 20 {
		many = append(many, strings.Repeat("x", i+1))
	}
	got := unique(many)
	if len(got) != mostListed+1 || got[0] != "a" || got[1] != "b" || !strings.Contains(got[mostListed], "14") {
		t.Errorf("got %q", got)
	}
	if got := sentences("stays with its cook group; put here by the fair split"); got != "Stays with its cook group. Put here by the fair split." {
		t.Errorf("got %q", got)
	}
}

func TestTheFrameShowsWhoHasTheKeyboard(t *testing.T) {
	test.NewTempApp(t)
	var keys []fyne.KeyName
	letters := ""
	k := newKeyed(container.NewStack(), func(e *fyne.KeyEvent) { keys = append(keys, e.Name) }, func(r rune) { letters += string(r) })
	w := test.NewTempWindow(t, k)
	w.Canvas().Focus(k)
	if k.frame.StrokeWidth == 0 {
		t.Error("no frame with the keyboard")
	}
	k.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft})
	k.TypedRune('m')
	w.Canvas().Unfocus()
	if k.frame.StrokeWidth != 0 || len(keys) != 1 || letters != "m" {
		t.Errorf("frame %v, keys %v, letters %q", k.frame.StrokeWidth, keys, letters)
	}
}

// A load is set beside the fair load of the day, and who is over it by what is
// felt is named with the reason.
func TestWhoIsOverTheFairLoadIsNamed(t *testing.T) {
	v := hand(units.Metric)
	why := prose.Say("The own kit alone is %s.", 11*units.Kilogram)
	v.plan.Carry.Stages = []carry.Stage{{
		FirstDay: 1, LastDay: 3, Worst: 0.2, WorstBound: 0.2, Mean: 0.2, MeanBound: 0.2, Proven: true, Fair: []float64{11.0 / 60, 12.0 / 60, 9.9999 / 60},
		Over: []carry.Excess{{Member: 2, Day: 1, Fair: 11 * units.Kilogram, Over: units.Kilogram, Why: why}, {Member: 1, Day: 3, Fair: 9 * units.Kilogram, Over: 300 * units.Gram, Why: why}},
	}}
	for _, c := range []struct {
		member trip.MemberID
		day    int
		want   string
	}{
		{2, 1, "fair: 11.0 kg, 18.3 %, 1000 g over"},
		{1, 1, "fair: 11.0 kg, 18.3 %, 1000 g under"},
		{2, 2, "fair: 12.0 kg, 20.0 %"},
		{1, 3, "fair: 10.0 kg, 16.7 %"}, // 10 mg are nothing
	} {
		if got := v.fairWords(c.member, c.day); got != c.want {
			t.Errorf("member %d, day %d: %q, want %q", c.member, c.day, got, c.want)
		}
	}
	if over := v.over(2, 1); over == nil || v.over(2, 2) != nil || v.over(1, 1) != nil {
		t.Errorf("who is over on which day: %v", over)
	}
	words := v.stageWords(v.stage(1))
	if !strings.Contains(words, "Bo 1000 g (9.1 %) on day 1, Ada 300 g (3.3 %) on day 3. The own kit alone is 11.0 kg.") {
		t.Errorf("it says %q", words)
	}
	v.plan.Carry.Stages[0].Over = nil
	if words := v.stageWords(v.stage(1)); !strings.Contains(words, "Nobody is over a fair load by more than 2 %") {
		t.Errorf("it says %q", words)
	}
}

// Water to a dry camp counts against a limit.
func TestWaterAboveALimitIsSaidOnTheColumn(t *testing.T) {
	s := openDemo(t)
	ruth := s.view.place(s.named("Ruth"))
	d := s.view.plan.Carry.Members[ruth].Days[0]
	d.Water = 3 * units.Kilogram
	if over := s.column(ruth, d, charts.AtRest); !over.Warn || over.Notes[1] != "over limit" {
		t.Errorf("with 3 kg of water: %+v", over)
	}
}

// Of what was put somewhere by hand it is not said that the split weighs other
// days.
func TestAPinnedThingIsNotExplainedByTheSplit(t *testing.T) {
	s := openDemo(t)
	tent := s.first("Olek", func(t thing) bool { return t.kind == carry.GearItem && t.mass > 2*units.Kilogram })
	if err := s.give(tent, s.named("Ruth")); err != nil {
		t.Fatal(err)
	}
	why := s.why(s.at("Ruth", func(t thing) bool { return t.id() == tent.id() }))
	if !strings.Contains(why, "would fall from") || strings.Contains(why, "the split also weighs") {
		t.Errorf("why does Ruth carry it: %q", why)
	}
}

// Who is at a limit, or has no room, is not said to be able to take a thing.
func TestWhoIsFullIsNotOfferedAThing(t *testing.T) {
	s := openDemo(t)
	bag := s.first("Olek", func(t thing) bool { return shared(t) && s.view.obstacle(&t, s.named("Ruth"), 1) == "" })
	full := func() string {
		_, names, _ := strings.Cut(s.why(bag), "out of room with it: ")
		names, _, _ = strings.Cut(names, ".")
		return names
	}
	if got := full(); strings.Contains(got, "Ruth") {
		t.Fatalf("%s cannot take %s at first", got, bag.title())
	}
	ruth := &s.view.plan.Carry.Members[s.view.place(s.named("Ruth"))].Days[0]
	was := *ruth
	ruth.Water = 2 * units.Kilogram
	if o := s.view.weigh(move{thing: bag, to: s.named("Ruth")}, 1); o.over == 0 || !strings.Contains(full(), "Ruth") {
		t.Errorf("with 2 kg of water %v over her limit, full: %q", o.over, full())
	}
	*ruth = was
	ruth.Volume = 18*units.Litre - bag.volume + units.Millilitre
	m := move{thing: bag, to: s.named("Ruth")}
	o := s.view.weigh(m, 1)
	if bag.volume == 0 || !o.cramped || !strings.Contains(full(), "Ruth") || !strings.Contains(s.view.say(m, o), "No room for it in Ruth's pack") {
		t.Errorf("with a full pack: %+v, full: %q, %q", o, full(), s.view.say(m, o))
	}
}

// Where limits are passed nothing is called proven or best.
func TestNothingIsProvenWhereALimitIsPassed(t *testing.T) {
	v := hand(units.Metric)
	v.plan.Carry.Stages = []carry.Stage{{FirstDay: 1, LastDay: 3, Worst: 0.2, WorstBound: 0.2, Mean: 0.2, MeanBound: 0.2}}
	v.plan.Carry.Findings = []findings.Finding{{Code: "over-limit", Place: findings.Place{Day: 1, Member: 2}}}
	words := v.stageWords(v.stage(1))
	if !strings.Contains(words, "this one passes them least") || strings.Contains(words, "roven") || strings.Contains(words, "nobody could") {
		t.Errorf("it says %q", words)
	}
}

// A difference that the figures do not show is none.
func TestEqualFiguresAreCalledEqual(t *testing.T) {
	v := hand(units.Metric)
	if got := v.compare(1, 0.2054, 0.2046, 1, false); !strings.Contains(got, "would stay at 20.5 %") {
		t.Errorf("it says %q", got)
	}
	if got := v.compare(1, 0.2054, 0.2044, 1, false); !strings.Contains(got, "would fall from 20.5 % to 20.4 %") {
		t.Errorf("it says %q", got)
	}
}
