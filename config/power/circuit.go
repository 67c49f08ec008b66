package power

// Conductor is one run of the circuit schedule.
type Conductor struct{}

func (s *Sheet) circuits(*basis) {}
