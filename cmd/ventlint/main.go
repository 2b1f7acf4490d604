// Command ventlint reviews residential ventilation designs against rule packs.
package main

import "os"

func main() {
	collect(seldom, spare)
	heed(os.Stderr)
	os.Exit(run(os.Args[1:], here()))
}
