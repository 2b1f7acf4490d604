// Package properties tests what must hold for every design: over thousands of
// invented ones (checker/design/designtest), and over every shipped one. Each
// property prints how many cases it has seen:
//
//	go test -v ./checker/properties | grep -o 'properties: .*'
//
// A case is a design and what was done to it. An invented design is asked a part of
// the rules of all shipped packs, each time another; a shipped one all of them.
package properties
