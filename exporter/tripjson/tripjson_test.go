package tripjson

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"reflect"
	"runtime"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func written(t testing.TB, made *trip.Trip) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, made); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestReadGivesBackWhatWasWritten(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip")
		var out bytes.Buffer
		if err := Write(&out, made); err != nil {
			rt.Fatal(err)
		}
		read, problems, err := Read(bytes.NewReader(out.Bytes()))
		if err != nil || len(problems) > 0 {
			rt.Fatal(problems, err)
		}
		if !reflect.DeepEqual(made, read) {
			rt.Fatalf("wrote %+v\nread %+v", made, read)
		}
		var again bytes.Buffer
		if err := Write(&again, read); err != nil || !bytes.Equal(out.Bytes(), again.Bytes()) {
			rt.Fatal("the second writing differs", err)
		}
	})
}

func TestWriteKeepsTextAndWritesNoNull(t *testing.T) {
	made := &trip.Trip{Title: "<Ridge> & \"col\"\u2028\t=1+1", Notes: "山\nß"}
	text := written(t, made)
	if bytes.Contains(text, []byte("null")) || !bytes.Contains(text, []byte("<Ridge> &")) {
		t.Errorf("written: %s", text)
	}
	if _, problems, err := Read(bytes.NewReader(text)); err == nil && len(problems) == 0 {
		t.Fatal("a trip without units was read: every closed choice must be given")
	}
	made.Units, made.Settings.Walking = units.Metric, trip.Pandolf
	if read, problems, err := Read(bytes.NewReader(written(t, made))); err != nil || problems != nil || !reflect.DeepEqual(made, read) {
		t.Errorf("read %+v %v %v", read, problems, err)
	}
}

func TestWriteNamesWhatIsNoNumber(t *testing.T) {
	for place, spoil := range map[string]func(*trip.Trip){
		"crew[0].appetite":               func(t *trip.Trip) { t.Crew[0].Appetite = math.NaN() },
		"days[1].moving_hours":           func(t *trip.Trip) { t.Days[1].MovingHours = optional.Of(units.Hours(math.Inf(1))) },
		"settings.meal_shares.breakfast": func(t *trip.Trip) { t.Settings.MealShares.Breakfast = math.Inf(-1) },
	} {
		made := triptest.Large(2, 2, 1)
		spoil(made)
		var out bytes.Buffer
		if err := Write(&out, made); err == nil || !strings.Contains(err.Error(), place) || out.Len() > 0 {
			t.Errorf("%s: error %v, %d bytes", place, err, out.Len())
		}
	}
}

// Each change to a good document makes exactly the one problem beside it.
func TestEachFaultIsNamedOnce(t *testing.T) {
	good := string(written(t, triptest.Large(2, 2, 1)))
	cases := []struct{ name, old, new, path, wrong string }{
		{"misspelt name", `"strength":`, `"vigour":`, "crew[0].vigour", "is not a known name"},
		{"name in capitals", `"currency":`, `"Currency":`, "Currency", "is not a known name"},
		{"text for a mass", `"net_g": `, `"net_g": "x", "was": `, "foods[0].packages[0].net_g", "is not allowed here"},
		{"finer than a milligram", `"hot_drink_ml": 300`, `"hot_drink_ml": 300.0001`, "settings.hot_drink_ml", "is not allowed here"},
		{"unknown choice", `"sex": "`, `"sex": "un`, "crew[0].sex", "is not known"},
		{"null", `"day_low": 0.95`, `"day_low": null`, "settings.day_low", "is no value"},
		{"no such day", `"packing_night": "`, `"packing_night": "3`, "settings.packing_night", "is not allowed here"},
		{"text for a list", `"pins": []`, `"pins": "none"`, "pins", "is not allowed here"},
		{"list for an object", `"meal_shares": {`, `"meal_shares": [{"a": [1]}], "old": {`, "settings.meal_shares", "is not allowed here"},
		{"null list", `"pins": []`, `"pins": null`, "pins", "is not allowed here"},
		{"twice", `"pins": []`, `"pins": [], "pins": []`, "pins", "stands there twice"},
		{"allergen twice", `"celery": "free"`, `"celery": "contains", "celery": "free"`, "foods[0].allergens.celery", "stands there twice"},
		{"fraction for an age", `"age_years": `, `"age_years": 0.`, "crew[0].age_years", "is not allowed here"},
		{"no version", `"format_version": 1`, `"format_version": 0`, "format_version", "is not 1"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			bad := strings.Replace(good, c.old, c.new, 1)
			if bad == good {
				t.Fatalf("%q is not in the document", c.old)
			}
			read, problems, err := Read(strings.NewReader(bad))
			if err != nil || read != nil {
				t.Fatalf("trip %v, error %v", read != nil, err)
			}
			var there []Problem
			for _, p := range problems {
				// A renamed field is also missing, and so is what a test put aside.
				if p.Wrong != "is missing" && !strings.HasSuffix(p.Path, ".was") && !strings.HasSuffix(p.Path, ".old") {
					there = append(there, p)
				}
			}
			if len(there) != 1 || there[0].Path != c.path || there[0].Wrong != c.wrong {
				t.Errorf("got %v", problems)
			}
		})
	}
}

func TestAMissingFieldIsNoSilentZero(t *testing.T) {
	made := triptest.Large(2, 2, 1)
	made.Crew[1].Allergies = []trip.Allergy{{Allergen: trip.Peanuts, Severe: true}}
	bad := strings.Replace(string(written(t, made)), "\"peanuts\",\n          \"severe\": true", "\"peanuts\"", 1)
	read, problems, err := Read(strings.NewReader(bad))
	if read != nil || err != nil || len(problems) != 1 || problems[0].String() != "crew[1].allergies[0].severe: is missing; allowed: true or false" {
		t.Errorf("%v %v %v", read, problems, err)
	}
}

func TestReadTellsWhatIsNoTripAtAll(t *testing.T) {
	good := string(written(t, triptest.Large(2, 2, 1)))
	cases := []struct{ name, text, says string }{
		{"nothing", "", "ends in the middle"},
		{"half", good[:len(good)/2], "ends in the middle"},
		{"two trips", good + good, "something follows"},
		{"rubbish after", good + "x", "not JSON"},
		{"not JSON", "title: Ridge", "not JSON"},
		{"NaN", strings.Replace(good, `"day_low": 0.95`, `"day_low": NaN`, 1), "not JSON"},
		{"Latin-1", strings.Replace(good, `"title": "`, "\"title\": \"\xfc", 1), "not UTF-8"},
		{"later version", strings.Replace(good, `"format_version": 1`, `"format_version": 2, "moon": true`, 1), "newer program"},
	}
	for _, c := range cases {
		read, problems, err := Read(strings.NewReader(c.text))
		if read != nil || err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: trip %v, problems %v, error %v", c.name, read != nil, problems, err)
		}
	}
}

func TestAByteOrderMarkIsNoFault(t *testing.T) {
	text := append([]byte("\xef\xbb\xbf"), written(t, triptest.Large(2, 2, 1))...)
	if _, problems, err := Read(bytes.NewReader(text)); err != nil || len(problems) > 0 {
		t.Error(problems, err)
	}
}

func TestAFailingReaderIsNoShortTrip(t *testing.T) {
	text := written(t, triptest.Large(2, 2, 1))
	broken := errors.New("the disk is gone")
	_, _, err := Read(io.MultiReader(bytes.NewReader(text[:200]), failing{broken}))
	if !errors.Is(err, broken) {
		t.Errorf("got %v", err)
	}
}

type failing struct{ err error }

func (f failing) Read([]byte) (int, error) { return 0, f.err }

// endless gives the same bytes for ever after a start.
func endless(start, again string) io.Reader {
	return io.MultiReader(strings.NewReader(start), &repeated{text: again})
}

type repeated struct {
	text string
	at   int
}

func (r *repeated) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = r.text[r.at%len(r.text)]
		r.at++
	}
	return len(p), nil
}

// A hostile file has no end here: what comes back at all came back early.
func TestHostileFilesAreRefusedWithLittleMemory(t *testing.T) {
	cases := map[string]io.Reader{
		"blanks":           endless("{", " "),
		"one long text":    endless(`{"title": "`, "a"),
		"one long number":  endless(`{"format_version": 1`, "0"),
		"empty members":    endless(`{"crew": [{}`, ",{}"),
		"empty foods":      endless(`{"foods": [{"packages":[{}`, ",{}"),
		"many allergens":   numbered(`{"foods": [{"allergens": {`),
		"deep lists":       endless(`{"moon": `, "["),
		"deep where flat":  endless(`{"crew": {"a": `, "["),
		"deep in skipped":  endless(`{"settings": [[[`, "["),
		"many wrong names": numbered(`{`),
	}
	for name, hostile := range cases {
		t.Run(name, func(t *testing.T) {
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			read, problems, err := Read(hostile)
			runtime.ReadMemStats(&after)
			if read != nil || err == nil && len(problems) < maxProblems {
				t.Errorf("trip %v, %d problems, error %v", read != nil, len(problems), err)
			}
			if megabytes := (after.TotalAlloc - before.TotalAlloc) >> 20; megabytes > 300 {
				t.Errorf("allocated %d MB in all", megabytes)
			}
		})
	}
}

// numbered goes on with ever new names.
func numbered(start string) io.Reader {
	reader, writer := io.Pipe()
	go func() {
		_, err := io.WriteString(writer, start)
		for i := 0; err == nil && i < 1<<22; i++ {
			_, err = fmt.Fprintf(writer, `"a%d": "free",`, i)
		}
		writer.CloseWithError(io.ErrUnexpectedEOF)
	}()
	return reader
}

// The seeds are small: before the fuzzer goes on it shortens whatever shows it
// something new, and takes a minute over 20 kB.
func FuzzRead(f *testing.F) {
	f.Add(written(f, seed()))
	f.Add([]byte(`{"format_version": 1, "crew": [{}], "foods": [{"allergens": {"a": "free"}}]}`))
	f.Add([]byte(`{"crew": {"x": [1, {"y": null}]}, "title": "\ud800"}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		read, problems, err := Read(bytes.NewReader(data))
		if read == nil {
			if err == nil && len(problems) == 0 {
				t.Fatal("no trip and no reason")
			}
			return
		}
		again, problems, err := Read(bytes.NewReader(written(t, read)))
		if err != nil || len(problems) > 0 || !reflect.DeepEqual(read, again) {
			t.Fatalf("does not come back: %v %v", problems, err)
		}
	})
}

// seed is a trip with one of most things.
func seed() *trip.Trip {
	return &trip.Trip{
		Title: "Seed", Units: units.Metric, Currency: "EUR", Start: 20000,
		Days:    []trip.Day{{Name: "a", Distance: 12000}},
		Groups:  []trip.CookGroup{{ID: 1, Name: "g"}},
		Crew:    []trip.Member{{ID: 1, Name: "m", Group: 1, Allergies: []trip.Allergy{{Allergen: trip.Peanuts, Severe: true}}}},
		Foods:   []trip.Food{{ID: 1, Name: "f"}},
		Recipes: []trip.Recipe{{ID: 1, Name: "r", Method: []string{"boil"}}},
	}
}

func BenchmarkWrite(b *testing.B) {
	for _, size := range [][2]int{{11, 9}, {60, 21}} {
		large := triptest.Large(size[0], size[1], 1)
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := Write(io.Discard, large); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkRead(b *testing.B) {
	for _, size := range [][2]int{{11, 9}, {60, 21}} {
		text := written(b, triptest.Large(size[0], size[1], 1))
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			b.ReportAllocs()
			b.SetBytes(int64(len(text)))
			for b.Loop() {
				if _, problems, err := Read(bytes.NewReader(text)); err != nil || problems != nil {
					b.Fatal(problems, err)
				}
			}
		})
	}
}
