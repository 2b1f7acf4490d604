package designtest

import "fmt"

// FourWalls is the footprint of an invented house with its south-west corner at the
// origin, on level ground: walls by the names south, east, north and west. Width, depth
// and height are lengths as a design gives them, such as "30 ft".
func FourWalls(width, depth, height string) string {
	const none = "0 ft"
	corners := [][2]string{{none, none}, {width, none}, {width, depth}, {none, depth}, {none, none}}
	text := ""
	for i, name := range []string{"south", "east", "north", "west"} {
		from, to := corners[i], corners[i+1]
		text += fmt.Sprintf("[[wall]]\nid = %q\nfrom = [%q, %q]\nto = [%q, %q]\ngrade = %q\nheight = %q\n",
			name, from[0], from[1], to[0], to[1], none, height)
	}
	return text
}
