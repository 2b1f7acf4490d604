package document

// markOf is a number that tells most keys apart without a look at them.
func markOf(key string) uint8 {
	if key == "" {
		return 0
	}
	return uint8(len(key)) + 16*key[0] + key[len(key)-1]
}

// marks are those of all keys of one table: a mark that is not among them is that
// of a new key.
type marks struct {
	of   *node
	bits [4]uint64
}

// may tells whether a table may have a key of a mark.
func (m *marks) may(table *node, mark uint8) bool {
	if table.last == 0 {
		*m = marks{of: table}
	}
	return m.of != table || m.bits[mark>>6]&(1<<(mark&63)) != 0
}

// note notes the mark of a key that a table gets.
func (m *marks) note(table *node, mark uint8) {
	if m.of == table {
		m.bits[mark>>6] |= 1 << (mark & 63)
	}
}
