// Package plain is the same session as the screens, told in plain lines: for
// screen readers, braille lines and terminals that can do no more.
//
// It only ever adds lines, one sentence for each change; questions have
// numbered answers, and Enter alone takes the first. Nothing moves before it
// is written down; the end of the input leaves with everything saved. It
// reads its input through one buffer, so that no answer is lost on the way.
package plain
