package water

// CookingLoss is the share that boils off or is spilt: common practice, no
// source.
const CookingLoss = 0.10

// CookingLitres returns litres for dry food at millilitres per gram, with a
// share added for what is lost.
func CookingLitres(dryGrams, mLPerGram, lossShare float64) float64 {
	return dryGrams * mLPerGram * (1 + lossShare) / 1000
}
