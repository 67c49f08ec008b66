package solve

// The queue is a binary heap of variables, the one most often in recent
// conflicts first.

func (s *Solver) before(a, b int32) bool { return s.activity[a] > s.activity[b] }

func (s *Solver) push(v int32) {
	if s.queuePos[v] >= 0 {
		return
	}
	s.queuePos[v] = int32(len(s.queue))
	s.queue = append(s.queue, v)
	s.up(s.queuePos[v])
}

func (s *Solver) pop() int32 {
	top := s.queue[0]
	last := s.queue[len(s.queue)-1]
	s.queue = s.queue[:len(s.queue)-1]
	s.queuePos[top] = -1
	if len(s.queue) > 0 {
		s.queue[0] = last
		s.queuePos[last] = 0
		s.down(0)
	}
	return top
}

func (s *Solver) up(i int32) {
	x := s.queue[i]
	for i > 0 {
		parent := (i - 1) / 2
		if !s.before(x, s.queue[parent]) {
			break
		}
		s.queue[i] = s.queue[parent]
		s.queuePos[s.queue[i]] = i
		i = parent
	}
	s.queue[i] = x
	s.queuePos[x] = i
}

func (s *Solver) down(i int32) {
	n := int32(len(s.queue))
	x := s.queue[i]
	for {
		c := 2*i + 1
		if c >= n {
			break
		}
		if c+1 < n && s.before(s.queue[c+1], s.queue[c]) {
			c++
		}
		if !s.before(s.queue[c], x) {
			break
		}
		s.queue[i] = s.queue[c]
		s.queuePos[s.queue[i]] = i
		i = c
	}
	s.queue[i] = x
	s.queuePos[x] = i
}

// bump marks a variable as part of a conflict.
func (s *Solver) bump(v int32) {
	s.activity[v] += s.bumpBy
	if s.activity[v] > 1e100 {
		for i := range s.activity {
			s.activity[i] *= 1e-100
		}
		s.bumpBy *= 1e-100
	}
	if s.queuePos[v] >= 0 {
		s.up(s.queuePos[v])
	}
}
