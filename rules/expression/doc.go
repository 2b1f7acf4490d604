// Package expression is the language in which rule packs say when a rule
// applies, what it requires, and what its messages print.
package expression
