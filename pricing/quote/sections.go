package quote

import (
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
)

// Section is a numbered part of the printed quote, by which other papers point into it.
type Section string

// The sections.
const (
	PriceSection         Section = "Price"
	PaymentsSection      Section = "Payments"
	SpecificationSection Section = "Specification"
	WeightsSection       Section = "Weights"
	ElectricalSection    Section = "Electrical"
	SpaceSection         Section = "Space"
	ComplianceSection    Section = "Compliance"
	DeliverySection      Section = "Delivery"
	ServiceSection       Section = "Warranty and maintenance"
)

// Sections in the order they are printed.
var Sections = []Section{PriceSection, SpecificationSection, WeightsSection, ElectricalSection, SpaceSection,
	ComplianceSection, DeliverySection, ServiceSection, PaymentsSection}

// Heading is a section's number and name, "3 Weights".
func (s Section) Heading() string { return strconv.Itoa(slices.Index(Sections, s)+1) + " " + string(s) }

// Place is where a section stands, "Section 3, Weights".
func (s Section) Place() string {
	return "Section " + strconv.Itoa(slices.Index(Sections, s)+1) + ", " + string(s)
}

// Specified reports whether an option is printed in the specification: promises stand
// with the warranty, and what the unit has not is not printed.
func Specified(o *config.Option) bool {
	return !slices.Contains(o.Tags, ServiceTag) && !o.IsNone()
}

// Titled is the label of an option, behind that of its group where it alone does not say
// what it is of: "Structural warranty: 15 years".
func Titled(cat *config.Catalogue, id, label string) string {
	if o := cat.OptionByID(id); o != nil && !Specified(o) {
		return cat.GroupByID(o.Group).Label + ": " + label
	}
	return label
}

// Chapters are the chapters of the specification that the unit has something in, as they
// are numbered there.
func (q *Quote) Chapters() []config.Chapter {
	cat := q.Edition.Cat
	in := map[string]bool{}
	for _, p := range q.Draft.Unit.Picks {
		if o := cat.OptionByID(p.Option); o != nil && Specified(o) {
			in[cat.GroupByID(o.Group).Chapter] = true
		}
	}
	var out []config.Chapter
	for _, ch := range cat.Chapters {
		if in[ch.ID] {
			out = append(out, ch)
		}
	}
	return out
}

// ChapterHeading is a chapter's number in the specification and its name, "2.2 Body".
func (q *Quote) ChapterHeading(ch config.Chapter) string {
	i := slices.IndexFunc(q.Chapters(), func(c config.Chapter) bool { return c.ID == ch.ID })
	return strconv.Itoa(slices.Index(Sections, SpecificationSection)+1) + "." + strconv.Itoa(i+1) + " " + ch.Label
}

// PlaceOf is where the quote says what the unit has in the place of an option, a chassis
// or a body.
func (q *Quote) PlaceOf(id string) string {
	cat := q.Edition.Cat
	o := cat.OptionByID(id)
	if o == nil {
		return SpecificationSection.Place()
	}
	if !Specified(o) {
		return ServiceSection.Place()
	}
	for _, ch := range q.Chapters() {
		if ch.ID == cat.GroupByID(o.Group).Chapter {
			no, name, _ := strings.Cut(q.ChapterHeading(ch), " ")
			return "Section " + no + ", " + name
		}
	}
	return SpecificationSection.Place()
}

// Missing is something that the plant fits as standard and the unit has not, and what the
// unit has in its place, where one excludes the other.
type Missing struct{ Label, Instead string }

// usualKey is what the unit as the plant builds it is kept under.
type usualKey struct{ chassis, body string }

// LeftOut lists what the plant fits as standard on the chassis with the body, or usually for
// the duty, and this unit goes without. A remount has no such standard.
func (q *Quote) LeftOut() []Missing {
	u, cat := &q.Draft.Unit, q.Edition.Cat
	if q.Remount() {
		return nil
	}
	usual := q.Edition.Once(usualKey{u.Chassis, u.Body}, func() any {
		return Begin(q.Edition, u.Chassis, u.Body, q.Draft.Date).Unit.Picks
	}).([]config.Pick)
	if duty := cat.DutyOf(u); duty != nil {
		usual = slices.Clone(usual)
		for _, f := range duty.Usual {
			usual = append(usual, config.Pick{Option: f.Option})
		}
	}
	var out []Missing
	for i, p := range usual {
		o := cat.OptionByID(p.Option)
		if slices.ContainsFunc(usual[:i], func(x config.Pick) bool { return x.Option == p.Option }) {
			continue
		}
		if o == nil || !Specified(o) || o.LeavesOut() || u.Has(o.ID) {
			continue
		}
		x := Missing{Label: o.Label}
		if g := cat.GroupByID(o.Group); g.Choose != config.ChooseAny {
			for _, own := range u.Picks {
				if in := cat.OptionByID(own.Option); in != nil && in.Group == o.Group && !in.LeavesOut() {
					x.Instead = in.Label
				}
			}
		}
		out = append(out, x)
	}
	return out
}
