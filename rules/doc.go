// Package rules holds what a rule is: pack files, their inheritance, their
// limits and tables, and the compiled rules that a review runs.
package rules
