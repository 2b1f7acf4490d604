package properties

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// The sizes of the units, by their definitions: the international foot and pound of
// 1959, the Btu of the International Steam Table, the inch of water of 1000 kg/m3
// under standard gravity.
const (
	foot  = 0.3048
	inch  = foot / 12
	btu   = 1055.05585262
	water = inch * 1000 * 9.80665
	psi   = 0.45359237 * 9.80665 / (inch * inch)
)

// twin is a unit, the one that takes its place in the other system, and its size
// in that.
type twin struct {
	ip, si string
	size   float64
}

var twins = []twin{
	{"ft", "m", foot}, {"in", "mm", inch * 1000}, {"ft2", "m2", foot * foot}, {"in2", "cm2", inch * inch * 1e4},
	{"ft3", "m3", foot * foot * foot}, {"cfm", "L/s", foot * foot * foot / 60 * 1000}, {"inwc", "Pa", water}, {"psi", "kPa", psi / 1000},
	{"Btu/h", "W", btu / 3600}, {"kBtu/h", "kW", btu / 3600}, {"in/ft", "mm/m", 1000.0 / 12},
}

// resistance is how much RSI is R-1.
const resistance = foot * foot * 5 / 9 * 3600 / btu

var (
	inchesToo = regexp.MustCompile(`^(-?)(?:([0-9.]+) ft )?(?:([0-9]+) )?([0-9.]+)(?:/([0-9]+))? in$`)
	single    = regexp.MustCompile(`^(-?[0-9.]+)(?:/([0-9]+))? (\S+)$`)
	rValue    = regexp.MustCompile(`^(R|RSI)-([0-9.]+)$`)
)

// inOtherUnits writes every quantity of a design in the other system.
func inOtherUnits(text string) string {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		switch {
		case strings.HasPrefix(line, "#"):
		case strings.HasPrefix(line, `units = "SI"`):
			lines[i] = `units = "IP"`
		case strings.HasPrefix(line, `units = "IP"`):
			lines[i] = `units = "SI"`
		default:
			lines[i] = quotedText.ReplaceAllStringFunc(line, func(q string) string { return `"` + converted(q[1:len(q)-1]) + `"` })
		}
	}
	return strings.Join(lines, "\n")
}

func converted(text string) string {
	if m := inchesToo.FindStringSubmatch(text); m != nil {
		inches := number(m[2])*12 + number(m[3]) + number(m[4])/max(1, number(m[5]))
		return m[1] + decimal(inches*inch) + " m"
	}
	if m := rValue.FindStringSubmatch(text); m != nil {
		if m[1] == "RSI" {
			return "R-" + decimal(number(m[2])/resistance)
		}
		return "RSI-" + decimal(number(m[2])*resistance)
	}
	if m := single.FindStringSubmatch(text); m != nil {
		return measured(text, number(m[1])/max(1, number(m[2])), m[3])
	}
	return text
}

func measured(text string, v float64, unit string) string {
	switch unit {
	case "F":
		return decimal((v-32)/1.8) + " C"
	case "C":
		return decimal(v*1.8+32) + " F"
	}
	for _, t := range twins {
		switch unit {
		case t.si:
			return decimal(v/t.size) + " " + t.ip
		case t.ip:
			return decimal(v*t.size) + " " + t.si
		}
	}
	return text
}

func number(text string) float64 {
	v, _ := strconv.ParseFloat(text, 64)
	return v
}

func decimal(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// sharedUnits are those of both systems.
var sharedUnits = regexp.MustCompile(`^-?[0-9.]+ (%|min|d|sone|ACH)$`)

// unitsLeft: no quantity stays in its unit where the other system has one of its
// own; else nothing would have been tried.
func unitsLeft(s *specimen) (int, error) {
	is := quotedText.FindAllString(inOtherUnits(s.text), -1)
	for i, q := range quotedText.FindAllString(s.text, -1) {
		was := q[1 : len(q)-1]
		if (single.MatchString(was) || inchesToo.MatchString(was)) && !sharedUnits.MatchString(was) && is[i] == q {
			return 1, fmt.Errorf("%s stays", q)
		}
	}
	return 1, nil
}
