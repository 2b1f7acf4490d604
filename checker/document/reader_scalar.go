package document

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"time"
)

// Moment is a date, a time, or both, as written without quotes. No key of the
// project takes one.
type Moment string

// scalar reads a value that has no quotes or brackets.
func (r *reader) scalar(n *node) {
	start := r.at
	for !r.end() && !endsScalar(r.source[r.at]) {
		r.at++
	}
	word := strings.TrimRight(r.source[start:r.at], " \t")
	r.at = start + len(word)
	if word == "" {
		r.fail(r.next(), "", "found %s, expected a value", r.found())
	}
	r.beyond = r.beyond || !isPlainScalar(word)
	var err error
	if n.kind, _, err = scalarOf(word); err != nil {
		r.fail(spanOf(start, r.at), unquotedHint(word), "found %s, %v", excerpt(word), err)
	}
}

func endsScalar(c byte) bool {
	switch c {
	case ',', ']', '}', '#', '\r', '\n':
		return true
	}
	return false
}

var (
	wholePattern   = pattern(`^([+-]?(0|[1-9](_?[0-9])*)|0x[0-9a-fA-F](_?[0-9a-fA-F])*|0o[0-7](_?[0-7])*|0b[01](_?[01])*)$`)
	decimalPattern = pattern(`^[+-]?(inf|(0|[1-9](_?[0-9])*)(\.[0-9](_?[0-9])*)?([eE][+-]?[0-9](_?[0-9])*)?)$`)
	momentPattern  = pattern(`^([0-9]{4}-[0-9]{2}-[0-9]{2}|([0-9]{4}-[0-9]{2}-[0-9]{2}[Tt ])?[0-9]{2}:[0-9]{2}(:[0-9]{2}(\.[0-9]+)?)?([Zz]|[+-]([01][0-9]|2[0-3]):[0-5][0-9])?)$`)
)

// pattern compiles a pattern when it is first asked for.
func pattern(text string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) })
}

func scalarOf(word string) (kind, any, error) {
	switch {
	case word == "true" || word == "false":
		return truth, word == "true", nil
	case isFigure(word):
		return figure(word)
	case wholePattern().MatchString(word):
		number, err := strconv.ParseInt(strings.ReplaceAll(word, "_", ""), base(word), 64)
		return whole, number, sized(err)
	case word == "nan" || word == "+nan" || word == "-nan":
		return decimal, math.NaN(), nil
	case decimalPattern().MatchString(word):
		number, err := strconv.ParseFloat(strings.ReplaceAll(word, "_", ""), 64)
		return decimal, number, sized(err)
	case momentPattern().MatchString(word):
		return moment, Moment(word), onCalendar(word)
	case strings.Trim(word, "+-0123456789_.eE") == "":
		return 0, nil, errors.New("expected a number such as 12, 0.5 or -3")
	}
	return 0, nil, errors.New("expected text in quotes, a number, true or false")
}

// isPlainScalar tells whether a word without quotes is written in the plain way.
func isPlainScalar(word string) bool { return word == "true" || word == "false" || isFigure(word) }

// isFigure tells a number as most are written: 12, -3 or 0.5.
func isFigure(word string) bool {
	word = strings.TrimPrefix(word, "-")
	before := digits(word)
	if before == 0 || word[0] == '0' && before > 1 {
		return false
	}
	if before == len(word) {
		return true
	}
	after := word[before+1:]
	return word[before] == '.' && after != "" && digits(after) == len(after)
}

// digits counts the decimal digits that a word begins with.
func digits(word string) int {
	n := 0
	for n < len(word) && word[n] >= '0' && word[n] <= '9' {
		n++
	}
	return n
}

// figure is the number that a figure stands for.
func figure(word string) (kind, any, error) {
	if strings.Contains(word, ".") {
		number, err := strconv.ParseFloat(word, 64)
		return decimal, number, sized(err)
	}
	number, err := strconv.ParseInt(word, 10, 64)
	return whole, number, sized(err)
}

// base is 0, which takes 0x, 0o and 0b, or 10, as "08" never gets here.
func base(word string) int {
	if strings.HasPrefix(word, "0") {
		return 0
	}
	return 10
}

func sized(err error) error {
	if err != nil {
		return errors.New("expected a number of 64 bits")
	}
	return nil
}

var momentLayouts = []string{"2006-01-02", "15:04", "15:04:05", "2006-01-02T15:04", "2006-01-02T15:04:05", "2006-01-02T15:04Z07:00", "2006-01-02T15:04:05Z07:00"}

// onCalendar tells whether a date and time of the right form exists.
func onCalendar(word string) error {
	plain := strings.ToUpper(strings.Replace(word, " ", "T", 1))
	for _, layout := range momentLayouts {
		if _, err := time.Parse(layout, plain); err == nil {
			return nil
		}
	}
	return errors.New("which is not on the calendar or clock")
}

// unquotedHint guesses what a value without quotes was to be.
func unquotedHint(word string) string {
	switch lower := strings.ToLower(word); {
	case lower == "true" || lower == "yes":
		return "write true"
	case lower == "false" || lower == "no":
		return "write false"
	case len(word) <= 40 && !strings.ContainsAny(word, `"='\`):
		return fmt.Sprintf("write %q", word)
	}
	return ""
}
