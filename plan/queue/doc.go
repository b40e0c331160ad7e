// Package queue: see the task brief; doc to be written by its owner.
package queue
