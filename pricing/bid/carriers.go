package bid

import (
	"slices"

	"boxwright/pricing/bid/claims"
)

// carriedAlone reports whether a claim asks for what a thing only holds, "a cardiac monitor" of a mount for one.
func (p *profile) carriedAlone(words []string) bool {
	return p.carries && !slices.ContainsFunc(words, func(w string) bool { return carriers[w] || carrying[w] })
}

// carriedToo reports whether the part of a claim behind others asks for what a thing only holds beside it, "tablet
// mount with tablet", or for it beside what it holds, "monitor with bracket".
func (p *profile) carriedToo(before, part []claims.Token) bool {
	if !p.carries {
		return false
	}
	words, said := claims.Words(part), claims.Words(before)
	if isCarrier(part) && !slices.ContainsFunc(said, func(w string) bool { return carriers[w] }) {
		return true
	}
	if len(words) == 0 {
		return false
	}
	last := words[len(words)-1]
	return slices.Contains(said, last) && !carriers[last] && !moving[last]
}

// isCarrier reports whether the first thing that tokens speak of is what another is held by.
func isCarrier(tokens []claims.Token) bool {
	spokenOf := func(t claims.Token) bool { return t.Kind == claims.Word && t.Role == claims.Companion }
	at := slices.IndexFunc(tokens, spokenOf)
	for at >= 0 && at+1 < len(tokens) && spokenOf(tokens[at+1]) {
		at++
	}
	return at >= 0 && carriers[tokens[at].Word]
}

// carriers are what something is held by that does not come with it, and carrying is how a line speaks of them else.
var (
	carriers = wordSet("clamp bracket mount mounting holder cradle dock rack rail arm strap hook slots tray dispenser")
	carrying = wordSet("storage store stored place provision secured secure mounted held hold holds carried carry " +
		"carries space position shelf bin box pocket hung stow stowage fastened restrained restraint charging charged")
	moving = wordSet("in out up down slide") // what is said of a carrier more than once: "slide-out, latched in and out"
)
