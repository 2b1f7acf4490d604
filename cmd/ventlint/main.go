// Command ventlint reviews residential ventilation designs against rule packs.
package main

import "os"

func main() { os.Exit(alone()) }

// alone runs the program as a process of its own.
func alone() int {
	collect(seldom, spare)
	heed(os.Stderr)
	return run(os.Args[1:], here())
}
