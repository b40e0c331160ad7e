// Package schema holds the JSON Schema (draft 2020-12) of what
// `matside plan --json` prints, for whoever reads it by program.
//
// It promises that every plan fits it and that a missing key, a value of
// another kind, or a count, length, turn or outline that can't be does not. It
// leaves room for keys that come later, so a key it doesn't know is no fault.
// It does not say whether a plan can be cut: what the numbers must be to each
// other no schema can tell (plan/check does).
package schema
