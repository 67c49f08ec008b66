package catalogue

import (
	"strconv"
	"testing"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing"
	"boxwright/pricing/editions"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page/markup"
	"boxwright/web/page/pagetest"
	"boxwright/web/session"
)

func TestListsThatAreCutShort(t *testing.T) {
	ed := quotetest.Demo(t)
	p := &Page{Page: pagetest.Of(t, ed, "cut-14500-158-gas", false)}
	kept := func(x *editions.Touch) string {
		p.Keeper = &Keeper{
			Diff: &editions.Comparison{From: ed, To: ed}, Touched: []session.Touched{{ID: "k", Name: "Kept", Touch: x}},
		}
		return markup.Many(keptRow(p, &p.Keeper.Touched[0], 0)...).String()
	}
	changed := func(n int, added bool) (list []rules.Change) {
		for i := range n {
			ed.Cat.Options[i].Label = pagetest.Numbered(i)
			list = append(list, rules.Change{Option: ed.Cat.Options[i].ID, Added: added})
		}
		return list
	}
	more := func(int) string { return "; and more" }
	for _, l := range []pagetest.List{
		{Name: "what a kept quote uses", Most: 6, More: more, Draw: func(n int) string {
			return kept(&editions.Touch{Uses: pagetest.Texts(n)})
		}},
		{Name: "what a kept quote loses", Most: 6, More: more, Draw: func(n int) string {
			return kept(&editions.Touch{Lost: pagetest.Texts(n)})
		}},
		{Name: "what comes into a kept quote", Most: 6, More: more, Draw: func(n int) string {
			return kept(&editions.Touch{Changes: changed(n, true)})
		}},
		{Name: "what goes out of a kept quote", Most: 6, More: more, Draw: func(n int) string {
			return kept(&editions.Touch{Changes: changed(n, false)})
		}},
		{Name: "why a kept quote stops", Most: 4, Draw: func(n int) string {
			var stops []config.Finding
			for _, text := range pagetest.Texts(n) {
				stops = append(stops, config.Finding{Code: "weight.x", Severity: config.Stop, Text: text + "."})
			}
			return kept(&editions.Touch{Now: &editions.Figures{Stopped: true}, Stops: stops})
		}},
		{Name: "what going through the rules found", Most: mostFindings, Draw: func(n int) string {
			var list []config.Finding
			for _, text := range pagetest.Texts(n) {
				list = append(list, config.Finding{Code: "catalogue.x", Severity: config.Warn, Text: text + "."})
			}
			return findings(p, list, "").String()
		}, More: func(rest int) string { return "and " + strconv.Itoa(rest) + " more." }},
		{Name: "rows of changed prices", Most: 300, Draw: func(n int) string {
			diff := &editions.Comparison{From: ed, To: ed}
			for _, text := range pagetest.Texts(n) {
				diff.Prices = append(diff.Prices, editions.Price{Key: "key", Label: text, To: new(pricing.Amount)})
			}
			p.Keeper = &Keeper{Diff: diff}
			return changedParts(p).String()
		}, More: func(rest int) string { return "and " + strconv.Itoa(rest) + " more" }},
	} {
		l.IsCutShort(t)
	}
}
