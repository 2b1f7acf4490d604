package designtest

// FourWalls is the footprint of an invented house, 30 ft by 20 ft with its south-west
// corner at the origin, on level ground: walls of 18 ft by the names south, east, north
// and west.
const FourWalls = `[[wall]]
id = "south"
from = ["0 ft", "0 ft"]
to = ["30 ft", "0 ft"]
grade = "0 ft"
height = "18 ft"
[[wall]]
id = "east"
from = ["30 ft", "0 ft"]
to = ["30 ft", "20 ft"]
grade = "0 ft"
height = "18 ft"
[[wall]]
id = "north"
from = ["30 ft", "20 ft"]
to = ["0 ft", "20 ft"]
grade = "0 ft"
height = "18 ft"
[[wall]]
id = "west"
from = ["0 ft", "20 ft"]
to = ["0 ft", "0 ft"]
grade = "0 ft"
height = "18 ft"
`
