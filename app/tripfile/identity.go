package tripfile

import (
	"crypto/rand"
	"encoding/hex"

	"sumpter/domain/trip"
)

// Identify gives a trip that has no identity one that no other trip has, as it
// gets its file. Calendars tell trips apart by it, so a trip can be renamed.
func Identify(t *trip.Trip) {
	if t.Identity != "" {
		return
	}
	var random [16]byte
	_, _ = rand.Read(random[:]) // never fails: crypto/rand
	t.Identity = hex.EncodeToString(random[:])
}
