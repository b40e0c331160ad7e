// Package ruler works out the straight cuts, by ruler and rotary cutter, that
// free rough cuts from a panel, in the order they are made.
//
// A panel is freed by cuts right across the piece in hand, each of which
// falls into two (guillotine cuts; strips first, then pieces of strips:
// common practice, no source). The tree of these cuts is the same whichever
// load it is asked for, so that what an earlier load has cut already is known
// and not asked for again. It promises nothing where boxes can't be parted by
// such cuts (a plan never has that): the rest is then left out.
package ruler
