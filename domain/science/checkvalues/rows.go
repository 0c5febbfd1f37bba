// Package checkvalues reads testdata/check_values.csv, the project's table of
// published figures, and compares them with what our packages compute.
//
// It exists so that every package proves itself against the same outside
// figures in the same way: a topic is checked whole, a row nobody computes is
// a failure, and a failure prints the source of the figure. Only tests import
// it; the file is handed in as an io.Reader.
package checkvalues

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
)

// Row is one published figure: what goes in, what must come out, how near,
// and who says so.
type Row struct {
	Line       int // line in the file where the row begins, 1 the header
	Topic      string
	Case       string
	Inputs     Inputs
	Expected   string
	Unit       string
	Tolerance  string // absolute in Unit, or "exact", or a number with %
	Source     string
	Confidence string
}

var header = []string{"topic", "case", "inputs", "expected", "unit", "tolerance", "source", "confidence"}

// Read returns all rows in the order of the file. Its errors name the line.
func Read(file io.Reader) ([]Row, error) {
	records := csv.NewReader(file)
	records.FieldsPerRecord = len(header)
	first, err := records.Read()
	if err != nil {
		return nil, fmt.Errorf("check values, header: %w", err)
	}
	if !slices.Equal(first, header) {
		return nil, fmt.Errorf("check values, header: have %q, want %q", first, header)
	}
	var rows []Row
	for {
		record, err := records.Read()
		if err == io.EOF {
			return rows, nil
		}
		if err != nil {
			return nil, fmt.Errorf("check values: %w", err)
		}
		line, _ := records.FieldPos(0)
		rows = append(rows, Row{
			Line: line, Topic: record[0], Case: record[1], Inputs: Inputs(record[2]), Expected: record[3],
			Unit: record[4], Tolerance: record[5], Source: record[6], Confidence: record[7],
		})
	}
}

// Topics returns the topics of the rows, sorted, each once.
func Topics(rows []Row) []string {
	var topics []string
	for _, row := range rows {
		topics = append(topics, row.Topic)
	}
	slices.Sort(topics)
	return slices.Compact(topics)
}
