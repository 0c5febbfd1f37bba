package settings

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// groupsTab is the cook groups: who shares a stove and a pot. Who is in which is
// said in the crew.
type groupsTab struct {
	bench   *bench.Bench
	table   *grid.Grid[trip.GroupID]
	content fyne.CanvasObject
}

func groupKey(id trip.GroupID) string { return bench.IDText(int64(id)) }

func newGroupsTab(b *bench.Bench) *groupsTab {
	g := &groupsTab{bench: b}
	g.table = grid.New(g.columns(), grid.Options[trip.GroupID]{
		Key: groupKey, OnAdd: g.add, OnDelete: g.remove, Together: b.Together, OnProblem: b.Say, Sticky: 1, Clipboard: b.Clipboard,
	})
	add := widget.NewButton(lang.L("Add a cook group"), g.table.Add)
	add.Importance = widget.HighImportance
	about := bench.SmallPrint(lang.L("A cook group shares a stove and a pot and has a menu of its own. Who is in which is said in the crew; its stove and pot are gear, at the loads."))
	head := bench.Head(bench.Inset(look.NewHeading(lang.L("Who cooks and eats together?"))),
		widget.NewButton(lang.L("Remove"), g.table.Delete), add)
	g.content = bench.Headed(g.table, head, about)
	return g
}

func (g *groupsTab) columns() []grid.Column[trip.GroupID] {
	quiet := func(trip.GroupID) fyne.ThemeColorName { return look.Quiet }
	return []grid.Column[trip.GroupID]{
		{Title: lang.L("Name"), Width: 150, Text: g.name, Set: g.rename},
		{Title: lang.L("Members"), Width: 460, Text: g.members, Tone: quiet},
		{Title: lang.L("Stoves and pots"), Width: 700, Text: g.kitchen, Tone: quiet},
	}
}

func (g *groupsTab) name(id trip.GroupID) string {
	if group := g.bench.Trip().Group(id); group != nil {
		return group.Name
	}
	return ""
}

func (g *groupsTab) members(id trip.GroupID) string {
	var names []string
	for _, m := range g.bench.Trip().Crew {
		if m.Group == id {
			names = append(names, m.Name)
		}
	}
	if len(names) == 0 {
		return lang.L("nobody yet")
	}
	return strings.Join(names, ", ")
}

func (g *groupsTab) kitchen(id trip.GroupID) string {
	var names []string
	for _, item := range g.bench.Trip().Gear {
		if item.Group == id && (item.Kind == trip.Stove || item.Kind == trip.Pot) {
			names = append(names, item.Name)
		}
	}
	if len(names) == 0 {
		return lang.L("none")
	}
	return strings.Join(names, ", ")
}

var errGroupGone = prose.Errorf("the cook group is gone")

func (g *groupsTab) rename(id trip.GroupID, text string) error {
	name := lang.X("rename-group", "rename {{.Name}}", map[string]any{"Name": g.name(id)})
	return g.bench.Edit(name, func(t *trip.Trip) error {
		group := t.Group(id)
		if group == nil {
			return errGroupGone
		}
		group.Name = strings.TrimSpace(text)
		return nil
	})
}

func (g *groupsTab) add() (string, error) {
	id := trip.NextID(g.bench.Trip().Groups, func(c *trip.CookGroup) trip.GroupID { return c.ID })
	err := g.bench.Edit(lang.L("add a cook group"), func(t *trip.Trip) error {
		named := func(name string) bool {
			return slices.ContainsFunc(t.Groups, func(c trip.CookGroup) bool { return strings.EqualFold(c.Name, name) })
		}
		n := len(t.Groups) + 1
		for named(fmt.Sprintf("%s %d", lang.L("Group"), n)) {
			n++
		}
		t.Groups = append(t.Groups, trip.CookGroup{ID: id, Name: fmt.Sprintf("%s %d", lang.L("Group"), n)})
		return nil
	})
	g.refresh()
	return groupKey(id), err
}

// remove takes out a group that nobody is in, with its menu; its gear becomes
// everybody's.
func (g *groupsTab) remove(id trip.GroupID) error {
	t := g.bench.Trip()
	if slices.ContainsFunc(t.Crew, func(m trip.Member) bool { return m.Group == id }) {
		return errors.New(lang.X("group-has-members", "{{.Name}} has members: give them another group in the crew first.", map[string]any{"Name": g.name(id)}))
	}
	err := g.bench.Edit(lang.X("remove-group", "remove {{.Name}}", map[string]any{"Name": g.name(id)}), func(t *trip.Trip) error {
		t.Groups = slices.DeleteFunc(t.Groups, func(c trip.CookGroup) bool { return c.ID == id })
		t.Menu = slices.DeleteFunc(t.Menu, func(c trip.Cell) bool { return c.Group == id })
		for i := range t.Gear {
			if t.Gear[i].Group == id {
				t.Gear[i].Group = 0
			}
		}
		return nil
	})
	g.refresh()
	return err
}

func (g *groupsTab) refresh() {
	groups := g.bench.Trip().Groups
	rows := make([]trip.GroupID, len(groups))
	for i := range groups {
		rows[i] = groups[i].ID
	}
	g.table.SetRows(rows)
}
