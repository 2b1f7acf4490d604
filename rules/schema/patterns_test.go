package schema

import (
	"math/rand/v2"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/quantity"
)

// pieces are what quantities are written with, and some things that they are not.
var pieces = func() []string {
	list := strings.Split("0|1|12|05|11|3/8|1/2|100/3|4 1/2|4-1/2|.5|.|12.|1.25|1e3|1,5|-|+|−| - |½|4½|⅜|⁄| |  |\u00a0|\u202f|\t|'|\"|''|′|″|′′|’|”|ft |ft-|R-|RSI-|r-|R|per|°|~|5 1/|%", "|")
	for _, u := range quantity.Units() {
		list = append(list, u.Symbol, " "+u.Symbol)
	}
	return list
}()

// parses tells whether the loader takes a text for a type.
func parses(t reflect.Type, text string) bool {
	return reflect.New(t).Interface().(interface{ UnmarshalTOML(any) error }).UnmarshalTOML(text) == nil
}

// made puts pieces together, often in the order in which they make sense.
func made(source *rand.Rand, t reflect.Type) string {
	any := func(list []string) string { return list[source.IntN(len(list))] }
	text := ""
	for range source.IntN(4) {
		text += any(pieces)
	}
	switch source.IntN(4) {
	case 0:
		return text + any(pieces)
	case 1:
		return text + any(symbols(t))
	}
	return any([]string{"", "", "-", "+", "−", " "}) + any(pieces[:10]) + any([]string{"", " ", "\u00a0\t"}) + any(symbols(t))
}

// No text that the loader takes is refused, of tens of thousands.
func TestPatternsRefuseNoQuantity(t *testing.T) {
	source := rand.New(rand.NewPCG(1, 2))
	all := regexp.MustCompile(anyPattern())
	for _, kind := range kinds() {
		pattern, taken := regexp.MustCompile(whole(forms(kind))), 0
		for range 3_000 {
			text := made(source, kind)
			if !parses(kind, text) {
				continue
			}
			taken++
			require.True(t, pattern.MatchString(text), "%s %q", kind, text)
			require.True(t, all.MatchString(text), "%q", text)
		}
		require.Greater(t, taken, 100, "%s: enough of the texts are quantities", kind)
	}
}

// Feet and inches in all their spellings.
func TestPatternsRefuseNoFeetAndInches(t *testing.T) {
	kind := reflect.TypeFor[quantity.Length]()
	pattern, taken := regexp.MustCompile(whole(forms(kind))), 0
	for _, marks := range []string{"ft in", "' \"", "′ ″", "’ ”", "' ''", "′ ′′", "ft inch"} {
		foot, inch, _ := strings.Cut(marks, " ")
		for _, between := range []string{"", " ", "-", " - ", "\u00a0", "\t−  ", " -", "- "} {
			for _, inches := range []string{"4", "04", "11.5", ".5", "1/2", "4 1/2", "4-1/2", "½", "4½", "4 ½", "4⁄9"} {
				for _, blank := range []string{"", " ", "\u202f"} {
					text := "12" + blank + foot + between + inches + blank + inch + blank
					if parses(kind, text) {
						taken++
						require.True(t, pattern.MatchString(text), "%q", text)
					}
				}
			}
		}
	}
	require.Greater(t, taken, 700)
}

func TestPatternsTakeWhatIsPrinted(t *testing.T) {
	source := rand.New(rand.NewPCG(3, 4))
	for _, kind := range kinds() {
		pattern := regexp.MustCompile(whole(forms(kind)))
		for range 500 {
			value := reflect.ValueOf(source.ExpFloat64() * 300).Convert(kind).Interface()
			for _, system := range []quantity.System{quantity.IP, quantity.SI} {
				text := quantity.Format(value, system)
				require.Regexp(t, pattern, text)
			}
		}
	}
}

// What is no quantity of the type, neither takes.
func TestPatternsRefuse(t *testing.T) {
	for kind, texts := range map[reflect.Type][]string{
		reflect.TypeFor[quantity.Length]():            {"", "12", "ft", "12 cfm", "12. ft", "1,5 m", "1e3 m", "0x10 m", "12 ft 4", "12 ft 4 cm", "1.5 ft 4 in", "1/2 m", "12 FT", "- 5 ft", "12 ft 4 in 3", "1/0 in", "5 %", "R-8", "12 ft4 in"},
		reflect.TypeFor[quantity.Flow]():              {"80", "80 CFM", "80 cfm/ft2", "1/2 cfm", "80 cfm or so", "~80 cfm", "eighty cfm"},
		reflect.TypeFor[quantity.Slope]():             {"1/4", "1/4 in", "2 mm", "1/4 mm/m"},
		reflect.TypeFor[quantity.ThermalResistance](): {"R8", "r-8", "R -8", "8", "-R-8", "R-8 R"},
		reflect.TypeFor[quantity.Temperature]():       {"5", "5 K", "5 dF", "5 f"},
	} {
		pattern := regexp.MustCompile(whole(forms(kind)))
		for _, text := range texts {
			require.False(t, parses(kind, text), "%s %q", kind, text)
			require.False(t, pattern.MatchString(text), "%s %q", kind, text)
		}
	}
}
