// Package expression is the language in which rule packs say when a rule
// applies, what it requires, and what its messages print.
//
// # Values
//
// A value is a truth (true or false), a plain number, text, a quantity (length,
// flow, temperature, ...), a thing of the design, or a list of values of one
// kind. Whole numbers and fractions are one kind of number. Kinds are settled
// when a pack is loaded: what does not fit is a mistake with its place, never a
// surprise while a design is reviewed.
//
//	10 ft   12 ft 4 in   3/8 in   4 1/2 in   80 cfm   0.03 cfm/ft2   0.1 in w.c.
//	65 %    1/4 in/ft    R-8      -5 F       20 min   1_000 mm
//	5       2.5          -1       true       'text'   "text"         [1 ft, 3 m]
//
// Units are those of the design file. A sign directly before a quantity belongs
// to it. Inches are "in" or "inch"; before a list, "in" is the operator, so
// `3 in [1, 3]` asks and `36 in >= x` measures. A plain number never stands
// where a quantity belongs: `x >= 10` is a mistake when x is a length.
//
// # Names
//
//	rooms, dwelling ...    parts of the design: the roots of the vocabulary
//	intake ...             the subjects of the rule, as its `each` names them
//	intake.wall.height     keys of a thing; a link leads on to the thing it names
//	limit.name             a figure of the pack
//	table.name(a, b)       a look-up in a table of the pack
//	let x = a + b; x > c   a name of one's own, once, for the rest of the expression
//	distance(a, b)         functions of the vocabulary
//	ducts[0]               an element of a list, counted from 0
//
// Keys are spelled as in the design file. Names in Go, methods, and anything
// else of the program are out of reach.
//
// # Operators, from loose to tight
//
//	let x = a; b
//	c ? a : b
//	or
//	and
//	== != < <= > >=   in   not in   contains   startsWith   endsWith
//	+ -
//	not
//	* /
//	- (negative)
//	??
//
// Because not is tight, a negated comparison wants parentheses: not (a == b).
// Other operators beside ?? want them too: (a ?? b) > c. Comparisons do not
// chain: write a < b and b < c.
//
// Comparisons include their limit as they are written, and take values for equal
// that differ by less than a billionth, so 10 ft is 3048 mm. == and != compare
// values of any kind but lists; on things they ask for the same thing. A text
// from a fixed set of words (such as .kind) can be compared only with words of
// that set, and a function that takes such a word takes no other text. `x in
// list` and `x not in list` take a written list or any other.
//
// Arithmetic knows dimensions. Quantities of one kind add, subtract, and scale
// by numbers and ratios; one divided by another is a ratio. Beyond that:
//
//	length * length = area             length * area = volume
//	velocity * area = flow             air change rate * volume = flow
//	fan efficacy * power = flow        flow * duration = volume
//	velocity * duration = length       pressure * flow = power
//	slope * length = length            length / slope = length
//	air change rate * duration = number
//	temperature - temperature = temperature difference
//	temperature +- temperature difference = temperature
//
// and each product the other way round and divided by either factor. (Slope and
// air change times duration only as written, in either order.) Sound levels are
// only compared. A ratio meets computed numbers, and slopes: `count(a, .x) /
// len(a) >= 50 %`; a number that is written out needs its % sign, 100 % - share.
//
// # Functions
//
//	all(list, c)  any(list, c)  none(list, c)  one(list, c)   truths
//	count(list, c)  sum(list, v)  filter(list, c)  map(list, v)
//	len(list)  first(list)  last(list)
//	min(a, b, ...)  max(a, b, ...)  abs(a)      numbers and quantities
//	min(list)  max(list)  sum(list)  mean(list)
//	round(n)  floor(n)  ceil(n)                 numbers and ratios, to whole numbers
//	known(key)                                  whether the design gives a key
//
// In c and v, # is the element and .key a key of it: all(ducts, .length < 3 m).
// An inner list hides the outer element; name it: all(rooms, let r = #;
// any(ducts, .room == r)).
//
// # What is not known
//
// A key that the design may leave out makes what needs it unknown. Logic is
// three-valued (Kleene): `and` is false and `or` is true when one side settles
// it, whatever the other side and in whatever order; the same goes for not, ?:,
// all, any, none, one, let. Any other value that needs an unknown value is
// unknown: count(list, c) is unknown as soon as c is for one element. An
// explanation names every input that is missing, on both sides and in all
// elements.
//
// known(a.b.c) is true when every step of the way is given. a.b ?? x is a.b when
// it is given, else x; a ?? b ?? x takes the first that is given. Both turn a
// missing input into a fact, so that a rule can pass without it: use them where
// absence means something.
//
// A value can also be for a person to judge: a limit that is declared but not
// set, a table that ends, a function that says so, division by zero, the first
// element of nothing, a result too large to hold. It makes its surroundings
// unknown in the same way, with its reason (Undetermined).
//
// A cell of a table may be without limit, or not permitted; these compare as
// greater and smaller than everything. They may be added to, subtracted from, and
// scaled by positive numbers; any other arithmetic with them is undetermined.
//
// # Lists that a rule ranges over
//
// A List is a root, a list of an earlier subject, or filter(...) of one. Its
// condition may read only keys that every design gives: filtering by another
// would pass over things in silence. Such a condition belongs into `when`.
//
// # Messages
//
// A Template is text with expressions in braces: "{intake.id} is {distance(intake,
// exhaust)} away". {{ and }} are braces. Quantities are printed in the units of
// the design. What is not known is named: (not given: flow of intake "fresh").
//
// # Limits of size
//
// Packs are not trusted. An expression has at most 4096 bytes and 400 parts, a
// text in it 256 bytes. An evaluation takes at most 100000 steps, one for each
// element of a list and each call of a function, and a Scope has a pool of steps
// for all of them. There is no joining of text, no pattern, no range, no clock.
//
// # How it works
//
// An expression is scanned for quantities, parsed by expr-lang/expr, and settled
// into terms by a compiler of our own: expr's type checking overlooks arguments
// of calls once a tree has been altered. Terms are lowered to calls of host
// functions that expr's machine runs, for speed; where the machine meets an
// unknown value, and to explain, the terms are evaluated in three-valued logic.
// Both share every operation, and tests hold them together.
package expression
