package airflow

// loops gives each run that joins two nodes which runs before it already join,
// with the runs of that way.
func loops(runs []Run) []error {
	var faults []error
	leader := map[string]string{} // of the nodes that are joined so far
	for i, r := range runs {
		from, to := lead(leader, r.From), lead(leader, r.To)
		if from != to {
			leader[from] = to
			continue
		}
		faults = append(faults, &LayoutError{Loop, append([]string{r.ID}, way(runs[:i], r.To, r.From)...)})
	}
	return faults
}

// lead follows a node to the one that stands for all nodes joined with it.
func lead(leader map[string]string, node string) string {
	for {
		next, ok := leader[node]
		if !ok {
			return node
		}
		if after, ok := leader[next]; ok {
			leader[node] = after
		}
		node = next
	}
}

// way lists the runs on a way between two nodes, in any direction.
func way(runs []Run, from, to string) []string {
	came := map[string]int{from: -1} // the run by which a node was reached
	for grown := true; grown; {
		grown = false
		for i, r := range runs {
			_, hasFrom := came[r.From]
			_, hasTo := came[r.To]
			if hasFrom != hasTo {
				reached := r.From
				if hasFrom {
					reached = r.To
				}
				came[reached], grown = i, true
			}
		}
	}
	var ids []string
	for node := to; came[node] >= 0; {
		r := runs[came[node]]
		ids = append(ids, r.ID)
		node = r.other(node)
	}
	return ids
}

// other is the node at the other end of a run.
func (r Run) other(node string) string {
	if node == r.From {
		return r.To
	}
	return r.From
}
