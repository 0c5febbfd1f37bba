package checkvalues

import (
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"
)

const head = "topic,case,inputs,expected,unit,tolerance,source,confidence\n"

// recorder stands in for a *testing.T that is expected to fail.
type recorder struct{ messages []string }

func (r *recorder) Helper()                           {}
func (r *recorder) Errorf(format string, args ...any) { r.Fatalf(format, args...) }
func (r *recorder) Fatalf(format string, args ...any) {
	r.messages = append(r.messages, fmt.Sprintf(format, args...))
}

func TestReadTheSharedFile(t *testing.T) {
	file, err := os.Open("../../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := Read(file)
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 632 {
		t.Errorf("have %d rows, want 632: rows are added on purpose only", len(rows))
	}
	topics := Topics(rows)
	if len(topics) != 25 || !slices.IsSorted(topics) {
		t.Errorf("topics: %d %v", len(topics), topics)
	}
	for _, row := range rows {
		if row.Source == "" || row.Expected == "" || row.Tolerance == "" {
			t.Errorf("line %d: a figure without source, value or tolerance", row.Line)
		}
	}
}

func TestReadSaysWhatIsWrong(t *testing.T) {
	for name, c := range map[string]struct{ file, want string }{
		"empty":        {"", "header"},
		"other header": {"a,b,c,d,e,f,g,h\n", "header"},
		"short row":    {head + "a,b\n", "line 2"},
	} {
		if _, err := Read(strings.NewReader(c.file)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: have error %v, want one that names %q", name, err, c.want)
		}
	}
}

func TestInputs(t *testing.T) {
	in := Inputs("sex=m; mass=70 kg; Q10=2.5; wide_mass=9; Tmin=-4; W=55/70/90; table B=no")
	for name, want := range map[string]float64{"mass": 70, "Q10": 2.5, "Tmin": -4, "W": 55} {
		if have := in.Value(name); have != want {
			t.Errorf("%s: have %v, want %v", name, have, want)
		}
	}
	if have := in.Word("sex"); have != "m" {
		t.Errorf("sex: have %q", have)
	}
	if !math.IsNaN(in.Value("load")) || in.Word("load") != "" {
		t.Error("a name that is not there must give NaN and no text")
	}
	have := Inputs("1 kg, -10 to 95 C; simmer (Q10=2); .25").Numbers()
	if want := []float64{1, -10, 95, 2, 0.25}; !slices.Equal(have, want) {
		t.Errorf("have %v, want %v", have, want)
	}
	if !math.IsNaN(Inputs("none").Number(0)) || !math.IsNaN(Inputs("1").Number(-1)) {
		t.Error("a number that is not there must be NaN")
	}
}

func TestCheckFindsEveryKindOfFault(t *testing.T) {
	file := head +
		"a,one,1,1,m,0.1,book A,read\n" +
		"a,two,1,2,m,5 %,book B,read\n" +
		"a,bad,1,9,m,0.1,book C,read\n" +
		"b,other,1,1,m,exact,book D,read\n"
	number := func(value any) func(Row) any { return func(Row) any { return value } }
	good := Answers{"one": number(1.05), "two": number(2.09), "bad": number(Not(8))}
	for name, c := range map[string]struct {
		topic   string
		change  Answers
		faults  int
		message string
	}{
		"all well":             {"a", nil, 0, ""},
		"off by too much":      {"a", Answers{"one": number(1.2)}, 1, "book A"},
		"off by percent":       {"a", Answers{"two": number(2.2)}, 1, "book B"},
		"a forbidden figure":   {"a", Answers{"bad": number(Not(9))}, 1, "must not"},
		"not a number":         {"a", Answers{"one": number(math.NaN())}, 1, "NaN"},
		"text for a number":    {"a", Answers{"one": number("1.0")}, 1, "want"},
		"a type unknown to us": {"a", Answers{"one": number(1)}, 1, "int"},
		"an answer unasked":    {"a", Answers{"three": number(1.0)}, 1, "matches no row"},
		"no such topic":        {"c", nil, 4, "no rows"},
	} {
		answers := Answers{}
		for key, answer := range good {
			answers[key] = answer
		}
		for key, answer := range c.change {
			answers[key] = answer
		}
		var r recorder
		Check(&r, strings.NewReader(file), c.topic, answers)
		if len(r.messages) != c.faults || c.faults > 0 && !strings.Contains(r.messages[0], c.message) {
			t.Errorf("%s: have %q", name, r.messages)
		}
	}
	var r recorder
	Check(&r, strings.NewReader(file), "a", Answers{"one": number(1.0)})
	if len(r.messages) != 2 {
		t.Errorf("two rows without an answer: have %q", r.messages)
	}
}

func FuzzRead(f *testing.F) {
	f.Add(head + "a,one,mass=70 kg; 3 h,1,m,0.1,book,read\n")
	f.Add(head + "a,\"one, two\",x=1e5;Q10=2,\"1\"\"\",m,5 %,book,read\n")
	f.Fuzz(func(t *testing.T, text string) {
		rows, err := Read(strings.NewReader(text))
		if err != nil {
			return
		}
		for _, row := range rows {
			if len(row.Inputs.Numbers()) > len(row.Inputs) {
				t.Errorf("more numbers than letters in %q", row.Inputs)
			}
			row.Inputs.Value("mass")
			row.Inputs.Word("mass")
			_ = row.compare(1.0)
		}
	})
}
