package importer

import (
	"fmt"

	"sumpter/domain/trip"
	"sumpter/exporter/tripbook"
	"sumpter/exporter/tripjson"
)

// Problem is one fault in a file, or one remark on it. Sheet and Cell say
// where in a workbook, Path where in JSON.
type Problem struct {
	Sheet   string `json:"sheet,omitempty"`
	Cell    string `json:"cell,omitempty"`
	Path    string `json:"path,omitempty"`
	Found   string `json:"found,omitempty"` // what stands there, cut where long
	Wrong   string `json:"wrong"`
	Allowed string `json:"allowed,omitempty"`
	Note    bool   `json:"note,omitempty"` // the trip was read all the same
}

// String is the one line a reader sees.
func (p Problem) String() string {
	if p.Sheet != "" || p.Cell != "" { // a copied table is a sheet without a name
		return tripbook.Problem{Sheet: p.Sheet, Cell: p.Cell, Found: p.Found, Wrong: p.Wrong, Allowed: p.Allowed}.String()
	}
	return tripjson.Problem{Path: p.Path, Found: p.Found, Wrong: p.Wrong, Allowed: p.Allowed}.String()
}

func ofWorkbook(p tripbook.Problem) Problem {
	return Problem{Sheet: p.Sheet, Cell: p.Cell, Found: p.Found, Wrong: p.Wrong, Allowed: p.Allowed, Note: p.Note}
}

func ofJSON(p tripjson.Problem) Problem {
	return Problem{Path: p.Path, Found: p.Found, Wrong: p.Wrong, Allowed: p.Allowed}
}

// ofTrip is a fault that only shows when the trip is seen as a whole.
func ofTrip(p trip.Problem) Problem {
	path := p.Where.Path()
	if p.Where.Name != "" {
		path = fmt.Sprintf("%s (%s)", path, p.Where.Name)
	}
	return Problem{Path: path, Wrong: p.What.String(), Allowed: p.Allowed.String()}
}
