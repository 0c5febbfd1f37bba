package workbook

import (
	"fmt"

	"sumpter/domain/plan"
	"sumpter/domain/units"
	"sumpter/exporter/tables"
)

// columns gives the letters of a table's columns by key, for formulas.
func columns(t *tables.Table) func(key string) string {
	return func(key string) string { return columnName(t.Column(key)) }
}

// shoppingList lets the leader change packages and prices: cost and leftover
// follow. What is left over is summed by the number of the food, so that
// sorting the table and names full of signs do no harm.
func shoppingList(t *tables.Table) *sheet {
	at := columns(t)
	last := firstRow + len(t.Rows) - 1
	area := func(key string) string { return fmt.Sprintf("$%s$%d:$%s$%d", at(key), firstRow, at(key), last) }
	return tableSheet(shoppingSheet, t, formulas{
		"cost":   func(row int) string { return fmt.Sprintf("%s%d*%s%d", at("count"), row, at("price"), row) },
		"bought": func(row int) string { return fmt.Sprintf("%s%d*%s%d", at("count"), row, at("package"), row) },
		"leftover": func(row int) string {
			return fmt.Sprintf("%s%d+SUMIF(%s,%s%d,%s)-%s%d", at("home"), row, area("number"), at("number"), row, area("bought"), at("needed"), row)
		},
	})
}

func fuelList(t *tables.Table) *sheet {
	at := columns(t)
	return tableSheet(fuelSheet, t, formulas{
		"cost": func(row int) string { return fmt.Sprintf("%s%d*%s%d", at("count"), row, at("price"), row) },
	})
}

func weighing(t *tables.Table) *sheet {
	at := columns(t)
	return tableSheet("Weighing", t, formulas{
		"difference": func(row int) string {
			return fmt.Sprintf("IF(ISNUMBER(%s%d),%s%d-%s%d,\"\")", at("weighed"), row, at("weighed"), row, at("mass"), row)
		},
	})
}

// costNames are the names of figures on the cost sheet.
var costNames = []struct {
	name string
	row  int
}{
	{"Cost_of_food", 4}, {"Cost_of_fuel", 5}, {"Fees", 6}, {"Cost_of_trip", 7},
	{"Person_days", 8}, {"Cost_per_person_day", 9},
}

// costs adds up what is bought, live from the shopping sheets.
func costs(p *plan.Plan, t *tables.Tables) *sheet {
	currency, budget := "", "none set"
	var money func(units.Money) float64
	left := cell{value: "no budget set", look: plainLook}
	digits := 2
	if p.Trip != nil {
		currency, digits = p.Trip.Currency, units.CurrencyDigits(p.Trip.Currency)
	}
	money = func(m units.Money) float64 { return float64(m) / pow10(digits) }
	amount := look{colour: ink, align: "right", format: decimalFormat(digits), frame: underline}
	input := amount
	input.fill = amber
	budgetCell := cell{value: budget, look: plainLook}
	if p.Trip != nil {
		if set, known := p.Trip.Settings.Budget.Get(); known {
			budgetCell = cell{value: money(set), look: input}
			left = cell{value: money(set - p.Shopping.Cost - p.Shopping.Fees), formula: "B10-B7", look: amount}
		}
	}
	days := p.Summary().PersonDays
	total := amount
	total.bold = true
	s := &sheet{name: costsSheet, widths: []float64{40, 16, 60}}
	s.addWide("Costs", titleLook)
	s.addWide("Figures follow the shopping sheets. Change the fees or the budget here.", aboutLook)
	s.add(cell{value: "What", look: headLook}, cell{value: "Amount (" + currency + ")", look: headLook}, cell{value: "Mind", look: headLook})
	note := func(text string) cell {
		return cell{value: text, look: look{colour: ink, wrap: true, indent: true, align: "left"}}
	}
	food := p.Shopping.Cost - fuelCost(p)
	s.add(note("Food"), cell{value: money(food), formula: sumOf(shoppingSheet, &t.Shopping), look: amount}, note(unpriced(p)))
	s.add(note("Fuel"), cell{value: money(fuelCost(p)), formula: sumOf(fuelSheet, &t.Fuel), look: amount}, note("Only fuel whose price is known."))
	s.add(note("Parcels and visits"), cell{value: money(p.Shopping.Fees), look: input}, note("Fees of the resupply points. Postage itself is not known to the program unless it is in these fees."))
	s.add(cell{value: "The whole trip", look: strongLook}, cell{value: money(p.Shopping.Cost + p.Shopping.Fees), formula: "SUM(B4:B6)", look: total}, note("What is used up from home is not counted as a cost."))
	s.add(note("Person-days"), cell{value: days, look: look{colour: ink, align: "right", format: "#,##0", frame: underline}}, note("Members times the days they are there."))
	perDay := cell{value: "no person-days", look: plainLook}
	if days > 0 {
		perDay = cell{value: money(p.Shopping.Cost+p.Shopping.Fees) / float64(days), formula: "B7/B8", look: amount}
	}
	s.add(note("Per person-day"), perDay, note("Food, fuel and fees."))
	s.add(note("Budget"), budgetCell, note(""))
	s.add(note("Left of the budget"), left, note("Below zero: over the budget."))
	s.headRow = 3
	return s
}

func pow10(digits int) float64 {
	value := 1.0
	for range digits {
		value *= 10
	}
	return value
}

// sumOf adds up the cost column of a sheet.
func sumOf(sheet string, t *tables.Table) string {
	if len(t.Rows) == 0 {
		return ""
	}
	letter := columnName(t.Column("cost"))
	return fmt.Sprintf("SUM(%s!%s%d:%s%d)", quoted(sheet), letter, firstRow, letter, firstRow+len(t.Rows)-1)
}

func fuelCost(p *plan.Plan) units.Money {
	var sum units.Money
	for _, line := range p.Shopping.Fuel {
		if line.CostKnown {
			sum += line.Cost
		}
	}
	return sum
}

func unpriced(p *plan.Plan) string {
	if p.Shopping.Unpriced == 0 {
		return "Every price is known."
	}
	return fmt.Sprintf("Prices that are unknown: %d. The true cost is higher.", p.Shopping.Unpriced)
}
