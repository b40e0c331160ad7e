// Package real reckons with roots, sines and quotients so finely that what
// comes out in whole nanometres is the same on every machine.
//
// A Real is a math/big.Float of 256 bits that is never changed once made.
// Its sums, products, quotients and square roots round correctly, sines,
// cosines and arc tangents come from their power series, and no float64
// arithmetic (which one machine fuses and another does not) is in between. An
// outline of up to 100 m is off by less than 2^-150 nm before it is rounded.
//
// It does not promise exactness: two Reals that are equal on paper may differ
// in the last bits. Nearest and Outward therefore take what lies within
// 2^-64 nm of a whole or half nanometre as lying on it.
package real
