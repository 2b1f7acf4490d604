package main

import "runtime"

// inOrder does a work on each of many things, several at once, and gives what comes
// of them to take, one after the other, in the order of the things. Few are under
// way or wait to be taken at any time. The first error of take ends it.
func inOrder[In, Out any](things []In, work func(In) Out, take func(Out) error) error {
	stop := make(chan struct{})
	defer close(stop)
	coming := make(chan chan Out, 2*runtime.GOMAXPROCS(0))
	go func() {
		defer close(coming)
		for _, thing := range things {
			one := make(chan Out, 1)
			select {
			case coming <- one:
				go func() { one <- work(thing) }()
			case <-stop:
				return
			}
		}
	}()
	for one := range coming {
		if err := take(<-one); err != nil {
			return err
		}
	}
	return nil
}
