// Package link turns a draft into a text that fits into an address or a QR
// code, and back, byte for byte. A link is data from a stranger: its size is
// limited first, then its signature is checked, then it is decoded, then what it
// says is checked, and only then is anything computed.
//
// The form: the letters "q=" and base64url of
//
//	kind (1 byte) | check (4 bytes of SHA-256 over what follows) |
//	in a signed link: public key (32) | signature over the content (64) |
//	content
//
// Kind 1 is unsigned and kind 2 signed; both hold content of version 1:
//
//	edition (8 bytes of its hash) | length of the picks | picks | the rest of
//	the draft as JSON, deflated with a dictionary that belongs to the version
//
// where the picks are: chassis, body (varints: positions) | which options are
// in (one bit each) | which of those are filled (one bit each) | quantities
// above one | loose equipment; and the same again for each further unit.
//
// Positions refer to the catalogue edition, whose content hash pins them.
package link

import (
	"bytes"
	"compress/flate"
	"encoding/base64"
	"encoding/binary"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
)

// Limits, checked before anything is decoded.
const (
	MaxText = 16 << 10 // characters of a link
	maxRest = quote.MaxDraftBytes
)

const (
	prefix     = "q="
	checkBytes = 4
	hashBytes  = 8
	nameBytes  = 16 // of the hash that names a link
)

// Kinds of link, and what stands before the content of each.
const (
	unsigned      = 1
	signed        = 2
	unsignedHead  = 1 + checkBytes
	signatureHead = sign.KeyBytes + sign.SignatureBytes
)

// Frozen are the figures a link carries as they were when it was made, for a
// reader whose page does not hold the edition.
type Frozen struct {
	Edition string      `json:"e"` // as readers know it, such as "demo 2026-11"
	Chassis string      `json:"c"`
	Body    string      `json:"b"`
	Total   string      `json:"t"`
	Until   config.Date `json:"u"` // last day the quote stands
	Even    config.Date `json:"d"`
	Payload float64     `json:"p"` // payload left, lb, whole pounds
}

// rest is what the compact part of a link does not hold.
type rest struct {
	Draft  *quote.Draft `json:"q"`
	Frozen Frozen       `json:"f"`
}

// Error says what is wrong with a link, by a stable code, in words a reader
// can act on.
type Error struct {
	Code string
	Text string
	// Frozen and Draft are set when the link is sound but its edition is not at
	// hand. The draft then lacks what positions in the edition stand for: chassis,
	// body, options and equipment.
	Frozen *Frozen
	Draft  *quote.Draft
}

func (e *Error) Error() string { return e.Text }

// Codes of Error.
const (
	TooLong        = "link.too-long"
	Malformed      = "link.malformed"
	Altered        = "link.altered"
	NewerVersion   = "link.newer-version"
	UnknownEdition = "link.unknown-edition"
	NotValid       = "link.not-valid"
)

// Encode writes a computed quote's draft as a link.
func Encode(q *quote.Quote) (string, error) {
	cat, d := q.Edition.Cat, q.Draft
	hash, err := hex.DecodeString(cat.Hash()[:2*hashBytes])
	if err != nil {
		return "", fmt.Errorf("the edition's hash: %w", err)
	}
	var picks []byte
	for _, u := range units(d) {
		picks = append(picks, picksOf(cat, u)...)
	}
	b := bytes.NewBuffer(hash)
	b.Write(binary.AppendUvarint(nil, uint64(len(picks))))
	b.Write(picks)
	text, err := json.Marshal(rest{Draft: stripped(cat, d), Frozen: freeze(q)})
	if err != nil {
		return "", err
	}
	z, err := flate.NewWriterDict(b, flate.BestCompression, []byte(dictionary1))
	if err != nil {
		return "", err
	}
	if _, err := z.Write(text); err != nil {
		return "", err
	}
	if err := z.Close(); err != nil {
		return "", err
	}
	return sealUp(unsigned, b.Bytes()), nil
}

// picksOf packs what the unit is made of by positions in the edition.
func picksOf(cat *config.Catalogue, u *config.Unit) []byte {
	var b bytes.Buffer
	put := func(n int) { b.Write(binary.AppendUvarint(nil, uint64(n))) }
	put(slices.IndexFunc(cat.Chassis, func(c config.Chassis) bool { return c.ID == u.Chassis }))
	put(slices.IndexFunc(cat.Bodies, func(c config.Body) bool { return c.ID == u.Body }))

	in := make([]bool, len(cat.Options))
	var filled []bool
	var more []int // positions among those in, and quantities
	held := 0
	for i := range cat.Options {
		p := u.Find(cat.Options[i].ID)
		if p == nil {
			continue
		}
		in[i] = true
		filled = append(filled, p.Filled)
		if p.Qty > 1 {
			more = append(more, held, p.Qty)
		}
		held++
	}
	b.Write(bits(in))
	b.Write(bits(filled))
	put(len(more) / 2)
	for _, n := range more {
		put(n)
	}
	places := cat.CompartmentsOf(u)
	carried := u.Carried
	if astray(cat, u) {
		carried = nil
	}
	put(len(carried))
	for _, c := range carried {
		put(slices.IndexFunc(cat.Equipment, func(e config.Equipment) bool { return e.ID == c.Equipment }))
		put(1 + slices.IndexFunc(places, func(p config.Compartment) bool { return p.ID == c.Compartment }))
		put(c.Qty)
	}
	return b.Bytes()
}

// astray reports whether something is stowed where the unit, since changed, has
// no compartment. Such a list stays as it is in the rest of the draft.
func astray(cat *config.Catalogue, u *config.Unit) bool {
	places := cat.CompartmentsOf(u)
	return slices.ContainsFunc(u.Carried, func(c config.Carried) bool {
		return c.Compartment != "" && !slices.ContainsFunc(places, func(p config.Compartment) bool { return p.ID == c.Compartment })
	})
}

// stripped is the draft without what the compact part holds.
func stripped(cat *config.Catalogue, d *quote.Draft) *quote.Draft {
	c := *d
	c.Earlier, c.Issued = "", ""
	c.More = slices.Clone(d.More)
	for _, u := range units(&c) {
		if !astray(cat, u) {
			u.Carried = nil
		}
		u.Catalogue, u.Edition, u.Chassis, u.Body, u.Picks = "", "", "", "", nil
	}
	return &c
}

// units are those of a draft in the order of the link: the one in work first.
func units(d *quote.Draft) []*config.Unit {
	list := []*config.Unit{&d.Unit}
	for i := range d.More {
		list = append(list, &d.More[i].Unit)
	}
	return list
}

func freeze(q *quote.Quote) Frozen {
	f := Frozen{
		Edition: q.Edition.Cat.ID + " " + q.Edition.Cat.Edition,
		Chassis: q.Chassis.Label, Body: q.Body.Label, Total: q.Total(), Until: q.Price.ValidUntil, Even: q.Plan.EvenOdds,
	}
	if left, ok := q.Figure("weight.payload-left"); ok {
		f.Payload = float64(int(left.Value))
	}
	return f
}

// Decode reads a link for the edition in hand. The draft of a signed link holds
// the link itself, as Issued. The error is an *Error.
func Decode(cat *config.Catalogue, text string) (*quote.Draft, *Frozen, error) {
	p, err := unwrap(text)
	if err != nil {
		return nil, nil, err
	}
	d, frozen, err := open(cat, p.content)
	if err != nil {
		if already, ok := errors.AsType[*Error](err); ok {
			return nil, nil, already
		}
		return nil, nil, &Error{Code: NotValid, Text: "The link does not describe a unit of this edition: " + err.Error() + "."}
	}
	if p.key != nil {
		d.Issued = prefix + base64.RawURLEncoding.EncodeToString(p.raw)
	}
	return d, frozen, nil
}

// open takes the checked bytes apart and checks what they say.
func open(cat *config.Catalogue, data []byte) (*quote.Draft, *Frozen, error) {
	r := &reader{data: data}
	hash := hex.EncodeToString(r.take(hashBytes))
	picks := &reader{data: r.take(r.number(len(data)))}
	if r.bad {
		return nil, nil, errShort
	}
	rest, err := inflate(r.data)
	if err != nil {
		return nil, nil, err
	}
	if !strings.HasPrefix(cat.Hash(), hash) {
		f := &rest.Frozen
		return nil, nil, &Error{Code: UnknownEdition, Frozen: f, Draft: rest.Draft, Text: fmt.Sprintf("The link was made with a catalogue edition this page does not hold (%s). Load that edition to recompute it. As it was issued, not recomputed: %s, %s; total %s; delivery at even odds %s; payload left %.0f lb.",
			f.Edition, f.Chassis, f.Body, f.Total, f.Even.Long(), f.Payload)}
	}
	for _, u := range units(rest.Draft) {
		if err := picks.unit(cat, u); err != nil {
			return nil, nil, err
		}
		if ps := cat.CheckUnit(u); len(ps) > 0 {
			return nil, nil, ps
		}
	}
	if len(picks.data) > 0 {
		return nil, nil, errShort
	}
	return rest.Draft, &rest.Frozen, nil
}

// reader takes a link's bytes apart; after the first fault everything is zero.
type reader struct {
	data []byte
	bad  bool
}

var errShort = errors.New("its data are too short or too long")

func (r *reader) take(n int) []byte {
	if r.bad || n > len(r.data) {
		r.bad = true
		return make([]byte, n)
	}
	out := r.data[:n]
	r.data = r.data[n:]
	return out
}

// number reads a varint below limit.
func (r *reader) number(limit int) int {
	v, n := binary.Uvarint(r.data)
	if r.bad || n <= 0 || v >= uint64(limit) {
		r.bad = true
		return 0
	}
	r.data = r.data[n:]
	return int(v)
}

func (r *reader) bools(n int) []bool {
	packed := r.take((n + 7) / 8)
	out := make([]bool, n)
	for i := range out {
		out[i] = packed[i/8]>>(i%8)&1 == 1
	}
	return out
}

func bits(on []bool) []byte {
	out := make([]byte, (len(on)+7)/8)
	for i, b := range on {
		if b {
			out[i/8] |= 1 << (i % 8)
		}
	}
	return out
}

const (
	maxQty     = 1000
	maxCarried = 2000
)

// unit reads the picks into a unit that holds everything else.
func (r *reader) unit(cat *config.Catalogue, u *config.Unit) error {
	chassis, body := r.number(len(cat.Chassis)), r.number(len(cat.Bodies))
	in := r.bools(len(cat.Options))
	held := 0
	for _, b := range in {
		if b {
			held++
		}
	}
	filled := r.bools(held)
	qty := make(map[int]int)
	for range r.number(held + 1) {
		at := r.number(max(held, 1))
		qty[at] = r.number(maxQty)
	}
	type carried struct{ equipment, place, qty int }
	list := make([]carried, r.number(maxCarried))
	for i := range list {
		list[i] = carried{r.number(max(len(cat.Equipment), 1)), r.number(maxCarried), r.number(maxQty)}
	}
	if r.bad {
		return errShort
	}
	u.Catalogue, u.Edition, u.Chassis, u.Body = cat.ID, cat.Hash(), cat.Chassis[chassis].ID, cat.Bodies[body].ID
	u.Picks = []config.Pick{}
	held = 0
	for i, b := range in {
		if b {
			u.Set(config.Pick{Option: cat.Options[i].ID, Qty: max(qty[held], 1), Filled: filled[held]})
			held++
		}
	}
	places := cat.CompartmentsOf(u)
	for _, c := range list {
		place := ""
		if c.place > len(places) {
			return errors.New("it stows something in a compartment the unit does not have")
		}
		if c.place > 0 {
			place = places[c.place-1].ID
		}
		u.Carried = append(u.Carried, config.Carried{Equipment: cat.Equipment[c.equipment].ID, Compartment: place, Qty: c.qty})
	}
	return nil
}

// inflate unpacks the rest and checks the draft in it, without its unit.
func inflate(packed []byte) (*rest, error) {
	z := flate.NewReaderDict(bytes.NewReader(packed), []byte(dictionary1))
	text, err := io.ReadAll(io.LimitReader(z, maxRest+1))
	if err != nil {
		return nil, fmt.Errorf("its packed part cannot be unpacked: %w", err)
	}
	if len(text) > maxRest {
		return nil, fmt.Errorf("its packed part is larger than %d bytes", maxRest)
	}
	var out rest
	if p := config.DecodeStrict(text, &out); p != nil {
		return nil, errors.New(p.String())
	}
	if out.Draft == nil {
		return nil, errors.New("it holds no quote")
	}
	data, err := out.Draft.Bytes()
	if err != nil {
		return nil, err
	}
	if _, err := quote.ReadDraft(data); err != nil {
		return nil, err
	}
	return &out, nil
}
