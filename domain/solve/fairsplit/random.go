package fairsplit

import "math/bits"

// random is a small generator of pseudo-random numbers with the same sequence on
// every machine (splitmix64, Steele, Lea and Flood 2014).
type random struct{ state uint64 }

func (r *random) next() uint64 {
	r.state += 0x9e3779b97f4a7c15
	z := r.state
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// below gives a number from 0 to n-1.
func (r *random) below(n int) int {
	high, _ := bits.Mul64(r.next(), uint64(n))
	return int(high)
}
