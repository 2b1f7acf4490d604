package main

import (
	"fmt"
	"os"
	"os/signal"
	"syscall"
)

// heed ends the program in order when it is asked to end: what is staged is removed,
// what stands under its name stays whole. A closed pipe becomes an error of writing.
func heed(stderr writer) {
	signal.Ignore(syscall.SIGPIPE)
	asked := make(chan os.Signal, 1)
	signal.Notify(asked, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	go func() {
		<-asked
		unfinished.Lock()
		for path := range unfinished.paths {
			os.Remove(path)
		}
		fmt.Fprintln(stderr, "ventlint: interrupted: what was not yet written is not written")
		os.Exit(couldNot)
	}()
}
