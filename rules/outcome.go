package rules

// Outcome is what became of one rule for one subject; the words are the result
// kinds of SARIF 2.1.0, and one more for a rule that the design's stage does
// not ask for yet.
type Outcome string

// The outcomes, worst first.
const (
	Fail          Outcome = "fail"
	Open          Outcome = "open"   // an input is missing
	Review        Outcome = "review" // a person must judge
	Pass          Outcome = "pass"
	Informational Outcome = "informational"
	NotDue        Outcome = "notDue"
	NotApplicable Outcome = "notApplicable"
)

// Outcomes lists every outcome, worst first.
func Outcomes() []Outcome {
	return []Outcome{Fail, Open, Review, Pass, Informational, NotDue, NotApplicable}
}

// Worse tells whether an outcome comes before another in that list.
func (o Outcome) Worse(than Outcome) bool {
	for _, each := range Outcomes() {
		switch each {
		case than:
			return false
		case o:
			return true
		}
	}
	return false
}

// Problem tells whether an outcome asks something of somebody: it failed, an input is
// missing, or a person must judge.
func (o Outcome) Problem() bool { return o == Fail || o == Open || o == Review }
