package trip_test

import (
	"encoding/json"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// Two crews that differ in body and health alone give the same copy.
func TestNothingPersonalIsInTheCopy(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		one := triptest.Trip().Draw(rt, "trip")
		if problems := trip.Validate(one.WithoutPersonalData()); len(problems) > 0 {
			rt.Fatalf("the copy is no trip: %v", problems[0])
		}
		for i := range one.Crew { // the leader's own words are not the subject here
			one.Crew[i].Name = fmt.Sprintf("Nobody%dx", i)
		}
		other := one.Clone()
		for i := range other.Crew {
			member := &other.Crew[i]
			scramble(reflect.ValueOf(member).Elem())
			kept := one.Crew[i]
			member.ID, member.Group, member.OwnKit, member.PackRoom = kept.ID, kept.Group, kept.OwnKit, kept.PackRoom
			member.FirstDay, member.LastDay, member.Standby = kept.FirstDay, kept.LastDay, kept.Standby
		}
		other.Posting.ReturnAddress = "private"
		for i := range other.Points {
			sending := &other.Points[i].Sending
			sending.Addressee, sending.CareOf, sending.Helper = "private", "private", "private"
		}
		for i := range other.Menu {
			for j := range other.Menu[i].Dishes {
				other.Menu[i].Dishes[j].Accepted = []trip.Acceptance{{Member: 1, Food: 1, Reason: "private"}}
			}
		}
		if !trip.Equal(one.WithoutPersonalData(), other.WithoutPersonalData()) {
			rt.Fatal("the copy tells of body or health")
		}
	})
}

// scramble gives every field another value.
func scramble(value reflect.Value) {
	for i := range value.NumField() {
		field := value.Field(i)
		switch field.Kind() {
		case reflect.String:
			field.SetString("private")
		case reflect.Int, reflect.Int64:
			field.SetInt(77)
		case reflect.Float64:
			field.SetFloat(7.7)
		case reflect.Bool:
			field.SetBool(!field.Bool())
		case reflect.Slice:
			field.Set(reflect.MakeSlice(field.Type(), 1, 1))
		}
	}
}

func TestTheCopySaysWhatItLacks(t *testing.T) {
	known := triptest.Large(3, 2, 1)
	known.Notes = "Meet at nine. Unmistakable's knee is bad; the Unmistakables' hut is open."
	known.Crew[0].Name, known.Crew[0].Medicine, known.Crew[0].BodyMass = "Unmistakable", "in the lid pocket", 91_234*units.Gram
	bare := known.WithoutPersonalData()
	data, err := json.Marshal(bare)
	if err != nil {
		t.Fatal(err)
	}
	for _, private := range []string{"Unmistakable's", "lid pocket", "91234"} {
		if strings.Contains(string(data), private) {
			t.Errorf("the copy holds %q", private)
		}
	}
	if !strings.Contains(bare.Notes, "Feed nobody by it") || !strings.Contains(bare.Notes, "Meet at nine. Member 1's knee is bad; the Unmistakables' hut is open.") {
		t.Errorf("notes: %q", bare.Notes)
	}
	if known.Crew[0].Name != "Unmistakable" {
		t.Error("the trip itself was changed")
	}
}
