package expression

// once tells what comes for the first time. Most often that is little, and looked
// through faster than looked up.
type once[T comparable] struct {
	few   [16]T
	count int
	many  map[T]bool // when there are more
}

// first tells whether a value has not come before.
func (o *once[T]) first(v T) bool {
	if o.many == nil {
		for i := range o.count {
			if o.few[i] == v {
				return false
			}
		}
		if o.count < len(o.few) {
			o.few[o.count] = v
			o.count++
			return true
		}
		o.many = map[T]bool{}
		for _, each := range o.few {
			o.many[each] = true
		}
	}
	if o.many[v] {
		return false
	}
	o.many[v] = true
	return true
}
