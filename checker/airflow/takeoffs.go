package airflow

// takeoffs leave a round duct at 90 or 45 degrees.
var takeoffs = []KnownFitting{
	{Name: "tee, 45 degree entry, branch", Coefficient: 0.64, Source: handbook + ", table 10", Provenance: Seen, Remark: oneRatio},
	{Name: "tee, plain, branch", Coefficient: 1.80, Source: handbook + ", table 10", Provenance: Seen, Remark: oneRatio + "; the reference site's 0.3 is not for plain tees"},
	{Name: "tee, conical, branch", Coefficient: 0.87, Source: handbook + ", table 10", Provenance: Seen, Remark: oneRatio},
	{Name: "tee, conical, tapered into body, branch", Coefficient: 1.10, Source: handbook + ", table 10", Provenance: Seen, Remark: oneRatio},
	{Name: "tee, straight through", Coefficient: 0.15, Source: handbook + ", table 10", Provenance: Seen, Remark: oneRatio},
	{Name: "wye 45 and elbow 45, branch", Coefficient: 0.74, Source: handbook + ", table 10", Provenance: Seen, Remark: oneRatio},
	{Name: "wye 45, plain, branch", Coefficient: 0.70, Source: handbook + ", table 11", Provenance: Seen, Remark: oneRatio},
	{Name: "wye 45, conical, tapered into body, branch", Coefficient: 0.45, Source: handbook + ", table 11", Provenance: Seen, Remark: oneRatio},
	{Name: "wye 45, conical, with reduction, branch", Coefficient: 0.50, Source: handbook + ", table 11", Provenance: Seen, Remark: oneRatio},
	{Name: "wye, straight through", Coefficient: 0.15, Source: handbook + ", table 11", Provenance: Seen, Remark: oneRatio},
}

// ductEnds are where air enters or leaves a duct without hood, grille or valve.
var ductEnds = []KnownFitting{
	{Name: "open exit", Coefficient: 1, Source: handbook + ", table 20, and " + referenceSite, Provenance: Seen},
	{Name: "open entry", Coefficient: 0.35, Source: referenceSite, Provenance: Seen, Remark: "coarse; between a flush and a rounded entry"},
	{Name: "flush entry", Coefficient: 0.5, Source: "handbooks of fluid mechanics", Provenance: Memory, Remark: "duct ends flush with a wall or flange"},
	{Name: "sharp entry", Coefficient: 1, Source: "handbooks of fluid mechanics", Provenance: Memory, Remark: "duct ends free in the air; about 1"},
	{Name: "bellmouth entry", Coefficient: 0.03, Source: handbook + ", table 20", Provenance: Seen, Remark: "radius about a fifth of the diameter"},
}

var others = []KnownFitting{
	{Name: "tapered reduction", Coefficient: 0.06, Source: handbook + ", table 14; SMACNA HVAC Systems Duct Design, 1990, chapter 7", Provenance: Seen, Remark: "the largest of four examples, 0.04 to 0.06"},
	{Name: "butterfly damper, open", Coefficient: 0.2, Source: "tables of duct fittings", Provenance: Memory, Remark: "about; partly closed it can exceed 10"},
}
