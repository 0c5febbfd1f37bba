package tripfile

import (
	"testing"

	"sumpter/domain/trip"
)

func TestIdentifyKeepsAnIdentity(t *testing.T) {
	a, b := &trip.Trip{}, &trip.Trip{}
	Identify(a)
	Identify(b)
	first := a.Identity
	if Identify(a); first == "" || a.Identity != first || first == b.Identity {
		t.Errorf("%q, then %q; another %q", first, a.Identity, b.Identity)
	}
}
