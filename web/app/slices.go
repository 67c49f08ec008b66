package app

import (
	"iter"

	"boxwright/web/session"
)

// idleWork is a request that nobody waits for, answered slice by slice: between two of
// them the core is free for a press, which ends it.
type idleWork struct {
	asked []byte // the request
	next  func() (struct{}, bool)
	stop  func()
	shown shownRegions // as they were before
	reply *Reply
	err   error
}

// goOn does the next slice of what is asked for, and answers at the end of the last.
func (a *App) goOn(w *idleWork) (*Reply, error) {
	a.idle = nil // where it panics, it is over
	if _, paused := w.next(); paused {
		a.idle = w
		return &Reply{Working: true, Partial: true}, nil
	}
	return w.reply, w.err
}

// begin has a request ready to be answered in slices.
func (a *App) begin(asked []byte, req *session.Request) *idleWork {
	w := &idleWork{asked: asked, shown: a.shown}
	mark := a.memory.Mark()
	w.next, w.stop = iter.Pull(func(pause func(struct{}) bool) {
		pauses := a.memory.Edition.Rules.Pauses()
		pauses.Begin(a.Slice, func() {
			if !pause(struct{}{}) {
				panic(pressed{})
			}
		})
		defer func() {
			pauses.End()
			if p := recover(); p != nil {
				a.memory.GaveUp(mark)
				if _, is := p.(pressed); !is {
					panic(p)
				}
			}
		}()
		w.reply, w.err = a.serve(req)
	})
	return w
}

// pressed ends the work in slices where it is: nothing of it is kept that is not at its
// end.
type pressed struct{}

// giveUp ends what nobody waits for.
func (a *App) giveUp() {
	w := a.idle
	if w == nil {
		return
	}
	a.idle = nil
	w.stop()
	a.shown = w.shown
}
