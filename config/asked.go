package config

import "strings"

// Asked is how purchasers ask for something the catalogue offers, beside its own
// label and sentence: what requirement lists are matched with.
type Asked struct {
	ID    string   `json:"id"`              // of an option, a group, a chassis or a body
	Names []string `json:"names,omitempty"` // what it is called; a line that holds all words of one speaks of it
	True  []string `json:"true,omitempty"`  // what else is true of it: materials, standards, amounts with their unit
	Never []string `json:"never,omitempty"` // what it is free of: "wood"
}

// mostAsked bounds the words of one entry, in bytes.
const mostAsked = 4000

// asked checks that each entry is of something offered, and says something.
func (k *checker) asked() {
	ids(k, "asked", k.c.Asked, func(a *Asked) string { return a.ID }, false)
	for i := range k.c.Asked {
		a := &k.c.Asked[i]
		where := at("asked", i, a.ID)
		bytes := 0
		for _, list := range [][]string{a.Names, a.True, a.Never} {
			for _, text := range list {
				bytes += len(text)
				if strings.TrimSpace(text) == "" {
					k.add("missing", where, "one of its texts is empty")
				}
			}
		}
		if bytes > mostAsked {
			k.add("too-long", where, "has %d bytes; the most is %d", bytes, mostAsked)
		}
	}
}
