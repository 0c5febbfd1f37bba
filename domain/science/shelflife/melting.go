package shelflife

// Temperatures in degrees Celsius from which food softens: cocoa butter (form
// V melts at 33.8), butter spreading out and at its melting, coconut fat,
// clarified butter, lard, and hard cheese that begins to sweat oil. A food
// "melts" on a day whose highest temperature in the pack reaches its point.
//
// Sources: Wille RL, Lutton ES 1966 for cocoa butter; the rest from memory;
// hard cheese common practice, no source.
const (
	ChocolateSoftensC       = 28.0
	CocoaButterMeltsC       = 33.8
	ButterSpreadsC          = 25.0
	ButterMeltsC            = 32.0
	CoconutFatMeltsC        = 24.0
	ClarifiedButterSoftensC = 30.0
	LardMeltsC              = 32.0
	HardCheeseSweatsC       = 25.0
)
