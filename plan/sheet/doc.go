// Package sheet turns a plan into tables for a spreadsheet and a spreadsheet's
// table into a cut list, as CSV (RFC 4180).
//
// It promises that what goes out as a table comes back as the same table; that
// the table of pieces comes back as a cut list with the same settings and the
// same pieces, however they were written; that every length stands beside its unit or under it; that
// no cell of ours runs as a formula; and that a table with mistakes gives all
// of them, each with its row, and no cut list. Whatever a cell holds, it can't
// become more than the part of the one statement it stands for.
//
// It does not carry what is said of a fabric (its size, one-way and so on), nor
// outlines of her own: those are written into the cut list by hand.
//
// That cells which begin with = + - @, a tab or a line end are run as formulas
// is the spreadsheet programs' doing; the characters are those that the Open
// Worldwide Application Security Project lists under CSV injection (from
// memory).
package sheet
