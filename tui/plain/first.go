package plain

import (
	"errors"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"time"

	"example.org/matside/plan/cutlist"
	"example.org/matside/plan/say"
	"example.org/matside/session"
	"example.org/matside/tui/files"
	"example.org/matside/tui/form"
	"example.org/matside/tui/words"
)

// first asks what to do when no quilt is under way.
func (t *talk) first() error {
	if t.Desk == nil {
		for _, l := range t.words.WaysOn() {
			if l != "" {
				t.say(l)
			}
		}
		return errLeft
	}
	t.say(t.words.NoneUnderWay())
	return t.pick("first", append(t.ways(), option{t.words.PlainMore(false), t.more}, option{t.words.KeyLeave(), func() error { return errLeft }}))
}

// ways are the ways on, as the first page has them: the demo, a cut list, one
// written here. She changes one by its name.
func (t *talk) ways() []option {
	t.say(t.words.WayDemo() + ": " + t.words.WayDemoHow())
	t.say(t.words.WayOpen() + ": " + t.words.WayOpenHow())
	written := option{t.words.WayWrite(), func() error { return t.write(form.New()) }}
	fresh := []option{}
	if f, ok := t.unfinished(); ok {
		t.say(t.words.WayResume() + ": " + t.words.WayResumeHow(f.Quilt()))
		fresh = append(fresh, option{t.words.KeyStartNew(), written.do})
		written = option{t.words.WayResume(), func() error { return t.write(f) }}
	} else {
		t.say(t.words.WayWrite() + ": " + t.words.WayWriteHow())
	}
	return append([]option{
		{t.words.WayDemo(), t.demo},
		{t.words.WayOpen(), func() error { return t.byName(t.take) }},
		written,
		{t.words.PlainChange(), func() error { return t.byName(t.edit) }},
	}, fresh...)
}

// unfinished is the form that was left unfinished.
func (t *talk) unfinished() (form.Form, bool) {
	data := t.Desk.Unfinished()
	if data == nil {
		return form.Form{}, false
	}
	f, err := form.Restore(data)
	return f, err == nil
}

// demo goes on with the demo, in a notebook of its own.
func (t *talk) demo() error {
	t.say(t.words.OpeningDemo())
	o, err := t.Desk.Demo(t.ctx, t.telling())
	if err != nil {
		t.trouble(err)
		return nil
	}
	if t.id != 0 {
		if err := t.do(session.Leave{}); err != nil {
			return err
		}
	}
	t.book, t.id, t.Demo = o.Book, o.Quilt, true
	t.plansBy(o.Planner)
	if o.Desk != nil {
		t.Desk = o.Desk
	}
	return nil
}

// byName asks for a cut list: those in the folder have numbers.
func (t *talk) byName(do func(path string) error) error {
	folder, err := t.Desk.Folder("", false)
	if err != nil {
		t.say(t.words.FolderFailed(t.words.Error(err)))
	}
	var listed []files.Entry
	for _, e := range folder.Entries {
		if e.Dir {
			continue
		}
		if listed = append(listed, e); len(listed) == 1 {
			t.say(t.words.PickFolder(folder.Path) + ":")
		}
		t.say("  " + numbered(len(listed), e.Name))
	}
	t.say(t.words.PlainFileName(len(listed) > 0))
	path, err := t.from.text(t)
	if err != nil || path == "" {
		return err
	}
	if n, err := strconv.Atoi(path); err == nil && n >= 1 && n <= len(listed) {
		path = listed[n-1].Path
	}
	return do(path)
}

// take goes on with the quilt of a cut list.
func (t *talk) take(path string) error {
	t.say(t.words.Planning())
	id, err := t.Desk.Take(t.ctx, t.book, path, t.telling())
	if mistakes := (cutlist.Mistakes{}); errors.As(err, &mistakes) {
		t.say(t.words.MistakesIn(filepath.Base(path)))
		t.lines(err)
		return t.pick("mistakes", []option{
			{t.words.KeyBack(), func() error { return nil }},
			{t.words.KeyOpenInForm(), func() error { return t.edit(path) }},
		})
	}
	if err != nil {
		t.trouble(err)
		return nil
	}
	return t.sitDownTo(id)
}

// edit opens a cut list in the form.
func (t *talk) edit(path string) error {
	text, open, err := t.Desk.Read(path)
	if err != nil {
		t.trouble(err)
		return nil
	}
	return t.write(form.Of(path, text, open))
}

// trouble tells an error, line by line.
func (t *talk) trouble(err error) {
	t.say(t.words.WentWrong())
	t.lines(err)
}

func (t *talk) lines(err error) {
	for line := range strings.Lines(t.words.Error(err)) {
		t.say(strings.TrimRight(line, "\n"))
	}
}

// telling tells the steps of work that takes long, one a second at most.
func (t *talk) telling() func(say.Sentence) { return Steps(t.words, t.say) }

// Steps tells the steps of work that takes over a second, each as a sentence
// and once, and no more than one a second.
func Steps(w words.Words, tell func(line string)) func(say.Sentence) {
	var mu sync.Mutex
	last, at := "", time.Now()
	return func(s say.Sentence) {
		step := w.Say(s)
		mu.Lock()
		defer mu.Unlock()
		if step != last && time.Since(at) >= time.Second {
			last, at = step, time.Now()
			tell(words.Full(step))
		}
	}
}
