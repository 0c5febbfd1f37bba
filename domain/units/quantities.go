package units

// System is the set of units a reader thinks in. It changes what is shown,
// never what is planned.
type System string

// The two systems of units a trip can be shown in.
const (
	Metric System = "metric"
	US     System = "us"
)

// Known tells whether the system is one of the two.
func (s System) Known() bool { return s == Metric || s == US }

// Kcal is food energy in thermochemical kilocalories (4.184 kJ exactly).
type Kcal float64

// KilojoulesPerKcal is exact by definition.
const KilojoulesPerKcal = 4.184

// Celsius is a temperature in degrees Celsius.
type Celsius float64

// Fahrenheit gives the temperature in degrees Fahrenheit.
func (c Celsius) Fahrenheit() float64 { return float64(c)*1.8 + 32 }

// FromFahrenheit converts a temperature for the inside of the program.
func FromFahrenheit(fahrenheit float64) Celsius { return Celsius((fahrenheit - 32) / 1.8) }

// String writes whole degrees Celsius.
func (c Celsius) String() string { return c.Format(Metric) }

// Format writes whole degrees in the reader's system.
func (c Celsius) Format(system System) string {
	if system == US {
		return trimFloat(c.Fahrenheit(), 0) + " °F"
	}
	return trimFloat(float64(c), 0) + " °C"
}

// Hours is a duration in hours.
type Hours float64

// Minutes is a duration in minutes.
type Minutes float64

// Metres is a length or a height above the sea in metres.
type Metres float64

// Exact factors of NIST Handbook 44, Appendix C.
const (
	metresPerMile = 1609.344
	metresPerFoot = 0.3048
)

// Kilometres gives the length in kilometres.
func (m Metres) Kilometres() float64 { return float64(m) / 1000 }

// Miles gives the length in statute miles.
func (m Metres) Miles() float64 { return float64(m) / metresPerMile }

// Feet gives the length in feet.
func (m Metres) Feet() float64 { return float64(m) / metresPerFoot }

// FromMiles converts statute miles.
func FromMiles(miles float64) Metres { return Metres(miles * metresPerMile) }

// FromFeet converts feet.
func FromFeet(feet float64) Metres { return Metres(feet * metresPerFoot) }

// FormatDistance writes kilometres or miles with one decimal.
func (m Metres) FormatDistance(system System) string {
	if system == US {
		return trimFloat(m.Miles(), 1) + " mi"
	}
	return trimFloat(m.Kilometres(), 1) + " km"
}

// FormatHeight writes whole metres or feet.
func (m Metres) FormatHeight(system System) string {
	if system == US {
		return trimFloat(m.Feet(), 0) + " ft"
	}
	return trimFloat(float64(m), 0) + " m"
}
