// Package cover solves covering problems by linear programming: columns, each
// used any fraction of times at its cost, that together hold a demand of each
// row at the least cost. It is the relaxation of cutting stock, with
// mats or bins for columns (Gilmore and Gomory, "A linear programming approach
// to the cutting-stock problem", Operations Research 9, 1961), solved by the
// revised simplex method (Dantzig and Orchard-Hays, 1954; from memory).
//
// It works in floats, added, multiplied and divided only and never fused, so
// that it gives the same numbers on every machine. What it gives is a
// suggestion all the same: who needs a proof rounds the prices and checks
// them in whole numbers. It does not factor its basis anew, so that errors of
// rounding add up over very many pivots, and it is no match for problems of
// thousands of rows.
package cover
