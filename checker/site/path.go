package site

// hung gives places of the plan the heights of a string pulled tight over
// stations. Its ends have those of the first and the last, even where the string
// leaves them straight up.
func hung(plan []vec, p *profile) []vec {
	last, along := len(plan)-1, 0.0
	for i := range plan {
		if i > 0 {
			along += plan[i].onPlan().minus(plan[i-1].onPlan()).length()
		}
		plan[i][2] = p.heightAt(along)
	}
	plan[0][2], plan[last][2] = p.list[0].height, p.list[p.n-1].height
	return plan
}

// bent leaves out the points of a path that repeat the one before, and those at
// which it does not bend.
func bent(path []vec) [][3]float64 {
	var kept []vec
	for _, p := range path {
		n := len(kept)
		switch {
		case n > 0 && p.minus(kept[n-1]).length() < rounding:
			continue
		case n > 1 && (segment{kept[n-2], p}).toPoint(kept[n-1]).gap < rounding:
			kept[n-1] = p
			continue
		}
		kept = append(kept, p)
	}
	list := make([][3]float64, len(kept))
	for i, p := range kept {
		list[i] = p
	}
	return list
}
