package optional

import (
	"encoding/json"
	"testing"

	"pgregory.net/rapid"
)

func TestZeroValueIsUnknown(t *testing.T) {
	var nothing Value[float64]
	if nothing.Known() || nothing != Unknown[float64]() || !nothing.IsZero() {
		t.Error("the zero value is known")
	}
	if value, known := nothing.Get(); known || value != 0 {
		t.Errorf("nothing gave %v, %v", value, known)
	}
	if nothing.Or(7) != 7 {
		t.Errorf("without a value the fallback is %v", nothing.Or(7))
	}
}

func TestKnownZeroIsNotUnknown(t *testing.T) {
	zero := Of(0.0)
	if !zero.Known() || zero.IsZero() || zero == Unknown[float64]() || zero.Or(7) != 0 {
		t.Errorf("a known zero is taken for unknown: %+v", zero)
	}
}

type holder struct {
	Fibre Value[float64] `json:"fibre,omitzero"`
	Plain Value[int]     `json:"plain"`
}

func TestJSON(t *testing.T) {
	for _, c := range []struct {
		value holder
		text  string
	}{
		{holder{}, `{"plain":null}`},
		{holder{Fibre: Of(0.0), Plain: Of(0)}, `{"fibre":0,"plain":0}`},
		{holder{Fibre: Of(2.5), Plain: Of(-3)}, `{"fibre":2.5,"plain":-3}`},
	} {
		text, err := json.Marshal(c.value)
		if err != nil || string(text) != c.text {
			t.Errorf("%+v is written %s, %v; want %s", c.value, text, err, c.text)
		}
		var back holder
		if err := json.Unmarshal([]byte(c.text), &back); err != nil || back != c.value {
			t.Errorf("%s is read as %+v, %v", c.text, back, err)
		}
	}
}

func TestNullForgets(t *testing.T) {
	value := Of(3)
	if err := json.Unmarshal([]byte(" null "), &value); err != nil || value.Known() {
		t.Errorf("null left %+v, %v", value, err)
	}
}

func TestWhatDoesNotFitIsRefused(t *testing.T) {
	for _, text := range []string{`"5"`, `true`, `[1]`, `{"a":1}`, `5.5`} {
		var value Value[int]
		if err := json.Unmarshal([]byte(text), &value); err == nil || value.Known() {
			t.Errorf("%s was read as %+v", text, value)
		}
	}
}

func TestValueSurvivesJSON(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		value := Unknown[float64]()
		if rapid.Bool().Draw(t, "known") {
			value = Of(rapid.Float64().Draw(t, "value"))
		}
		text, err := json.Marshal(value)
		if err != nil {
			t.Fatal(err)
		}
		var back Value[float64]
		if err := json.Unmarshal(text, &back); err != nil || back != value {
			t.Fatalf("%+v became %s became %+v, %v", value, text, back, err)
		}
	})
}
