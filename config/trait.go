package config

import (
	"slices"
	"strings"
)

// Trait is one way in which things are mounted, made, fed or worked, with the words that
// purchasers have for it. Of each kind a thing has the traits that the catalogue names and no
// others: what is mounted flush is not mounted on the surface.
type Trait struct {
	ID   string `json:"id"`
	Kind string `json:"kind"`           // see TraitKinds
	Says string `json:"says,omitempty"` // the sentence that is added to those of an option; none where each says it
	// how purchasers put it: words in any order, "/" between those of which one stands there, "?"
	// behind those that may be missing, hyphens within one: "switched front-console/dash panel?"
	Asked []string `json:"asked"`
	Of    []string `json:"of"`             // options and groups of which it is true
	But   []string `json:"but,omitempty"`  // options of these groups of which it is not
	Told  []string `json:"told,omitempty"` // options of which it is true whose own sentence says it
}

// Feature is the kind of those traits of which a thing may have any.
const Feature = "feature"

// TraitKinds are what traits are of.
var TraitKinds = []string{"mounting", "fastening", "place", "control", "supply", "circuit", "material", "finish",
	"motion", "opening", "sealing", "marking", Feature}

// TraitsOf are those of an option, by their places in the list.
func (c *Catalogue) TraitsOf(o *Option) []int {
	out := slices.Clone(c.index.traits[o.ID])
	for _, i := range c.index.traits[o.Group] {
		if !slices.Contains(c.Traits[i].But, o.ID) && !o.LeavesOut() && !slices.Contains(o.Tags, "remount") {
			out = append(out, i)
		}
	}
	slices.Sort(out)
	return out
}

// Sentences are what is said of an option in a quote: its own sentence, what it is counted as and its traits.
func (c *Catalogue) Sentences(o *Option) string {
	out := []string{o.Spec}
	if o.Counted != "" {
		out = append(out, o.Counted)
	}
	return c.withTraits(o, out)
}

// Required are the sentences of an option that a purchaser can require: what a part is counted as is none.
func (c *Catalogue) Required(o *Option) string { return c.withTraits(o, []string{o.Spec}) }

func (c *Catalogue) withTraits(o *Option, out []string) string {
	for _, i := range c.TraitsOf(o) {
		if t := &c.Traits[i]; t.Says != "" && !slices.Contains(t.Told, o.ID) {
			out = append(out, t.Says)
		}
	}
	return strings.Join(out, " ")
}

// traits checks that each is of a known kind and true of something.
func (k *checker) traits() {
	ids(k, "traits", k.c.Traits, func(t *Trait) string { return t.ID }, false)
	for i := range k.c.Traits {
		t := &k.c.Traits[i]
		where := at("traits", i, t.ID)
		k.oneOf(where+" kind", t.Kind, TraitKinds...)
		if len(t.Asked) == 0 || len(t.Of) == 0 {
			k.add("missing", where, "needs how it is asked for, and of what it is true")
		}
	}
}
