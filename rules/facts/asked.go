package facts

// Words that rules ask by. The language takes no other text for them.

// sideWord names the side of a ventilator that one fan moves air through.
type sideWord string

// Values lists the sides.
func (sideWord) Values() []string { return []string{supplySide.name, extractSide.name} }

func (w sideWord) side() side {
	if string(w) == extractSide.name {
		return extractSide
	}
	return supplySide
}

// settingWord names a setting of a ventilator.
type settingWord string

// Values lists the settings.
func (settingWord) Values() []string { return []string{normal, "low", "boost", "maximum"} }

// stateWord names an operating state of the ventilators of a house.
type stateWord string

// Values lists the states.
func (stateWord) Values() []string {
	var names []string
	for _, s := range states() {
		names = append(names, s.name)
	}
	return names
}

// state finds what the word names; where no unit has it the house stays at normal.
func (w stateWord) state(f *Facts) state {
	all := states()
	for _, s := range all {
		if s.name == string(w) && f.can(s) {
			return s
		}
	}
	return all[0]
}
