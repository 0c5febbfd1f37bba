package trip

import (
	"sumpter/domain/optional"
	"sumpter/domain/units"
)

// PointKind is what kind of place food waits at.
type PointKind string

// Kinds of resupply point.
const (
	PostOffice PointKind = "post office"
	ShopOnWay  PointKind = "shop"
	Hut        PointKind = "hut"
	Cache      PointKind = "cache"
	Meeting    PointKind = "meeting" // somebody meets the group
)

// ResupplyPoint is a place at the end of a day where a box can wait or food
// can be bought. Food from it is eaten from breakfast of the next day on.
type ResupplyPoint struct {
	ID       PointID   `json:"id"`
	Name     string    `json:"name"`
	Kind     PointKind `json:"kind"`
	AfterDay int       `json:"after_day"` // reached at the end of this day
	Use      bool      `json:"use"`       // the leader's choice
	Address  string    `json:"address,omitempty"`
	Opening
	TransitDays  int                           `json:"transit_days"`                    // slowest usual
	FastestDays  int                           `json:"fastest_transit_days"`            // fastest possible
	BufferDays   int                           `json:"buffer_days"`                     // kept in hand before pick-up
	HoldDays     optional.Value[int]           `json:"hold_days,omitzero"`              // how long a box is kept; unknown is a finding
	HoldMargin   int                           `json:"hold_margin_days"`                // days of the hold that are not counted on
	MaxParcel    optional.Value[units.Mass]    `json:"max_parcel_g,omitzero"`           // heaviest parcel, its carton included; unknown: no limit
	MaxGirth     optional.Value[units.Metres]  `json:"max_length_and_girth_m,omitzero"` // of a parcel: its longest side and twice the two others; unknown: no limit
	FeePerParcel units.Money                   `json:"fee_per_parcel"`
	VisitFee     units.Money                   `json:"visit_fee"`            // once, however many parcels wait
	Detour       units.Metres                  `json:"detour_m"`             // extra way, there and back
	DetourHours  units.Hours                   `json:"detour_hours"`         // extra time; 0: that of the extra way at 5 km/h
	StoreLow     optional.Value[units.Celsius] `json:"store_low_c,omitzero"` // where the box waits
	StoreHigh    optional.Value[units.Celsius] `json:"store_high_c,omitzero"`
	TakesFuel    bool                          `json:"takes_fuel"`  // fuel may be sent there
	SellsFuel    bool                          `json:"sells_fuel"`  // fuel can be bought there
	TakesWaste   bool                          `json:"takes_waste"` // rubbish can be left there
	Sending      Sending                       `json:"sending,omitzero"`
	Notes        string                        `json:"notes,omitempty"`
}

// Sending is how the box of a point gets there: what is written on it, who
// sends it and when, who fetches it.
type Sending struct {
	Addressee string     `json:"addressee,omitempty"` // full name of who fetches it, as on their identity card
	CareOf    string     `json:"care_of,omitempty"`   // in whose care it waits: a warden, a host
	Collector MemberID   `json:"collector,omitempty"` // the member who fetches it; 0: not said
	Sender    MemberID   `json:"sender,omitempty"`    // the member who sends or brings it; 0: somebody else
	Helper    string     `json:"helper,omitempty"`    // who sends or brings it, if no member does
	SendOn    units.Date `json:"send_on,omitzero"`    // the day chosen for it to leave home; unset: the latest that brings it in time
}

// Posting is how boxes are sent from home.
type Posting struct {
	ReturnAddress string `json:"return_address,omitempty"` // name and address a box goes back to
	Opening
}

// UsualPosting sends boxes on weekdays and Saturdays (common practice, no
// source: ask the office).
func UsualPosting() Posting { return Posting{Opening: Opening{OpenDays: weekdaysOfPost()}} }
