package plain

import (
	"errors"
	"path/filepath"

	"example.org/matside/plan"
	"example.org/matside/plan/cutlist"
	"example.org/matside/session"
	"example.org/matside/tui/files"
	"example.org/matside/tui/guide"
	"example.org/matside/tui/words"
)

// news is what became of the cut list of the quilt in hand since it was
// planned.
type news struct {
	quilt session.QuiltID
	path  string
	stamp files.Stamp
	known string // the text that is not to be taken now
	text  string // a text that is not the quilt's, "" for none
}

// look looks at the cut list before she is asked: from outside, and only a
// file that looks otherwise is read. That it has changed is told once, and
// stands among the answers until she has dealt with it.
func (t *talk) look() {
	_, q := t.quilt()
	if t.Desk == nil || q == nil {
		return
	}
	if t.news.quilt != t.id {
		t.news = news{quilt: t.id, path: t.Desk.FileOf(t.id)}
	}
	n := &t.news
	if n.path == "" {
		return
	}
	stamp := t.Desk.Stamp(n.path)
	if stamp.Gone() || stamp == n.stamp {
		return
	}
	text, _, err := t.Desk.Read(n.path)
	if err != nil { // until it looks otherwise again
		return
	}
	n.stamp = stamp
	if n.text = text; text == q.Text() || text == n.known {
		n.text = ""
		return
	}
	t.say(words.Capital(t.words.NewsTitle()) + ".")
}

// newsOption is the way to what has changed, where something has.
func (t *talk) newsOption() []option {
	if t.news.text == "" {
		return nil
	}
	return []option{{t.words.KeyNews(), t.tellNews}}
}

// tellNews tells the change in words, before anything of it is taken.
func (t *talk) tellNews() error {
	_, q := t.quilt()
	path, text := t.news.path, t.news.text
	t.say(t.words.ReadingChange())
	now, err := t.Desk.Plan(t.ctx, path, text, t.telling())
	if err == nil {
		was, old := t.Desk.Plan(t.ctx, path, q.Text(), t.telling())
		if err = old; err == nil {
			return t.takeNews(guide.Change(t.words, plan.Compare(was, now)), session.Replan{Text: text, List: now.List})
		}
	}
	if mistakes := (cutlist.Mistakes{}); errors.As(err, &mistakes) {
		t.say(t.words.MistakesIn(filepath.Base(path)))
		t.say(t.words.GoesOnAsBefore())
		t.lines(err)
		return nil
	}
	t.trouble(err)
	return nil
}

func (t *talk) takeNews(change []string, take session.Replan) error {
	t.say(t.words.NewsLead())
	for _, says := range change {
		t.say("  " + says)
	}
	t.say(t.words.NewsKeeps())
	return t.pick("news", []option{
		{t.words.KeyTakeChange(), func() error {
			t.news.text = ""
			return t.do(take)
		}},
		{t.words.KeyNotNow(), func() error {
			t.news.known, t.news.text = take.Text, ""
			return nil
		}},
	})
}
