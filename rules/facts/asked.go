package facts

// Words that rules ask by. The language takes no other text for them.

// SideWord names the side of a ventilator that one fan moves air through.
type SideWord string

// Values lists the sides.
func (SideWord) Values() []string { return []string{supplySide.name, extractSide.name} }

func (w SideWord) side() side {
	if string(w) == extractSide.name {
		return extractSide
	}
	return supplySide
}

// SettingWord names a setting of a ventilator.
type SettingWord string

// Values lists the settings.
func (SettingWord) Values() []string { return []string{normal, "low", "boost", "maximum"} }

// StateWord names an operating state of the ventilators of a house.
type StateWord string

// Values lists the states.
func (StateWord) Values() []string {
	var names []string
	for _, s := range states {
		names = append(names, s.name)
	}
	return names
}

// state finds what the word names; where no unit has it the house stays at normal.
func (w StateWord) state(f *Facts) state {
	for _, s := range states {
		if s.name == string(w) && f.can(s) {
			return s
		}
	}
	return states[0]
}
