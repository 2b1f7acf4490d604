package reportfmt

import "encoding/xml"

// The elements of a report of tests, as the common schemas of build hosts have
// them. Times are there because some of them demand it; a review is not timed.
type (
	junitSuites struct {
		XMLName  xml.Name     `xml:"testsuites"`
		Name     string       `xml:"name,attr"`
		Tests    int          `xml:"tests,attr"`
		Failures int          `xml:"failures,attr"`
		Errors   int          `xml:"errors,attr"`
		Time     string       `xml:"time,attr"`
		Suites   []junitSuite `xml:"testsuite"`
	}

	junitSuite struct {
		Name       string           `xml:"name,attr"`
		Tests      int              `xml:"tests,attr"`
		Failures   int              `xml:"failures,attr"`
		Errors     int              `xml:"errors,attr"`
		Skipped    int              `xml:"skipped,attr"`
		Time       string           `xml:"time,attr"`
		Properties *junitProperties `xml:"properties"`
		Cases      []junitCase      `xml:"testcase"`
		Out        string           `xml:"system-out,omitempty"`
	}

	junitProperties struct {
		List []junitProperty `xml:"property"`
	}

	junitProperty struct {
		Name  string `xml:"name,attr"`
		Value string `xml:"value,attr"`
	}

	junitCase struct {
		Class   string        `xml:"classname,attr"`
		Name    string        `xml:"name,attr"`
		Time    string        `xml:"time,attr"`
		Failure *junitMessage `xml:"failure"`
		Error   *junitMessage `xml:"error"`
		Skipped *junitMessage `xml:"skipped"`
	}

	junitMessage struct {
		Type    string `xml:"type,attr,omitempty"`
		Message string `xml:"message,attr"`
		Text    string `xml:",cdata"`
	}
)
