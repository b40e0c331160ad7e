package canvas

// zone is a rectangle of cells that means something when it is pointed at.
type zone struct {
	x, y, w, h int
	name       string
}

// Zone names a rectangle for a pointer: what is drawn is what is hit, so a
// screen marks its targets where it draws them.
func (c *Canvas) Zone(x, y, w, h int, name string) {
	c.zones = append(c.zones, zone{x, y, w, h, name})
}

// Hit is the name of the zone at x, y, the one marked last where several lie
// over each other, or "".
func (c *Canvas) Hit(x, y int) string {
	for i := len(c.zones) - 1; i >= 0; i-- {
		if z := c.zones[i]; x >= z.x && x < z.x+z.w && y >= z.y && y < z.y+z.h {
			return z.name
		}
	}
	return ""
}
