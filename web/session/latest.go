package session

// latest keeps what belongs to the few keys that were asked for last.
type latest[V any] struct{ list []keyed[V] } // the last one asked for first

type keyed[V any] struct {
	key   string
	value V
}

// mostLatest keys are kept: what is being worked on, and what undo, redo and a look
// at another unit go back to.
const mostLatest = 4

// get is the value of a key; make gives it where it is not kept.
func (l *latest[V]) get(key string, make func() (V, error)) (V, error) {
	found := keyed[V]{key: key}
	for i, k := range l.list {
		if k.key == key {
			found = k
			l.list = append(l.list[:i:i], l.list[i+1:]...)
			l.list = append([]keyed[V]{found}, l.list...)
			return found.value, nil
		}
	}
	var err error
	if found.value, err = make(); err == nil {
		l.list = append([]keyed[V]{found}, l.list[:min(len(l.list), mostLatest-1)]...)
	}
	return found.value, err
}
