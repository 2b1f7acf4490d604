package reportfmt

import "github.com/ventlint/ventlint/checker"

func (c *changes) jsonBaseline(r *checker.Report) *jsonBaseline {
	if c == nil {
		return nil
	}
	fresh, known, _ := c.news(r)
	return &jsonBaseline{New: fresh, Unchanged: known, Absent: each(c.gone(), jsonAbsentOf)}
}

func jsonAbsentOf(e earlier) jsonAbsent {
	return jsonAbsent{
		Rule: e.Rule, Outcome: string(e.Outcome), Level: string(e.Level), Message: e.Message,
		Position: jsonPosition(inFile(e.Position)), Pointer: e.Pointer, Fingerprint: e.Fingerprint,
	}
}
