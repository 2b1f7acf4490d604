package airflow

// miterFactors are the Reynolds numbers and factors between which MiterFactor
// runs straight.
var miterFactors = [][2]float64{
	{1e4, 1.40}, {2e4, 1.26}, {3e4, 1.19}, {4e4, 1.14}, {6e4, 1.09}, {8e4, 1.06}, {10e4, 1.04}, {14e4, 1.0},
}

// MiterFactor is by how much a round mitered elbow loses more than its
// coefficient at a Reynolds number of 140 000 and above. Between the published
// values it runs straight. Below 10 000 it stays at 1.40, which is likely low.
// Source: SMACNA HVAC Systems Duct Design, 4th edition, table A-7 C, note 2.
func MiterFactor(reynolds float64) float64 {
	first, last := miterFactors[0], miterFactors[len(miterFactors)-1]
	if reynolds >= last[0] {
		return last[1]
	}
	for i := 1; i < len(miterFactors); i++ {
		a, b := miterFactors[i-1], miterFactors[i]
		if reynolds >= a[0] && reynolds < b[0] {
			return a[1] + (b[1]-a[1])*(reynolds-a[0])/(b[0]-a[0])
		}
	}
	return first[1]
}
