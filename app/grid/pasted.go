package grid

import (
	"slices"
	"strings"
)

// head is what the first line of a pasted table says of one column.
type head struct {
	column int    // of this table, -1: none has that name
	unit   string // of its numbers, where it is another than the column's
	word   string // behind all its figures, where they are told in another way
}

// readHeads takes the first line as heads if it names columns of this table:
// at least two, or its only one.
func (p *pasting[R]) readHeads() {
	first := p.lines[0]
	var heads []head
	var unknown, twice, fixed []string
	used := map[int]bool{}
	found := 0
	for _, text := range first {
		h := p.grid.headOf(text, used)
		if h.column >= 0 {
			used[h.column] = true
			found++
			if h.column != p.grid.options.Naming && p.grid.columns[h.column].Set == nil {
				fixed = append(fixed, text)
			}
		} else if p.grid.headOf(text, nil).column >= 0 {
			twice = append(twice, text)
		} else if text != "" {
			unknown = append(unknown, text)
		}
		heads = append(heads, h)
	}
	if len(p.lines) > 1 && (found >= 2 || found == 1 && len(unknown) == 0) {
		p.heads, p.unknown, p.lines = heads, unknown, p.lines[1:]
		p.twice, p.fixed = twice, fixed
		return
	}
	for _, line := range p.lines {
		p.beyond = max(p.beyond, p.start.Col+len(line)-len(p.grid.columns))
	}
}

// headOf finds the column that a head names, with its unit or without.
func (g *Grid[R]) headOf(text string, used map[int]bool) head {
	if g.options.HeadOf != nil {
		text = g.options.HeadOf(text)
	}
	title, unit := partHead(text)
	found := head{column: -1}
	for i, column := range g.columns {
		if used[i] {
			continue
		}
		for also, word := range column.AlsoIn {
			if strings.EqualFold(also, title) {
				return head{column: i, unit: unit, word: word}
			}
		}
		if !column.hasHead(title) && !column.hasHead(text) {
			continue
		}
		if unit == "" || strings.EqualFold(unit, column.Unit) || column.hasHead(text) {
			return head{column: i}
		}
		if found.column < 0 {
			found = head{column: i, unit: unit}
		}
	}
	return found
}

// hasHead tells whether a pasted table may call the column so.
func (c Column[R]) hasHead(text string) bool {
	return strings.EqualFold(c.Title, text) || slices.ContainsFunc(c.Also, func(head string) bool { return strings.EqualFold(head, text) })
}

// partHead parts a head from the unit in brackets behind it: "Body (kg)".
func partHead(text string) (title, unit string) {
	for _, brackets := range []string{"()", "[]"} {
		if open := strings.LastIndexByte(text, brackets[0]); open > 0 && strings.HasSuffix(text, brackets[1:]) {
			return strings.TrimSpace(text[:open]), strings.TrimSpace(text[open+1 : len(text)-1])
		}
	}
	return text, ""
}

// written writes the unit of the head behind a bare number, and its word behind
// every figure.
func (h head) written(text string) string {
	if text == "" {
		return text
	}
	if h.unit != "" && isNumber(text) {
		text += " " + h.unit
	}
	if h.word != "" && !strings.HasSuffix(strings.ToLower(text), strings.ToLower(h.word)) {
		text += " " + h.word
	}
	return text
}

// column is the head of the j-th cell of a line; its column is -1 if none takes it.
func (p *pasting[R]) column(j int) head {
	if p.heads == nil {
		return head{column: p.start.Col + j}
	}
	if j >= len(p.heads) {
		return head{column: -1}
	}
	return p.heads[j]
}

// naming is the cell of a line that names its row, -1 if none does.
func (p *pasting[R]) naming() int {
	for j, h := range p.heads {
		if h.column == p.grid.options.Naming {
			return j
		}
	}
	return -1
}

// pastedLines parts a copied table into lines of cells. A cell with a line
// break or a tab in it stands in quotes, with its own quotes doubled.
func pastedLines(text string) [][]string {
	text = strings.TrimRight(strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text), "\n")
	if text == "" {
		return nil
	}
	lines := [][]string{nil}
	for {
		cell, rest := cutCell(text)
		last := len(lines) - 1
		lines[last] = append(lines[last], cell)
		if rest == "" {
			return lines
		}
		if rest[0] == '\n' {
			lines = append(lines, nil)
		}
		text = rest[1:]
	}
}

// cutCell takes the first cell of a text; rest begins with the tab or line
// break behind it.
func cutCell(text string) (cell, rest string) {
	if strings.HasPrefix(text, `"`) {
		for at := 1; at < len(text); at++ {
			if text[at] != '"' {
				continue
			}
			if at+1 < len(text) && text[at+1] == '"' {
				at++
				continue
			}
			if at+1 == len(text) || text[at+1] == '\t' || text[at+1] == '\n' {
				quoted := strings.ReplaceAll(text[1:at], `""`, `"`)
				return unguarded(strings.Join(strings.Fields(quoted), " ")), text[at+1:]
			}
			break
		}
	}
	end := strings.IndexAny(text, "\t\n")
	if end < 0 {
		end = len(text)
	}
	return unguarded(strings.TrimSpace(text[:end])), text[end:]
}

// unguarded takes off the mark that plainCell puts before what a spreadsheet
// would run.
func unguarded(cell string) string {
	if plain := strings.TrimPrefix(cell, "'"); plain != "" && plainCell(plain) == cell {
		return plain
	}
	return cell
}
