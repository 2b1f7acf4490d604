package airflow

import (
	"errors"
	"fmt"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// Branch is a section of an airstream and what lies beyond it, seen from the
// fan: further branches, or the end.
type Branch struct {
	ID      string
	Section Section
	Beyond  []*Branch
	End     *End // of a branch with nothing beyond
}

// End is where an airstream meets a room or outdoors.
type End struct {
	ID     string
	Flow   q.Flow // by design
	Stated []StatedLoss
}

// Path is the way from the fan to one end at given flows.
type Path struct {
	End      string
	Flow     q.Flow
	Sections []SectionLoss // from the fan outward
	Terminal q.Pressure    // stated losses of the end
	Loss     q.Pressure    // of all
}

// SectionLoss is the loss of one section of a path.
type SectionLoss struct {
	ID string
	Loss
}

var errNoBranch = errors.New("an airstream without a duct")

// Design adds up the design flows of all ends beyond a branch.
func (b *Branch) Design() q.Flow {
	if b.End != nil {
		return b.End.Flow
	}
	var total q.Flow
	for _, next := range b.Beyond {
		total += next.Design()
	}
	return total
}

// Paths computes the loss to every end when each carries a share of its design
// flow, as it does with its balancing damper set. Ends are in the order of the
// tree.
func Paths(branches []*Branch, share float64, air Air) ([]Path, error) {
	if len(branches) == 0 {
		return nil, errNoBranch
	}
	var paths []Path
	for _, b := range branches {
		if err := b.walk(Path{}, share, air, &paths); err != nil {
			return nil, err
		}
	}
	return paths, nil
}

func (b *Branch) walk(to Path, share float64, air Air, paths *[]Path) error {
	loss, err := b.Section.Loss(b.Design()*q.Flow(share), air)
	if err != nil {
		return fmt.Errorf("duct %q: %w", b.ID, err)
	}
	to.Sections = append(to.Sections[:len(to.Sections):len(to.Sections)], SectionLoss{b.ID, loss})
	to.Loss += loss.Total
	if b.End != nil {
		to.End, to.Flow = b.End.ID, loss.Flow
		for _, stated := range b.End.Stated {
			to.Terminal += stated.at(loss.Flow)
		}
		to.Loss += to.Terminal
		*paths = append(*paths, to)
		return nil
	}
	if len(b.Beyond) == 0 {
		return fmt.Errorf("duct %q: nothing lies beyond it, expected a terminal or an opening", b.ID)
	}
	for _, next := range b.Beyond {
		if err := next.walk(to, share, air, paths); err != nil {
			return err
		}
	}
	return nil
}

// Critical is the path of the largest loss, the first of equals.
func Critical(paths []Path) Path {
	var most Path
	for i, p := range paths {
		if i == 0 || p.Loss > most.Loss {
			most = p
		}
	}
	return most
}
