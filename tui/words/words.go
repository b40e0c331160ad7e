package words

// Words is the language in use.
type Words = English

// count writes a number and its noun, in the singular for one.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return itoa(n) + " " + many
}
