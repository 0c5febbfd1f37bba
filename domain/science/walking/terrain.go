package walking

// Terrain factors: what the movement part of the cost is multiplied with.
//
// Source: Soule RG, Goldman RF 1972; table repeated in NATO RTO-TR-HFM-080.
const (
	Blacktop   = 1.0
	DirtRoad   = 1.1
	LightBrush = 1.2
	HeavyBrush = 1.5
	SwampyBog  = 1.8
	LooseSand  = 2.1
	SoftSnow15 = 2.5 // footprint 15 cm deep
)

// Terrain factors of paths: common practice, no source.
const (
	MaintainedTrail = 1.1
	RoughTrail      = 1.2
	Scree           = 1.65 // scree or talus, the middle of 1.5 to 1.8
)

// SnowTerrain returns the terrain factor of snow of a depth and a density
// (fresh 0.1, settled 0.3, firn 0.5 g/cm3). Denser than 1.186 g/cm3, which no
// snow is, and depths below 0 count as no depth.
//
// Source: Richmond PW et al., US Army ERDC, abstract.
func SnowTerrain(depthCm, densityGPerCm3 float64) float64 {
	sink := max(0, depthCm*(1-densityGPerCm3/1.186))
	return 0.0005*sink*sink*sink + 0.0001*sink*sink + 0.1072*sink + 1.2604
}
