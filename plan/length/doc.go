// Package length holds lengths as whole nanometres and areas as 128-bit square
// nanometres, and reads and prints them the way a quilter writes them.
//
// It promises that every 1/64 inch (396 875 nm) and every thousandth of a
// millimetre is exact, that what is finer rounds once, on reading, to the
// nearest nanometre (a half away from zero), and that what Format prints reads
// back to the same value. Reading is exact rational arithmetic; no float takes
// part in it. Area products and quotients go through math/bits and never
// overflow for lengths up to MaxLen.
//
// It does not promise to read negative lengths (a length has no sign; who
// reads coordinates reads the sign), nor scientific notation, nor feet.
//
// Source of the one inch = 25.4 mm everything rests on: the international yard
// of 1959 (NBS, Federal Register 59-5442). The 128-by-128-bit division follows
// H. S. Warren, Hacker's Delight, 2nd ed., section 9-5.
package length
