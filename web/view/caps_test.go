package view

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/rules"
	"boxwright/pricing"
	"boxwright/pricing/editions"
	"boxwright/web/view/markup"
)

// numbers are the things numbered from 1 that a text names.
func numbers(html string) (list []int) {
	seen := map[int]bool{}
	for _, m := range regexp.MustCompile(`Thing (\d+)\b`).FindAllStringSubmatch(html, -1) {
		if i, _ := strconv.Atoi(m[1]); !seen[i] {
			seen[i] = true
			list = append(list, i)
		}
	}
	return list
}

func numbered(i int) string { return fmt.Sprintf("Thing %d", i+1) }

// A list that is cut short shows the first so many, and says how many more
// there are where that can be said; one that fits is whole and says nothing.
func TestListsThatAreCutShort(t *testing.T) {
	ed := demo(t)
	kept := func(p *Page, x *editions.Touch) string {
		p.Keeper = &Keeper{Diff: &editions.Comparison{From: ed, To: ed}, Kept: []Kept{{ID: "k",
			Name: "Kept", Touch: x}}}
		return markup.Many(keptRow(p, &p.Keeper.Kept[0], 0)...).String()
	}
	texts := func(n int) (list []string) {
		for i := range n {
			list = append(list, numbered(i))
		}
		return list
	}
	stops := func(n int) (list []config.Finding) {
		for i := range n {
			list = append(list, config.Finding{Code: "weight.x", Severity: config.Stop, Text: numbered(i) + "."})
		}
		return list
	}
	changed := func(n int, added bool) (list []rules.Change) {
		for i := range n {
			ed.Cat.Options[i].Label = numbered(i)
			list = append(list, rules.Change{Option: ed.Cat.Options[i].ID, Added: added})
		}
		return list
	}
	for _, c := range []struct {
		name string
		most int
		draw func(p *Page, n int) string
		more func(rest int) string // what is said of the rest
	}{
		{"what is to settle", 6, func(p *Page, n int) string {
			p.Q.Findings = stops(n)
			return standingFindings(p).String()
		}, func(rest int) string {
			return "and " + strconv.Itoa(rest) + map[bool]string{true: " more, in its area",
				false: " more, in their areas"}[rest == 1]
		}},
		{"what a kept quote uses", 6, func(p *Page, n int) string {
			return kept(p,
				&editions.Touch{Uses: texts(n)})
		}, func(int) string { return "; and more" }},
		{"what a kept quote loses", 6, func(p *Page, n int) string {
			return kept(p,
				&editions.Touch{Lost: texts(n)})
		}, func(int) string { return "; and more" }},
		{"what comes into a kept quote", 6, func(p *Page, n int) string {
			return kept(p,
				&editions.Touch{Changes: changed(n, true)})
		}, func(int) string { return "; and more" }},
		{"what goes out of a kept quote", 6, func(p *Page, n int) string {
			return kept(p,
				&editions.Touch{Changes: changed(n, false)})
		}, func(int) string { return "; and more" }},
		{"why a kept quote stops", 4, func(p *Page, n int) string {
			return kept(p, &editions.Touch{Is: &editions.Figures{Stopped: true}, Stops: stops(n)})
		}, nil},
		{"what choices add to a step", 4, func(p *Page, n int) string {
			s := leadtime.Step{Label: "Weld"}
			for i := range n {
				s.Added = append(s.Added, leadtime.Added{Label: numbered(i), Hours: 2})
			}
			p.Q.Plan.Steps = []leadtime.Step{s}
			return steps(p).String()
		}, func(rest int) string { return " and " + strconv.Itoa(rest) + " more" }},
		{"choices that delay", 12, func(p *Page, n int) string {
			p.Delays = nil
			for i := range n {
				ed.Cat.Options[i].Label = numbered(i)
				p.Delays = append(p.Delays, leadtime.Delay{Option: ed.Cat.Options[i].ID, Days: float64(90 - i)})
			}
			return delays(p).String()
		}, nil},
		{"options found by a word", 12, func(p *Page, n int) string {
			for i := range ed.Cat.Options {
				ed.Cat.Options[i].Spec = ""
			}
			found := 0
			for i := range ed.Cat.Options {
				if o := &ed.Cat.Options[i]; found < n && p.shown(o) {
					o.Spec, o.Label = "Sought word", numbered(found)
					found++
				}
			}
			p.State.Find = "sought word"
			return wishes(p).String()
		}, nil},
		{"rows of changed prices", 300, func(p *Page, n int) string {
			diff := &editions.Comparison{From: ed, To: ed}
			for i := range n {
				diff.Prices = append(diff.Prices, editions.Price{Key: "key", Label: numbered(i),
					To: new(pricing.Amount)})
			}
			p.Keeper = &Keeper{Diff: diff}
			return changedParts(p).String()
		}, func(rest int) string { return "and " + strconv.Itoa(rest) + " more" }},
	} {
		p := pageOf(t, ed, "cut-14500-158-gas", false)
		for _, n := range []int{1, c.most - 1, c.most, c.most + 1, c.most + 3} {
			t.Run(c.name+" "+strconv.Itoa(n), func(t *testing.T) {
				html := c.draw(p, n)
				var want []int
				for i := range min(n, c.most) {
					want = append(want, i+1)
				}
				is := numbers(html)
				slices.Sort(is)
				assert.Equal(t, want, is, "the first %d are shown", c.most)
				if c.more == nil {
					return
				}
				if n > c.most {
					assert.Contains(t, html, c.more(n-c.most), "the rest is counted")
				} else {
					assert.NotContains(t, strings.ToLower(html), "more", "a whole list has no rest")
				}
			})
		}
	}
}
