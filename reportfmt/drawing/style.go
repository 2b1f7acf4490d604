package drawing

// The line styles and fills. They differ in weight, dash and hatch, so that they
// are told apart in black and white; blue and brown-red only help.
const (
	ink     = "#1a1a1a"
	blue    = "#0b4f8a"
	redhead = "#a33a00"

	wallEdge   = `stroke="#1a1a1a" stroke-width="2.5"`
	wallFace   = `fill="#f6f4ee" stroke="#1a1a1a" stroke-width="2"`
	footprint  = `fill="#f0ede4" stroke="#1a1a1a" stroke-width="2.5"`
	unknown    = `stroke="#1a1a1a" stroke-width="1.5" stroke-dasharray="2 5"`
	ground     = `stroke="#1a1a1a" stroke-width="3"`
	snowLine   = `stroke="#1a1a1a" stroke-width="1.2" stroke-dasharray="1 4" stroke-linecap="round"`
	floodLine  = `stroke="#0b4f8a" stroke-width="1.6" stroke-dasharray="12 3 3 3 3 3"`
	lotLine    = `stroke="#1a1a1a" stroke-width="1.6" stroke-dasharray="18 5 3 5"`
	publicWay  = `stroke="#1a1a1a" stroke-width="1.6" stroke-dasharray="8 4"`
	trackLine  = `stroke="#555555" stroke-width="4" stroke-dasharray="2 3"`
	asked      = `stroke="#0b4f8a" stroke-width="1.1" stroke-dasharray="7 4"`
	askedMore  = `stroke="#a33a00" stroke-width="1.8" stroke-dasharray="3 3"`
	offending  = `stroke="#a33a00" stroke-width="2.6"`
	stringLine = `stroke="#a33a00" stroke-width="3" stroke-dasharray="9 3"`
	stringRoom = `stroke="#ffffff" stroke-width="7"`
	leaderLine = `stroke="#555555" stroke-width="0.8"`
)

// fillOf is how the things of a role are drawn. key makes the hatch's name unique
// in a page with several drawings.
func fillOf(r role, key string) string {
	switch r {
	case intake:
		return `fill="#ffffff" stroke="` + blue + `" stroke-width="2.6"`
	case exhaust:
		return `fill="` + ink + `" stroke="` + ink + `" stroke-width="1.6"`
	case source:
		return `fill="url(#` + key + `-hatch)" stroke="` + ink + `" stroke-width="1.6"`
	}
	return `fill="#ffffff" stroke="` + ink + `" stroke-width="1"`
}
