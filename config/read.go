package config

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strings"
	"unicode/utf8"
)

// Limits on a catalogue file, checked before and after decoding.
const (
	MaxCatalogueBytes = 16 << 20
	MaxOptions        = 20000
	MaxRules          = 40000
	maxCondDepth      = 24
)

// index finds things of a loaded catalogue by id.
type index struct {
	chassis, bodies, groups, options, equipment, stations map[string]int
	members                                               map[string][]int // group id to option positions
	traits                                                map[string][]int // by the option or group they are of
	hash                                                  string
}

// Problem is one fault of a catalogue file: where it stands, what is wrong and
// what would be right.
type Problem struct {
	Code  string // stable, such as "catalogue.unknown-id"
	Where string // path in the file: options[12] "winch-front" mass
	Text  string
}

func (p Problem) String() string { return p.Where + ": " + p.Text }

// Problems is every fault found; it is the error that Read returns.
type Problems []Problem

func (ps Problems) Error() string {
	switch len(ps) {
	case 0:
		return "no problems"
	case 1:
		return ps[0].String()
	}
	return fmt.Sprintf("%s (and %d more)", ps[0], len(ps)-1)
}

// Read decodes a catalogue file strictly and checks it whole. The error, when
// there is one, is a Problems with at least one entry.
func Read(file []byte) (*Catalogue, error) {
	if len(file) > MaxCatalogueBytes {
		return nil, Problems{{"catalogue.too-large", "the file",
			fmt.Sprintf("is %d bytes; the most that is read is %d", len(file), MaxCatalogueBytes)}}
	}
	c := new(Catalogue)
	p := DecodeStrict(file, c)
	if p == nil {
		p = Repeated(file)
	}
	if p != nil {
		// A file of another kind has fields that a catalogue does not know, and is not told of those.
		var kind struct{ Format string }
		if p.Code == "field" && json.Unmarshal(file, &kind) == nil && kind.Format != CatalogueFormat {
			p = &Problem{"format", "format", formatFault(kind.Format)}
		}
		p.Code = "catalogue." + p.Code
		return nil, Problems{*p}
	}
	var ps Problems
	if doubtful(file) {
		ps = Texts(c)
	}
	for i := range ps {
		ps[i].Code = "catalogue." + ps[i].Code
	}
	if ps = append(ps, c.Prepare()...); len(ps) > 0 {
		return nil, ps
	}
	return c, nil
}

func formatFault(format string) string {
	return fmt.Sprintf("is %q; a catalogue that this program reads begins with %q", format, CatalogueFormat)
}

// ReadBuilt reads the catalogue that a program is built with. Whoever builds it
// reads it with Read and hands on its Hash; neither the checks nor the hash, which
// take longer than all else at a start, are done again.
func ReadBuilt(file []byte, hash string) (*Catalogue, error) {
	c := new(Catalogue)
	if p := DecodeStrict(file, c); p != nil {
		return nil, Problems{*p}
	}
	(&checker{c: c, all: map[string]place{}}).index()
	c.index.hash = hash
	return c, nil
}

// DecodeStrict decodes one JSON value into v, refusing unknown fields and
// anything after the value. The problem names the line and column.
func DecodeStrict(file []byte, v any) *Problem {
	d := json.NewDecoder(bytes.NewReader(file))
	d.DisallowUnknownFields()
	err := d.Decode(v)
	if err == nil {
		behind := next(file, d.InputOffset())
		if _, more := d.Token(); !errors.Is(more, io.EOF) {
			return &Problem{"trailing", position(file, behind),
				"there is something after the end of the data; a file holds one JSON value"}
		}
		return nil
	}
	var syntax *json.SyntaxError
	switch {
	case errors.As(err, &syntax):
		at := int(syntax.Offset) - 1
		if len(bytes.TrimSpace(file[:at])) == 0 {
			return &Problem{"syntax", position(file, at), "is not JSON from its first letter on: is this the right file?"}
		}
		return &Problem{"syntax", position(file, at), "is not JSON: " + syntax.Error()}
	case errors.Is(err, io.ErrUnexpectedEOF), errors.Is(err, io.EOF):
		return &Problem{"syntax", "the end of the file", "the file ends too early; was it cut short?"}
	}
	if m := locate(file, reflect.TypeOf(v)); m != nil {
		return &Problem{m.code, strings.TrimSuffix(position(file, m.offset)+" at "+m.path, " at "), m.text}
	}
	return &Problem{"field", "the file", err.Error()}
}

// position turns a byte offset into line and column for a reader, both counted
// from one.
func position(file []byte, offset int) string {
	before := file[:min(max(offset, 0), len(file))]
	line := bytes.Count(before, []byte("\n")) + 1
	column := utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:]) + 1
	return fmt.Sprintf("line %d, column %d", line, column)
}

// Prepare checks a catalogue held in memory and builds its index. It returns
// every problem found, none when the catalogue is ready for use.
func (c *Catalogue) Prepare() Problems {
	ps := c.check()
	if len(ps) > 0 {
		return ps
	}
	content := *c
	content.Signers, content.SignersOn, content.Signed = nil, Date{}, nil
	canonical, err := json.Marshal(&content)
	if err != nil {
		return Problems{{"catalogue.encode", "the catalogue", err.Error()}}
	}
	sum := sha256.Sum256(canonical)
	c.index.hash = hex.EncodeToString(sum[:])
	return nil
}

// Hash names the edition by its content: the SHA-256 over its canonical JSON
// without the roster of signers, in hex.
func (c *Catalogue) Hash() string { return c.index.hash }

// ChassisByID returns the chassis, or nil.
func (c *Catalogue) ChassisByID(id string) *Chassis { return find(c.Chassis, c.index.chassis, id) }

// BodyByID returns the body, or nil.
func (c *Catalogue) BodyByID(id string) *Body { return find(c.Bodies, c.index.bodies, id) }

// GroupByID returns the group, or nil.
func (c *Catalogue) GroupByID(id string) *Group { return find(c.Groups, c.index.groups, id) }

// OptionByID returns the option, or nil.
func (c *Catalogue) OptionByID(id string) *Option { return find(c.Options, c.index.options, id) }

// EquipmentByID returns the equipment, or nil.
func (c *Catalogue) EquipmentByID(id string) *Equipment {
	return find(c.Equipment, c.index.equipment, id)
}

// EquipmentOf is what rides in a unit under an id: the catalogue's, or an item of the
// purchaser's own; nil when it is neither.
func (c *Catalogue) EquipmentOf(u *Unit, id string) *Equipment {
	if e := c.EquipmentByID(id); e != nil {
		return e
	}
	for i := range u.OwnItems {
		if u.OwnItems[i].ID == id {
			return &u.OwnItems[i]
		}
	}
	return nil
}

// CarriedLabel names for readers what rides in a unit under an id.
func (c *Catalogue) CarriedLabel(u *Unit, id string) string {
	if e := c.EquipmentOf(u, id); e != nil {
		return e.Label
	}
	return id
}

// Members lists the positions in Options of a group's options, in file order.
func (c *Catalogue) Members(group string) []int { return c.index.members[group] }

func find[T any](list []T, at map[string]int, id string) *T {
	i, ok := at[id]
	if !ok {
		return nil
	}
	return &list[i]
}

// LabelOf names a chassis, body, option or equipment for readers; an unknown
// id is returned as it is.
func (c *Catalogue) LabelOf(id string) string {
	if o := c.OptionByID(id); o != nil {
		return o.Label
	}
	if ch := c.ChassisByID(id); ch != nil {
		return ch.Label
	}
	if b := c.BodyByID(id); b != nil {
		return b.Label
	}
	if e := c.EquipmentByID(id); e != nil {
		return e.Label
	}
	return id
}

// CheckUnit says what of a unit this catalogue does not know, and what is out
// of range; an empty answer means that every figure can be computed.
func (c *Catalogue) CheckUnit(u *Unit) Problems {
	var ps Problems
	add := func(code, where, text string) { ps = append(ps, Problem{"unit." + code, where, text}) }
	if c.ChassisByID(u.Chassis) == nil {
		add("unknown-chassis", "chassis", fmt.Sprintf("%q is not in this edition; choose one of its %d chassis",
			u.Chassis, len(c.Chassis)))
	}
	if c.BodyByID(u.Body) == nil {
		add("unknown-body", "body", fmt.Sprintf("%q is not in this edition; choose one of its %d bodies", u.Body,
			len(c.Bodies)))
	}
	if len(u.Proposed) > 2 {
		add("proposed", "proposed", "names more than a chassis and a body")
	}
	if u.Existing != nil {
		ps = append(ps, u.Existing.check()...)
	}
	for i, p := range u.Picks {
		o := c.OptionByID(p.Option)
		switch {
		case o == nil:
			add("unknown-option", fmt.Sprintf("picks[%d]", i),
				fmt.Sprintf("option %q is not in this edition", p.Option))
		case p.Qty < 1 || p.Qty > max(o.MaxQty, 1):
			add("quantity", fmt.Sprintf("picks[%d] %q", i, p.Option),
				fmt.Sprintf("%d is not a quantity from 1 to %d", p.Qty, max(o.MaxQty, 1)))
		case i > 0 && u.Picks[i-1].Option >= p.Option:
			add("order", fmt.Sprintf("picks[%d] %q", i, p.Option), "picks must be sorted by id, each once")
		}
	}
	for i, id := range u.LeftOut {
		if c.OptionByID(id) == nil || i > 0 && u.LeftOut[i-1] >= id {
			add("left-out", fmt.Sprintf("left_out[%d] %q", i, id),
				"what was left out are options in this edition, sorted, each once")
		}
	}
	for i, d := range u.Details {
		if c.OptionByID(d.Option) == nil || d.Text == "" && d.Lb == 0 || len(d.Text) > MaxDetail ||
			!(d.Lb >= 0 && d.Lb <= MostOwnLb) || i > 0 && u.Details[i-1].Option >= d.Option {
			add("detail", fmt.Sprintf("details[%d] %q", i, d.Option),
				fmt.Sprintf("details are of options in this edition, sorted by them, each once, of 1 to %d bytes or "+
					"a mass up to %d lb", MaxDetail, MostOwnLb))
		}
	}
	ps = append(ps, u.checkOwnItems(c)...)
	for i, e := range u.Carried {
		if c.EquipmentOf(u, e.Equipment) == nil {
			add("unknown-equipment", fmt.Sprintf("carried[%d]", i),
				fmt.Sprintf("equipment %q is not in this edition", e.Equipment))
		}
		if e.Qty < 1 || e.Qty > 999 {
			add("quantity", fmt.Sprintf("carried[%d] %q", i, e.Equipment),
				fmt.Sprintf("%d is not a quantity from 1 to 999", e.Qty))
		}
	}
	for i, a := range u.Factors {
		if text := FactorFault(a); text != "" {
			add("range", fmt.Sprintf("factors[%d]", i), text)
		}
		if i > 0 && u.Factors[i-1].Factor >= a.Factor {
			add("order", fmt.Sprintf("factors[%d] %q", i, a.Factor), "factors must be sorted by code, each once")
		}
	}
	for i, o := range u.Own {
		if o.Figure == "" || !(o.Value >= 0 && o.Value <= 1e6) {
			add("range", fmt.Sprintf("own[%d]", i),
				fmt.Sprintf("%q %v: a limit of one's own names a figure and is 0 to 1,000,000", o.Figure, o.Value))
		}
		if i > 0 && u.Own[i-1].Figure >= o.Figure {
			add("order", fmt.Sprintf("own[%d] %q", i, o.Figure), "own limits must be sorted by figure, each once")
		}
	}
	for _, m := range []struct {
		name string
		v    float64
	}{{"occupant_lb", float64(u.OccupantLb)}, {"patient_lb", float64(u.PatientLb)}, {"payload_lb",
		float64(u.PayloadLb)}} {
		if !(m.v >= 0 && m.v <= 20000) {
			add("range", m.name, fmt.Sprintf("%v lb is outside 0 to 20,000", m.v))
		}
	}
	return ps
}

// CompartmentsOf lists where a unit can carry loose equipment: those of its
// body, less what an option takes the place of, and those its options add.
func (c *Catalogue) CompartmentsOf(u *Unit) []Compartment {
	var out []Compartment
	if b := c.BodyOf(u); b != nil {
		out = slices.Clone(b.Compartments)
		for _, p := range u.Picks {
			if o := c.OptionByID(p.Option); o != nil {
				out = slices.DeleteFunc(out, o.Takes)
			}
		}
	}
	for _, p := range u.Picks {
		if o := c.OptionByID(p.Option); o != nil {
			for _, x := range o.Compartments {
				out = append(out, x.times(p.Qty))
			}
		}
	}
	return out
}

// SeatsOf lists the places of a unit, less those where a patient lies: the cab's, whose
// stations count from the front axle and the ground, and those its options add, whose
// stations count from the module's front wall and floor.
func (c *Catalogue) SeatsOf(u *Unit) (cab, module []Seat) {
	if ch := c.ChassisByID(u.Chassis); ch != nil {
		cab = ch.CabSeats
	}
	for _, p := range u.Picks {
		if o := c.OptionByID(p.Option); o != nil {
			for range p.Qty {
				module = append(module, o.Seats...)
			}
		}
	}
	return cab, c.Untaken(u, module)
}

// Untaken are the seats of a unit without those where a patient lies. It changes the list.
func (c *Catalogue) Untaken(u *Unit, seats []Seat) []Seat {
	var taken []string
	for _, p := range u.Picks {
		if o := c.OptionByID(p.Option); o != nil && p.Qty > 0 {
			taken = append(taken, o.TakesSeats...)
		}
	}
	return slices.DeleteFunc(seats, func(s Seat) bool { return slices.Contains(taken, s.ID) })
}

// Chosen are the options of a chapter that a unit has, in the catalogue's order.
func (c *Catalogue) Chosen(u *Unit, chapter string) []Chosen {
	var out []Chosen
	for i := range c.Groups {
		g := &c.Groups[i]
		if g.Chapter != chapter {
			continue
		}
		for _, m := range c.Members(g.ID) {
			if n := u.Qty(c.Options[m].ID); n > 0 {
				out = append(out, Chosen{g, &c.Options[m], n})
			}
		}
	}
	return out
}

// Chosen is an option that a unit has, and how many of it.
type Chosen struct {
	Group  *Group
	Option *Option
	Qty    int
}

// SeatByID is the first seat of that id that an option of the catalogue adds, or nil.
func (c *Catalogue) SeatByID(id string) *Seat {
	for i := range c.Options {
		for k := range c.Options[i].Seats {
			if s := &c.Options[i].Seats[k]; s.ID == id {
				return s
			}
		}
	}
	return nil
}

// Takes reports whether an option takes the place of a compartment of the body.
func (o *Option) Takes(c Compartment) bool {
	return c.Slot != "" && slices.Contains(o.Displaces, c.Slot)
}

// slot is the index of the compartment of that slot, or -1.
func (b *Body) slot(name string) int {
	return slices.IndexFunc(b.Compartments, func(c Compartment) bool { return c.Slot == name })
}
