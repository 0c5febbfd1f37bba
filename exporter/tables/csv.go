package tables

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"
)

// WriteCSV writes the table after RFC 4180: UTF-8, CRLF, quotes where they
// are needed, one heading line. A text that a spreadsheet would take for a
// formula gets an apostrophe in front (OWASP, CSV injection); figures are
// guarded by being figures. Dates are YYYY-MM-DD, decimals have a point.
func WriteCSV(w io.Writer, table *Table) error {
	writer := csv.NewWriter(w)
	writer.UseCRLF = true
	record := make([]string, len(table.Columns))
	for i, column := range table.Columns {
		record[i] = guard(column.Heading)
	}
	if err := writer.Write(record); err != nil {
		return err
	}
	for _, row := range table.Rows {
		for i, value := range row {
			record[i] = csvText(value)
		}
		if err := writer.Write(record); err != nil {
			return err
		}
	}
	writer.Flush()
	return writer.Error()
}

func csvText(value Value) string {
	switch value.Kind {
	case Figure:
		return plainNumber(value.Number)
	case Day:
		return value.Date.String()
	case Open:
		return ""
	default:
		return guard(value.Text)
	}
}

// guard keeps a spreadsheet from running a typed text as a formula.
func guard(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r", rune(text[0])) {
		return "'" + text
	}
	return text
}

// plainNumber writes at most four decimals, finer than anything that is
// weighed or paid, and no trailing zeros.
func plainNumber(number float64) string {
	text := strconv.FormatFloat(number, 'f', 4, 64)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}
