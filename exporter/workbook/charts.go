package workbook

import (
	"fmt"

	"github.com/xuri/excelize/v2"

	"sumpter/exporter/tables"
)

// most lines that can still be told apart in one chart
const mostLines = 16

// needsWithChart shows under the table what each member needs and gets.
func needsWithChart(t *tables.Table) *sheet {
	s := tableSheet(needsSheet, t, nil)
	if len(t.Rows) == 0 {
		return s
	}
	last := len(s.rows)
	area := func(key string) string { return s.column(t.Column(key), firstRow, last) }
	series := func(key, colour string) excelize.ChartSeries {
		letter := columnName(t.Column(key))
		return excelize.ChartSeries{
			Name:       fmt.Sprintf("%s!$%s$%d", quoted(s.name), letter, s.headRow),
			Categories: area("member"), Values: area(key),
			Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}},
		}
	}
	s.addChart(&excelize.Chart{
		Type:   excelize.Col,
		Series: []excelize.ChartSeries{series("need", line), series("target", slate), series("planned", spruce)},
		Title:  chartTitle("Energy: need, target from the packs, planned food (kcal a day)"),
		Legend: excelize.ChartLegend{Position: "bottom"},
		YAxis:  excelize.ChartAxis{MajorGridLines: true, Minimum: zero()},
	})
	if len(t.Rows) > mostLines {
		s.lieDown(len(t.Rows))
	}
	return s
}

// lieDown turns the columns of the last chart into bars, a line for each of
// many members, so that their names can be read.
func (s *sheet) lieDown(members int) {
	const names, around = 12, 90 // pixels
	last := &s.charts[len(s.charts)-1]
	high, gap := uint(members*names+around), uint(30)
	last.chart.Type, last.chart.Dimension.Height, last.chart.GapWidth = excelize.Bar, high, &gap
	last.chart.XAxis.ReverseOrder, last.chart.XAxis.TickLabelSkip = true, 1
	last.chart.XAxis.Font.Size = 7
	last.chart.Legend.Position = "top"
	last.rows = int(high)/rowPixels + 2
}

// loads shows loads and shares of capability side by side over the days, with
// the fair level, and draws them.
func loads(t *tables.Tables) *sheet {
	s := tableSheet(loadsSheet, &t.LoadGrid, nil)
	if len(t.LoadGrid.Rows) == 0 || len(t.ShareGrid.Columns) < 2 {
		return s
	}
	s.headCols = 1
	s.gap()
	s.addWide(t.ShareGrid.Title, sectionLook)
	s.addWide(t.ShareGrid.About+" An empty place: away that day.", aboutLook)
	head := s.add(shareRow(headings(&t.ShareGrid))...)
	first, aligns := head+1, alignsOf(&t.ShareGrid)
	for i, values := range t.ShareGrid.Rows {
		cells := shareCells(&t.ShareGrid, aligns, values)
		for j := range cells {
			if j >= 2 && t.ShareGrid.Rows[i][j-1].Kind == tables.Figure {
				letter := columnName(j)
				cells[j].formula = fmt.Sprintf("%s%d/$B%d", letter, firstRow+i, firstRow+i)
			}
		}
		s.add(cells...)
	}
	last := len(s.rows)
	fair := s.add(fairRow(t)...)
	end := columnName(len(t.ShareGrid.Columns))
	s.marks = append(s.marks, mark{
		area: fmt.Sprintf("C%d:%s%d", first, end, last),
		rules: []rule{
			{formula: fmt.Sprintf("AND(ISNUMBER(C%d),C%d=MAX(C$%d:C$%d))", first, first, first, last), font: excelize.Font{Bold: true, Color: ochre}, fill: amber},
		},
	})
	s.drawLoads(t, head, first, last, fair)
	return s
}

// shareRow moves the days one column on, so that they stand below those of
// the loads, whose second column is the capability.
func shareRow(cells []cell) []cell {
	moved := append([]cell{cells[0], {look: cells[0].look}}, cells[1:]...)
	return moved
}

// shareCells leaves the place of a member who is away empty: a line chart
// would draw a word as zero.
func shareCells(t *tables.Table, aligns []string, values []tables.Value) []cell {
	cells := make([]cell, len(values))
	for i, value := range values {
		if i > 0 && value.Kind != tables.Figure {
			value = tables.Value{Kind: tables.Open}
		}
		cells[i] = tableCell(t, aligns, i, value, false)
	}
	return shareRow(cells)
}

// fairRow is the last line of the shares: the fair level of each day, found
// on the first member's row of that day.
func fairRow(t *tables.Tables) []cell {
	levels := map[float64]tables.Value{}
	day, fair := t.Loads.Column("day"), t.Loads.Column("fair")
	for _, values := range t.Loads.Rows {
		levels[values[day].Number] = values[fair]
	}
	bold := look{bold: true, colour: spruce, frame: groupStart, align: "right"}
	cells := []cell{{value: "Fair level", look: look{bold: true, colour: spruce, frame: groupStart, indent: true, align: "left"}}, {look: bold}}
	for i := 1; i < len(t.ShareGrid.Columns); i++ {
		level, known := levels[float64(i)]
		if !known {
			level = tables.Value{Kind: tables.Words, Text: tables.Unknown}
		}
		cells = append(cells, valued(t.ShareGrid.Columns[i], level, bold))
	}
	return cells
}

// stroke is how a line is drawn.
type stroke struct {
	colour string
	dash   excelize.LineDashType
	width  float64
}

func (s stroke) options() excelize.LineOptions {
	return excelize.LineOptions{Type: excelize.LineSolid, Dash: s.dash, Width: s.width}
}

// memberStroke tells members apart by colour and, for print without colour,
// by dashes.
func memberStroke(place int) stroke {
	colours := []string{spruce, brick, slate, ochre, plum, quiet}
	dashes := []excelize.LineDashType{excelize.LineDashSolid, excelize.LineDashDash, excelize.LineDashSysDot}
	return stroke{colours[place%len(colours)], dashes[place/len(colours)%len(dashes)], 1.75}
}

func (s *sheet) drawLoads(t *tables.Tables, head, first, last, fair int) {
	days := columnName(len(t.ShareGrid.Columns))
	across := func(row int) string { return fmt.Sprintf("%s!$C$%d:$%s$%d", quoted(s.name), row, days, row) }
	draw := func(row int, l stroke) excelize.ChartSeries {
		return excelize.ChartSeries{
			Name:       fmt.Sprintf("%s!$A$%d", quoted(s.name), row),
			Categories: across(head), Values: across(row),
			Line: l.options(), Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{l.colour}},
			Marker: excelize.ChartMarker{Symbol: "none"},
		}
	}
	var series []excelize.ChartSeries
	if last-first < mostLines {
		for row := first; row <= last; row++ {
			series = append(series, draw(row, memberStroke(row-first)))
		}
	} else {
		for i, extreme := range s.extremeRows(t, first, last) {
			series = append(series, draw(extreme, memberStroke(i)))
		}
	}
	series = append(series, draw(fair, stroke{ink, excelize.LineDashSysDash, 3}))
	s.addChart(&excelize.Chart{
		Type: excelize.Line, Series: series,
		Title:        chartTitle("Share of carrying capability over the days; dashed: the fair level"),
		Legend:       excelize.ChartLegend{Position: "right"},
		ShowBlanksAs: "gap",
		YAxis:        excelize.ChartAxis{MajorGridLines: true, Minimum: zero(), NumFmt: excelize.ChartNumFmt{CustomNumFmt: percentFormat}},
	})
}

// extremeRows adds lines for the heaviest and lightest share of each day,
// where the crew is too large for a line each.
func (s *sheet) extremeRows(t *tables.Tables, first, last int) []int {
	var rows []int
	for _, extreme := range []struct {
		name, formula string
		better        func(a, b float64) bool
	}{
		{"Heaviest", "MAX", func(a, b float64) bool { return a > b }},
		{"Lightest", "MIN", func(a, b float64) bool { return a < b }},
	} {
		bold := look{bold: true, colour: ink, frame: underline, align: "right"}
		cells := []cell{{value: extreme.name, look: look{bold: true, colour: ink, frame: underline, indent: true, align: "left"}}, {look: bold}}
		for i := 1; i < len(t.ShareGrid.Columns); i++ {
			value := tables.Value{Kind: tables.Words, Text: "away"}
			for _, values := range t.ShareGrid.Rows {
				if share := values[i]; share.Kind == tables.Figure && (value.Kind != tables.Figure || extreme.better(share.Number, value.Number)) {
					value = share
				}
			}
			c := valued(t.ShareGrid.Columns[i], value, bold)
			if value.Kind == tables.Figure {
				letter := columnName(i + 1)
				c.formula = fmt.Sprintf("%s(%s%d:%s%d)", extreme.formula, letter, first, letter, last)
			}
			cells = append(cells, c)
		}
		rows = append(rows, s.add(cells...))
	}
	return rows
}

func (s *sheet) column(place, first, last int) string {
	letter := columnName(place)
	return fmt.Sprintf("%s!$%s$%d:$%s$%d", quoted(s.name), letter, first, letter, last)
}

// Pixels of a chart and of what is around it.
const (
	chartHigh    = 400
	rowPixels    = 20
	digitPixels  = 7
	columnPixels = 5 // of the edges of a column
	widestChart  = 1300
)

// narrowestWithChart is the width in letters that a sheet with a chart has at
// least.
const narrowestWithChart = 110

// addChart puts a chart below everything else, as wide as the sheet.
func (s *sheet) addChart(c *excelize.Chart) {
	if missing := narrowestWithChart - s.fullWidth(); missing > 0 {
		s.widths = append(s.widths, missing)
	}
	s.landscape = true
	s.gap()
	c.XAxis.Font, c.YAxis.Font = axisFont(), axisFont()
	wide := 0.0
	for _, width := range s.widths {
		if more := (width+padding)*digitPixels + columnPixels; wide+more <= widestChart {
			wide += more
		}
	}
	c.Dimension = excelize.ChartDimension{Width: uint(wide), Height: chartHigh}
	s.charts = append(s.charts, chart{row: len(s.rows) + 1, chart: c, rows: chartHigh/rowPixels + 2})
}

func chartTitle(text string) excelize.ChartTitle {
	return excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: text, Font: &excelize.Font{Bold: true, Size: 11, Color: ink, Family: fontName}}}}
}

func axisFont() excelize.Font { return excelize.Font{Color: ink, Size: 9, Family: fontName} }

func zero() *float64 {
	z := 0.0
	return &z
}
