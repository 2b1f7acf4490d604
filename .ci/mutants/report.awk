# Reads .ci/mutants/equivalent and the tool's list of mutants, prints the count of a
# package, the survivors that nothing explains, and explanations that nothing needs.

# the entries of the list: file and kind, the line with a mark before the operator,
# and a reason, without which an entry does not count
FNR == NR {
  if ($0 ~ /^#/ || $0 == "") step = 0
  else if (++step == 1) key = $1 " " $2
  else if (step == 2) key = key " " trim($0)
  else {
    entry[key]
    if (index(key, package "/") == 1) needless[key]
  }
  next
}

$1 == "KILLED" { killed++ }
$1 == "TIMED" { timed++ }
$1 == "NOT" && $2 == "VIABLE" { unviable++ }
$1 == "NOT" && $2 == "COVERED" { left++ }
$1 == "LIVED" {
  lived++
  split($4, at, ":")
  file = package "/" at[1]
  line = marked(file, at[2], at[3])
  key = file " " $2 " " line
  delete needless[key]
  if (key in entry) explained++
  else survivors[++n] = sprintf("  %s:%d:%d %s\n    %s", file, at[2], at[3], $2, line)
}

END {
  found = killed + timed
  printf "%s: %d killed (%d of them at the limit of time), %d timed out, %d lived (%d of them equivalent), %d not viable",
    package, killed, stopped, timed, lived, explained, unviable
  if (left) printf ", %d %s", left, sample ? "not in the sample" : "not tried"
  printf "; score %.1f %%\n", found + n ? 100 * found / (found + n) : 0
  for (i = 1; i <= n; i++) print survivors[i]
  if (!sample) for (key in needless) { print "  listed as equivalent, but does not live: " key; stale++ }
  exit n + stale + (sample ? 0 : left) > 0
}

# marked gives a line of a file with a mark before its column, which counts bytes; a
# bare break or continue is told by the line before it.
function marked(file, line, column,   text, before, i) {
  for (i = 0; i < line; i++) {
    before = text
    getline text < file
  }
  close(file)
  text = trim(substr(text, 1, column - 1) "¦" substr(text, column))
  return text ~ /^¦(break|continue)$/ ? trim(before) " " text : text
}

function trim(text) {
  gsub(/^[ \t]+|[ \t]+$/, "", text)
  return text
}
