// Command ventlint reviews residential ventilation designs against rule packs.
package main

import (
	"os"
	"runtime/debug"
)

// garbage is how many percent of what is in use may pile up before memory is
// collected: most runs are over before that, and keep most of what they make.
const garbage = 400

func main() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(garbage)
	}
	os.Exit(run(os.Args[1:], here()))
}
