package main

import "strings"

const columns = 80

// wrap breaks a text into lines of at most 80 columns, each set in by some.
func wrap(text string, indent int) string {
	in := strings.Repeat(" ", indent)
	var lines []string
	line := in
	for _, word := range strings.Fields(text) {
		if line != in && len([]rune(line))+1+len([]rune(word)) > columns {
			lines = append(lines, line)
			line = in
		}
		if line != in {
			line += " "
		}
		line += word
	}
	return strings.Join(append(lines, line), "\n")
}
