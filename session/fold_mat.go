package session

// applyMat folds what happens to a mat.
func (s *State) applyMat(e *Event) error {
	if c, ok := e.Content.(MatAdded); ok {
		if s.Mat(c.Mat) != nil {
			return cannotFollow(e, "there is a mat %s", c.Mat)
		}
		s.Mats = append(s.Mats, Mat{Name: c.Mat, Width: c.Width, Height: c.High, Came: e.At, Since: c.Loads,
			Weighed: 1000 * c.Loads, Loads: c.Loads, Runs: []Run{{From: e.At, Before: c.Loads}}})
		return nil
	}
	m := s.Mat(matOf(e.Content))
	if m == nil {
		return cannotFollow(e, "no mat %s", matOf(e.Content))
	}
	switch c := e.Content.(type) {
	case MatWashed:
		m.wash(e, c.Dry)
	case MatRefreshed:
		m.Refreshes++
		m.Runs = append(m.Runs, Run{From: e.At, Refreshed: true, Before: m.Since})
	case MatDue:
		m.Due = c.Loads
	case MatRenamed:
		if s.Mat(c.To) != nil {
			return cannotFollow(e, "there is a mat %s", c.To)
		}
		s.renameMat(m.Name, c.To)
	case MatRetired:
		m.Retired = true
	}
	if ofMat(e.Content) != "" {
		m.Last = e.Seq
	}
	return nil
}

// matOf names the mat any mat event is about.
func matOf(c Content) string {
	switch c := c.(type) {
	case MatAdded:
		return c.Mat
	case MatRenamed:
		return c.Mat
	case MatRetired:
		return c.Mat
	}
	return ofMat(c)
}
