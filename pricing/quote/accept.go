package quote

import (
	"errors"
	"fmt"

	"boxwright/config"
)

// Bounds of trying a catalogue, in steps of a solver: what one quote may take, with so
// many more for each option, and what all may take together, whereupon the chassis
// left are not tried.
const (
	mostForQuote  = 400_000
	mostForOption = 100
	mostForTrial  = 1_500_000
)

// stepsOfQuote is what a quote takes beside its rules, and for each option of the
// catalogue and each in the unit.
const (
	stepsOfQuote  = 30_000
	stepsOfOption = 50
	stepsOfPick   = 200
)

// Accept reads a catalogue file as OpenEdition does and tries it: on each chassis a
// new quote is computed, as the page begins it. Whoever takes a catalogue in,
// builds it into a page or checks it asks here, so that all judge alike. The error
// is a config.Problems; no file makes Accept panic.
func Accept(file []byte) (*Edition, error) {
	var ed *Edition
	ps := guarded("the catalogue", func() (err error) { ed, err = OpenEdition(file); return err })
	if ps == nil {
		ps = ed.try()
	}
	if len(ps) > 0 {
		for i := range ps {
			ps[i].Where, ps[i].Text = inBrief(ps[i].Where), inBrief(ps[i].Text)
		}
		return nil, ps
	}
	return ed, nil
}

// mostSaid is how many letters of a text are said, since what is wrong with a file may
// name an id of any length.
const mostSaid = 300

func inBrief(text string) string {
	if len(text) <= mostSaid {
		return text
	}
	letters := []rune(text)
	if len(letters) <= mostSaid {
		return text
	}
	return string(letters[:mostSaid]) + "…"
}

// try computes a quote on every chassis, until one has none.
func (ed *Edition) try() config.Problems {
	day, most := ed.Cat.ValidFrom, mostForQuote+mostForOption*int64(len(ed.Cat.Options))
	ed.Rules.Work = most / 2
	defer func() { ed.Rules.Work = 0 }()
	spent := int64(0)
	for i := range ed.Cat.Chassis {
		if spent > mostForTrial {
			break
		}
		id := ed.Cat.Chassis[i].ID
		where := fmt.Sprintf("chassis[%d] %q", i, id)
		before := ed.Rules.Steps()
		took := func() int64 { return ed.Rules.Steps() - before }
		picks := 0
		ps := guarded(where, func() error {
			d := Begin(ed, id, "", day)
			picks = len(d.Unit.Picks)
			if took() > most { // nor is it computed any further
				return nil
			}
			_, err := Compute(ed, d)
			return err
		})
		if len(ps) > 0 {
			return ps
		}
		if took() > most {
			return config.Problems{{Code: "catalogue.too-much-work", Where: where,
				Text: "working out what goes together on it takes too long for a page: the rules count among too many " +
					"options, or there are too many of them"}}
		}
		spent += took() + stepsOfQuote + stepsOfOption*int64(len(ed.Cat.Options)) + stepsOfPick*int64(picks)
	}
	return nil
}

// guarded does something with a catalogue and gives what is the matter with it, a
// panic among it.
func guarded(where string, do func() error) (ps config.Problems) {
	defer func() {
		if fault := recover(); fault != nil {
			ps = config.Problems{{Code: "catalogue.no-quote", Where: where,
				Text: fmt.Sprintf("no quote can be computed: the program fails at it (%v)", fault)}}
		}
	}()
	err := do()
	if err == nil || errors.As(err, &ps) {
		return ps
	}
	return config.Problems{{Code: "catalogue.no-quote", Where: where,
		Text: fmt.Sprintf("no quote can be computed: %v", err)}}
}
