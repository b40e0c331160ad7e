// Package cutlist: see the task brief; doc to be written by its owner.
package cutlist
