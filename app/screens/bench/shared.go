package bench

import (
	"strconv"

	"sumpter/domain/findings"
)

// IDText writes an ID as the key of a table row.
func IDText(id int64) string { return strconv.FormatInt(id, 10) }

// IDOf reads what IDText wrote, 0 if it is nothing of the kind.
func IDOf(text string) int64 {
	id, err := strconv.ParseInt(text, 10, 64)
	if err != nil {
		return 0
	}
	return id
}

// CountFindings counts what must be fixed in some stages of the plan.
func CountFindings(b *Bench, stages ...findings.Stage) int {
	p := b.Document.Plan()
	if p == nil {
		return 0
	}
	n := 0
	for _, finding := range p.Findings {
		if finding.Severity == findings.Note {
			continue
		}
		for _, stage := range stages {
			if finding.Stage == stage {
				n++
			}
		}
	}
	return n
}
