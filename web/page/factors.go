package page

import (
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	. "boxwright/web/page/markup"
)

// Factors is the fold with an area's assumed numbers, each a field of its own.
func Factors(p *Page, area, lead string) Part {
	u := &p.Q.Draft.Unit
	set := 0
	for _, a := range u.Factors {
		if strings.HasPrefix(a.Factor, area+".") {
			set++
		}
	}
	fields := Each(config.Factors(), func(_ int, f config.Factor) Part {
		if !strings.HasPrefix(f.Code, area+".") {
			return nil
		}
		value := ""
		if i := slices.IndexFunc(u.Factors, func(a config.Assumed) bool { return a.Factor == f.Code }); i >= 0 {
			value = exactly(p, u.Factors[i].Value, f.Unit)
		}
		usual, source := f.Usual, f.Source
		if i := slices.IndexFunc(p.Q.Edition.Cat.Plant.Factors, func(a config.Assumed) bool {
			return a.Factor == f.Code
		}); i >= 0 {
			usual, source = p.Q.Edition.Cat.Plant.Factors[i].Value, "the plant's own"
		}
		if source == "" {
			source = string(config.CommonPractice)
		}
		return Number(p, "assumed-"+f.Code, f.Label, value, p.UnitName(f.Unit), "Blank = "+exactly(p, usual, f.Unit)+
			", "+source)
	})
	title := "Assumed factors"
	if set > 0 {
		title += ", " + Count(set, "one set for this unit", "set for this unit")
	}
	return Fold("factors-"+area, title, El("p", Class("how"), Text(lead)), El("div", Class("fields"), fields))
}

// exactly is a number for a field: lengths in the reader's system, others as they are.
func exactly(p *Page, v float64, unit string) string {
	if unit == quantity.Inch {
		return p.Plain(v, unit)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
