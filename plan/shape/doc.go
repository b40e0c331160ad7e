// Package shape turns a shape's name and size into its cut outline.
package shape
