package solve

// Pauses let long work rest in between. The solvers that share them stop after every
// so many steps done together and go on as if nothing had been; until then nobody may
// ask them anything else. The zero value never pauses.
type Pauses struct {
	every int64
	at    func()
	steps int64 // since the last pause
}

// Begin pauses from now on each time so many steps were done, at least 1, by calling
// at. That may panic to end the work: a solver can then be asked again.
func (p *Pauses) Begin(every int64, at func()) { *p = Pauses{every: every, at: at} }

// End ends the pauses.
func (p *Pauses) End() { *p = Pauses{} }

// Rest pauses now, between pieces of other work; it does nothing where no pauses were begun.
func (p *Pauses) Rest() {
	if p.at == nil {
		return
	}
	p.steps = 0
	p.at()
}

// PauseWith has the solver, and those forked from it, pause with the others that
// share p.
func (s *Solver) PauseWith(p *Pauses) { s.pauses, s.paused = p, s.Stats.Steps }

// rest makes the pause that is due.
func (s *Solver) rest() {
	p := s.pauses
	if p == nil || p.at == nil {
		return
	}
	p.steps += s.Stats.Steps - s.paused
	s.paused = s.Stats.Steps
	if p.steps >= p.every {
		p.Rest()
	}
}
