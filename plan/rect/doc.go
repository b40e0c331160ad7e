// Package rect packs rectangles into equal bins, with or without a quarter
// turn: as few bins as it can (Pack), the most value in one bin (Fill), a strip
// (Strip), the most of a single size (Most).
//
// It promises that what it returns is a packing: every rectangle inside its
// bin, no two sharing area, no size more often than asked, exact on whole
// lengths, and the same on every machine. It does not promise the fewest bins;
// package bound says how few there can be. A gap between pieces is the
// caller's matter: sizes and bin inflated by the gap.
//
// Ideas: patterns priced by the covering relaxation are Gilmore and Gomory's
// cutting-stock view (1961, 1963); searching skylines by beam, guided by value
// for area, is common to the open packing solvers, as is filling several bins
// in one such search (here, towers); emptying bins by packing a few anew with
// what is left over follows Buljubasic and Vasquez (2016), its acceptance Dueck
// and Scheuer (1990). One size alone is laid by the L-approach of Lins, Lins
// and Morabito (2003) and Birgin, Lobato and Morabito (2010), stopped by area
// and by Barnes' diagonal colouring (1979).
package rect
