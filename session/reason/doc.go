// Package reason declares what the record of the evenings and its data file
// say when something can't be done: why a key is refused, and what is wrong with
// a file, what is safe, and the way back.
//
// It promises that every such sentence is in Kinds, in English and with its
// facts apart, so that a screen can say it in another language. Who says which,
// and when, is up to package session and its data file.
package reason
