package document

// spare is memory for the nodes to come, asked for in large pieces.
type spare struct {
	nodes    []node
	size     int // of the last piece of them
	branches []branch
	room     []*node
}

const (
	fewestNodes    = 56  // 4 KiB
	mostNodes      = 448 // 32 KiB
	branchesAtOnce = 51
	roomAtOnce     = 512
)

// node gives a node that holds nothing. Each piece of memory is twice as large as
// the one before.
func (s *spare) node() *node {
	if len(s.nodes) == 0 {
		s.size = min(max(fewestNodes, 2*s.size), mostNodes)
		s.nodes = make([]node, s.size)
	}
	n := &s.nodes[0]
	s.nodes = s.nodes[1:]
	n.branch = leaf
	return n
}

// fork gives a branch that holds nothing yet.
func (s *spare) fork() *branch {
	if len(s.branches) == 0 {
		s.branches = make([]branch, branchesAtOnce)
	}
	b := &s.branches[0]
	s.branches = s.branches[1:]
	return b
}

// hang adds a node to the table or list that it was made for.
func (s *spare) hang(under, n *node) {
	if under.branch == leaf {
		under.branch = s.fork()
	}
	if under.children == nil {
		under.children = s.places(under)
	}
	under.add(n)
}

// places gives as much room as most tables and lists need.
func (s *spare) places(under *node) []*node {
	most := 4
	if under.origin == headed {
		most = 12
	}
	if len(s.room) < most {
		s.room = make([]*node, roomAtOnce)
	}
	places := s.room[:0:most]
	s.room = s.room[most:]
	return places
}
