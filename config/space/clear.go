package space

import (
	"math"

	"boxwright/config/body"
	"boxwright/config/quantity"
)

// ends are the clear lengths ahead of the cots and behind them.
type ends struct {
	seat, door           quantity.Length // from attendant seat to cot, from cot to rear doors
	seatKnown, doorKnown bool
	assumed              string // seat or cot, where its size is assumed
}

// ends measures them where they are least: the attendant's seat locked where it stands
// foremost, the rear doors shut.
func (b *vehicle) ends() (e ends) {
	doors := math.Inf(1)
	var cots, seats []body.Part
	for _, p := range b.model.Parts {
		switch {
		case p.ID == "door/rear":
			doors = p.X0
		case p.Kind == "cot":
			cots = append(cots, p)
		}
	}
	for _, s := range b.model.Seats {
		if s.Kind == "attendant" {
			if p, ok := b.model.SeatForward(&s); ok {
				seats = append(seats, p)
			}
		}
	}
	e.seat, e.door = quantity.Length(math.Inf(1)), quantity.Length(math.Inf(1))
	for _, c := range cots {
		if c.About {
			e.assumed = c.Label
		}
		if !math.IsInf(doors, 1) {
			e.door, e.doorKnown = min(e.door, quantity.Length(doors-c.X1)), true
		}
		for _, s := range seats {
			if s.Y1 > c.Y0 && s.Y0 < c.Y1 && s.X0 < c.X0 {
				e.seat, e.seatKnown = min(e.seat, quantity.Length(c.X0-s.X1)), true
			}
		}
	}
	return e
}
