package session

import (
	"time"

	"example.org/matside/plan/length"
)

// quick decodes the events that come by the hundred: those whose line is as
// Encode writes it and whose content is small. It gives up on anything else,
// and then Decode reads the line by encoding/json. Opening a log of 100 000
// events is several times faster for it.
func quick(line []byte) (Event, bool) {
	s := scanner{line, true}
	var e Event
	s.word(`{"seq":`)
	e.Seq = s.number()
	s.word(`,"at":"`)
	e.At = s.time()
	s.word(`"`)
	if s.has(`,"quilt":`) {
		e.Quilt = QuiltID(s.number())
	}
	s.word(`,"kind":"`)
	k := kind(s.text())
	s.word(`,"v":1,"c":`)
	e.Version = 1
	e.Content = s.content(k)
	s.word(`}`)
	return e, s.ok && len(s.rest) == 0 && e.Content != nil
}

// scanner reads from the front of rest; ok turns false at the first surprise.
type scanner struct {
	rest []byte
	ok   bool
}

func (s *scanner) has(word string) bool {
	if len(s.rest) < len(word) || string(s.rest[:len(word)]) != word {
		return false
	}
	s.rest = s.rest[len(word):]
	return true
}

func (s *scanner) word(w string) { s.ok = s.ok && s.has(w) }

// number reads what encoding/json would: no sign, no leading zero.
func (s *scanner) number() uint64 {
	var n uint64
	i := 0
	for ; i < len(s.rest) && i < 18 && s.rest[i] >= '0' && s.rest[i] <= '9'; i++ {
		n = 10*n + uint64(s.rest[i]-'0')
	}
	s.ok = s.ok && i > 0 && (i == 1 || s.rest[0] != '0')
	s.rest = s.rest[i:]
	return n
}

// text reads up to and with the closing quote; escapes and what isn't plain
// ASCII are left to encoding/json.
func (s *scanner) text() string {
	for i, c := range s.rest {
		switch {
		case c == '"':
			t := string(s.rest[:i])
			s.rest = s.rest[i+1:]
			return t
		case c < ' ' || c == '\\' || c > '~':
			s.ok = false
			return ""
		}
	}
	s.ok = false
	return ""
}

// time reads a stamp such as 2026-03-07T19:02:00.000+01:00.
func (s *scanner) time() time.Time {
	const local, utc = len("2026-03-07T19:02:00.000+01:00"), len("2026-03-07T19:02:00.000Z")
	n := utc
	if len(s.rest) > local && s.rest[utc-1] != 'Z' {
		n = local
	}
	if len(s.rest) < n {
		s.ok = false
		return time.Time{}
	}
	b := s.rest[:n]
	s.rest = s.rest[n:]
	at := [7]int{s.digits(b[0:4]), s.digits(b[5:7]), s.digits(b[8:10]), s.digits(b[11:13]), s.digits(b[14:16]), s.digits(b[17:19]), s.digits(b[20:23])}
	s.ok = s.ok && b[4] == '-' && b[7] == '-' && b[10] == 'T' && b[13] == ':' && b[16] == ':' && b[19] == '.' &&
		at[1] >= 1 && at[1] <= 12 && at[2] >= 1 && at[2] <= 31 && at[3] <= 23 && at[4] <= 59 && at[5] <= 59
	zone := time.UTC
	if n == local {
		zone = s.zone(b[23:])
	} else if b[23] != 'Z' {
		s.ok = false
	}
	t := time.Date(at[0], time.Month(at[1]), at[2], at[3], at[4], at[5], at[6]*int(time.Millisecond), zone)
	s.ok = s.ok && t.Day() == at[2] // 31 April is none
	return t
}

func (s *scanner) digits(b []byte) int {
	n := 0
	for _, c := range b {
		if c < '0' || c > '9' {
			s.ok = false
			return 0
		}
		n = 10*n + int(c-'0')
	}
	return n
}

// zones are the offsets from UTC in quarter hours, -14 h to +14 h, made once:
// the library would make a new one for each event.
var zones = func() (z [2*56 + 1]*time.Location) {
	for i := range z {
		z[i] = time.FixedZone("", (i-56)*15*60)
	}
	return z
}()

func (s *scanner) zone(b []byte) *time.Location {
	quarters := 4*s.digits(b[1:3]) + s.digits(b[4:6])/15
	if b[3] != ':' || b[0] != '+' && b[0] != '-' || s.digits(b[4:6])%15 != 0 || quarters > 56 || quarters == 0 {
		s.ok = false
		return time.UTC
	}
	if b[0] == '-' {
		quarters = -quarters
	}
	return zones[56+quarters]
}

func (s *scanner) content(k kind) Content {
	switch k {
	case "step":
		return s.stepDone()
	case "peeled":
		return s.peeled()
	case "undone":
		s.word(`{"target":`)
		u := Undone{s.number()}
		s.word(`}`)
		return u
	case "mat washed":
		s.word(`{"mat":"`)
		w := MatWashed{Mat: s.text()}
		s.word(`,"dry":`)
		w.Dry = int(s.number())
		s.word(`}`)
		return w
	case "opened":
		s.word(`{}`)
		return Opened{}
	case "left":
		s.word(`{}`)
		return Left{}
	case "paused":
		s.word(`{}`)
		return Paused{}
	case "resumed":
		s.word(`{}`)
		return Resumed{}
	}
	return nil
}

func (s *scanner) stepDone() Content {
	s.word(`{"load":`)
	d := StepDone{Load: int(s.number())}
	s.word(`,"step":"`)
	name := s.text()
	s.word(`}`)
	for i, w := range stepWords {
		if w == name {
			d.Step = Step(i)
			return d
		}
	}
	return nil
}

func (s *scanner) peeled() Content {
	var p Peeled
	s.word(`{"load":`)
	p.Load = int(s.number())
	s.word(`,"mat":"`)
	p.Mat = s.text()
	if s.has(`,"spoiled":[`) {
		for s.ok {
			p.Spoiled = append(p.Spoiled, int(s.number()))
			if !s.has(`,`) {
				break
			}
		}
		s.word(`]`)
	}
	p.Lifted = s.has(`,"lifted":true`)
	p.Ragged = s.has(`,"ragged":true`)
	s.word(`,"weight":`)
	p.Weight = int(s.number())
	s.word(`,"cut_nm":`)
	p.CutLength = length.Len(s.number())
	s.word(`}`)
	return p
}
