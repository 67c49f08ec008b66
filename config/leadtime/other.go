package leadtime

import "boxwright/config"

// NineInTenOf is the day that nine in ten units such as another one are delivered by,
// when it is ordered on the day of this plan and waits for the same bays.
//
// The error is a config.Problems, as of Schedule.
func (p *Plan) NineInTenOf(u *config.Unit) (config.Date, error) {
	other, err := p.job.with(u)
	if err != nil {
		return config.Date{}, err
	}
	return other.line.finishes(other.odds(p.sim).At(.9)), nil
}
