package library

import (
	"compress/gzip"
	"embed"
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"sumpter/domain/optional"
)

//go:embed data/*.csv data/*.csv.gz
var data embed.FS

// row is one line of a table, read by column name. A blank cell is a value
// nobody knows.
type row struct {
	table   string
	line    int
	columns map[string]int
	cells   []string
	err     *error // the first cell that could not be read
}

func (r row) text(column string) string {
	at, ok := r.columns[column]
	if !ok {
		r.fail(fmt.Errorf("%s has no column %q", r.table, column))
		return ""
	}
	return strings.TrimSpace(r.cells[at])
}

func (r row) number(column string) optional.Value[float64] {
	text := r.text(column)
	if text == "" {
		return optional.Unknown[float64]()
	}
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		r.fail(fmt.Errorf("%s, line %d, %s: %q is not a number", r.table, r.line, column, text))
	}
	return optional.Of(value)
}

// stated is for columns that have no blanks.
func (r row) stated(column string) float64 {
	value, known := r.number(column).Get()
	if !known {
		r.fail(fmt.Errorf("%s, line %d, %s: blank", r.table, r.line, column))
	}
	return value
}

func (r row) fail(err error) {
	if *r.err == nil {
		*r.err = err
	}
}

// eachRow reads an embedded table and hands over its lines in order.
func eachRow(name string, use func(row)) (err error) {
	file, err := data.Open("data/" + name)
	if err != nil {
		return err
	}
	defer func() { _ = file.Close() }()
	var source io.Reader = file
	if strings.HasSuffix(name, ".gz") {
		if source, err = gzip.NewReader(file); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	reader := csv.NewReader(source)
	reader.ReuseRecord = true
	header, err := reader.Read()
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	columns := make(map[string]int, len(header))
	for i, column := range header {
		columns[strings.Clone(column)] = i
	}
	var wrong error
	for line := 2; ; line++ {
		cells, err := reader.Read()
		if err == io.EOF {
			return wrong
		}
		if err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		use(row{table: name, line: line, columns: columns, cells: cells, err: &wrong})
		if wrong != nil {
			return wrong
		}
	}
}
