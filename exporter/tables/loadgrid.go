package tables

import (
	"fmt"

	"sumpter/domain/carry"
)

// dayKey is the key of the column of a day in LoadGrid and ShareGrid.
func dayKey(day int) string { return fmt.Sprintf("day_%d", day) }

func loadGridTable(x *index) Table {
	fields := append(x.gridHead(), field[*carry.Member]{
		Column{Key: "capability", Heading: "Capability (" + x.loadUnit() + ")", Decimals: 1, Width: 10},
		func(m *carry.Member) Value { return x.load(m.Capability) },
	})
	return x.grid(Table{
		Name: "loads_by_day", Title: "Loads on each morning",
		About: "Load in " + x.loadUnit() + ": own kit, food, gear, fuel and waste. Water to a dry camp comes on top. Loads are advice, not a medical limit: go by how people walk.",
		Empty: "Nobody carries anything yet.",
	}, fields, 0, 1, func(d carry.Day) Value { return x.load(d.Load) })
}

func shareGridTable(x *index) Table {
	return x.grid(Table{
		Name: "shares_by_day", Title: "Share of carrying capability on each morning",
		About: "Load / carrying capability. The last line is the fair level: what all would carry if loads could be split to the gram.",
		Empty: "Nobody carries anything yet.",
	}, x.gridHead(), Percent, 0, func(d carry.Day) Value { return figure(d.Share) })
}

func (x *index) gridHead() []field[*carry.Member] {
	return []field[*carry.Member]{{
		Column{Key: "member", Heading: "Member", Width: 18},
		func(m *carry.Member) Value { return words(x.member(m.Member)) },
	}}
}

// grid puts the days side by side.
func (x *index) grid(head Table, fields []field[*carry.Member], role Role, decimals int, of func(carry.Day) Value) Table {
	for day := 1; day <= len(x.trip.Days); day++ {
		fields = append(fields, field[*carry.Member]{
			Column{Key: dayKey(day), Heading: fmt.Sprintf("Day %d", day), Role: role, Decimals: decimals, Width: 8},
			func(m *carry.Member) Value {
				if day > len(m.Days) || !m.Days[day-1].Present {
					return words("away")
				}
				return of(m.Days[day-1])
			},
		})
	}
	rows := make([]*carry.Member, len(x.plan.Carry.Members))
	for i := range rows {
		rows[i] = &x.plan.Carry.Members[i]
	}
	return fill(head, fields, rows)
}
