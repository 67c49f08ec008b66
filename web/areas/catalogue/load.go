package catalogue

import (
	"boxwright/web/page"
	"boxwright/web/page/markup"
	"boxwright/web/session"
)

func load(s *session.Session, p *page.Page, _ *session.Worked) func() markup.Part {
	v := &Page{Page: p, Keeper: loadKeeper(s)}
	return func() markup.Part { return draw(v) }
}

// loadKeeper is what the catalogue's own part shows.
func loadKeeper(s *session.Session) *Keeper {
	goOn(s)
	k := &s.Memory.Keep
	v := &Keeper{InUse: s.Memory.Edition, Refused: k.Refused, Problems: k.Problems, Diff: k.Diff, Touched: k.Touched,
		More:   k.More,
		Before: k.From.Ed, OwnKey: s.Req.Key}
	if b := k.Candidate(); b != nil {
		v.Candidate = b.Ed
	}
	if k.Linting != nil {
		name, done, of := k.Linting.Progress()
		v.Linting, v.Progress, v.Done, v.Of = true, progress(name, done, of), done, of
	}
	if k.Linted == k.Looked().Ed {
		v.Linted, v.Findings, v.Stopped = true, k.Findings, k.Stopped
	}
	return v
}
