// Package quantity reads, compares and prints the quantities of a ventilation
// design: "12 ft 4 in", "80 cfm", "-5 F", "0.25 inwc".
//
// Parse and ParseAs read one number and one unit (feet also take inches).
// Inside, every value is coherent SI in a type of its own dimension. Compare is
// the one comparison: it takes 10 ft and 3048 mm for equal. Format and
// FormatPair print for people, in either unit system.
package quantity
