// Package link turns a draft into a text that fits into an address or a QR
// code, and back, byte for byte. A link is data from a stranger: its size is
// limited first, then its signature is checked, then it is decoded, then what it
// says is checked, and only then is anything computed.
//
// # Form
//
// A link is the fragment of the page's address, fields parted by "&", of which
// only the first must be there:
//
//	q=LINK&cover=COVER&was=LINK
//
// Every value is base64url without padding, so that no mail program breaks or
// rewrites it. The first is
//
//	kind (1 byte) | check (4 bytes of SHA-256 over what follows) |
//	in a signed link: public key (32) | signature over the content (64) |
//	content
//
// Kind 3 is unsigned, kinds 4 and 5 are signed; all hold content of version 2:
//
//	edition (8 bytes of its hash, in kind 5 all 32) | text | units
//
// What kind 5 signs begins with the word "edition" and a line break. Quotes are signed
// as kind 5; those of kind 4, which were signed before, are read as ever.
//
// The text is JSON: the draft without what its units are made of, and what the
// link was issued with. It is a DEFLATE stream with a preset dictionary, which
// ends by itself. The units, those that scale tickets weighed among them, are
// positions in the catalogue edition, whose content hash pins them, packed by an
// arithmetic coder; where the text says so, the sizes among the needs, which needs are
// wants, and what each unit leaves out of the standard follow them there. The page
// always makes the same link of a quote; the reader does not insist on the compressed
// bytes, since a later compressor may make others.
// Kinds 1 and 2, of content version 1, are refused by name.
//
// "was" is the link of the quote that a revision revises.
//
// # Cover
//
// "cover" is what a page may show before the link is decoded, as sent and not yet
// checked: UTF-8, at most 80 characters, exactly three lines parted by "\n":
//
//	title          at most 44 characters, never markup: "Rescue 4"
//	price          with its currency, as the page heads it: "USD 298,410.00"
//	likely date    year, month and day: "2027-06-21"; may be empty
//
// No line holds a control character, nor one that turns the direction of writing,
// nor a space at either end. Decode makes the cover anew from what the link holds,
// which in a signed link is what was signed, and refuses a link whose cover
// differs. Links that are copied carry a cover, QR codes none. In JavaScript:
//
//	function cover(fragment) { // location.hash; null where there is nothing to show
//	  const field = new URLSearchParams(fragment.slice(1)).get("cover");
//	  if (!field || field.length > 427) return null;
//	  try {
//	    const bytes = Uint8Array.from(atob(field.replaceAll("-", "+").replaceAll("_", "/")), (c) => c.charCodeAt(0));
//	    const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
//	    const [title, price, date, ...more] = text.split("\n");
//	    if ([...text].length > 80 || date === undefined || more.length || /[\p{C}\p{Zl}\p{Zp}]/u.test(title + price + date)) return null;
//	    return { title, price, date };
//	  } catch {
//	    return null;
//	  }
//	}
//
// Show each line as text (textContent) in an element of its own with dir="auto".
package link

import (
	"bytes"
	"encoding/base64"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
)

// Limits: the first is checked before anything is decoded, the second as the text is expanded.
const (
	MaxText = 16 << 10 // characters of a link
	maxRest = quote.MaxDraftBytes
)

const (
	prefix     = "q="
	checkBytes = 4
	hashBytes  = 8
	wholeBytes = 32 // of the hash that a signature binds
	nameBytes  = 16 // of the hash that names a link
)

// Kinds of link, and what stands before the content of each.
const (
	unsigned1     = 1 // of content version 1, as signed1
	signed1       = 2
	unsigned      = 3
	signed8       = 4 // binds 8 bytes of the edition's hash
	signed        = 5 // binds the whole of it
	unsignedHead  = 1 + checkBytes
	signatureHead = sign.KeyBytes + sign.SignatureBytes
)

// Frozen are the figures a link carries as they were when it was made, for a
// reader whose page uses another edition.
type Frozen struct {
	Edition string      `json:"e"` // as readers know it, such as "demo 2026-11"
	Chassis string      `json:"c"`
	Body    string      `json:"b"`
	Total   string      `json:"t"`
	Until   config.Date `json:"u"` // last day the quote stands
	Even    config.Date `json:"d"`
	Safe    config.Date `json:"s,omitzero"` // the 90 % date; links made before it was carried have none
	Payload float64     `json:"p"`          // payload left, lb, whole pounds
}

// rest is what the compact part of a link does not hold.
type rest struct {
	Draft  *quote.Draft `json:"q"`
	Frozen Frozen       `json:"f"`
	More   bool         `json:"n,omitempty"` // more is packed behind the units, see coder.more
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
	OlderVersion   = "link.older-version"
	NewerVersion   = "link.newer-version"
	UnknownEdition = "link.unknown-edition"
	NotValid       = "link.not-valid"
	BadCover       = "link.cover"
	OtherFigures   = "link.other-figures" // than what it holds comes to
)

// Encode writes a computed quote's draft as a link.
func Encode(q *quote.Quote) (string, error) {
	// Whoever reads the link has no measured module at hand yet: it is written by the plain edition.
	cat, d := q.Edition.For(&config.Unit{}).Cat, q.Draft
	hash, err := hex.DecodeString(cat.Hash()[:2*hashBytes])
	if err != nil {
		return "", fmt.Errorf("the edition's hash: %w", err)
	}
	if len(weighed(d, wasPacked)) > 0 {
		return "", fmt.Errorf("a scale ticket does not say which unit it weighed: take it out")
	}
	r := rest{Draft: stripped(cat, d), Frozen: *Freeze(q), More: hasMore(cat, d)}
	text, err := json.Marshal(r)
	if err != nil {
		return "", err
	}
	if len(text) > maxRest {
		return "", fmt.Errorf("the quote is too large for a link: send it as a file")
	}
	packed, err := squeeze(text)
	if err != nil {
		return "", err
	}
	made, err := packUnits(cat, d, r.More)
	if err != nil {
		return "", err
	}
	return sealUp(unsigned, slices.Concat(hash, packed, made)), nil
}

// packUnits writes what the draft's units are made of, and more where it has more.
func packUnits(cat *config.Catalogue, d *quote.Draft, more bool) ([]byte, error) {
	c := newWriter()
	for _, u := range append(units(d), weighed(d, toPack(cat))...) {
		if err := c.unit(cat, u); err != nil {
			return nil, err
		}
	}
	if more {
		c.more(cat, d)
	}
	return c.finish(), nil
}

// stripped is the draft without what the compact part holds.
func stripped(cat *config.Catalogue, d *quote.Draft) *quote.Draft {
	c := d.Clone()
	c.Earlier, c.Issued = "", ""
	withoutMore(cat, c)
	for _, u := range append(units(c), weighed(c, toPack(cat))...) {
		if !astray(cat, u) {
			u.Carried = nil
		}
		u.Catalogue, u.Edition, u.Chassis, u.Body, u.Picks = "", "", "", "", nil
	}
	return c
}

// units are those of a draft in the order of the link: the one in work first.
func units(d *quote.Draft) []*config.Unit {
	list := []*config.Unit{&d.Unit}
	for i := range d.More {
		list = append(list, &d.More[i].Unit)
	}
	return list
}

// weighed are the earlier units of the draft's scale tickets that suit: those to
// be packed, or those that were. Any other stays in the text.
func weighed(d *quote.Draft, suits func(*config.Unit) bool) (list []*config.Unit) {
	for _, it := range append([]quote.Item{{Tickets: d.Tickets}}, d.More...) {
		for _, t := range it.Tickets {
			if t.Unit != nil && suits(t.Unit) {
				list = append(list, t.Unit)
			}
		}
	}
	return list
}

// toPack tells whether a unit is made of what an edition has, and can be packed.
func toPack(cat *config.Catalogue) func(*config.Unit) bool {
	return func(u *config.Unit) bool {
		return u.Catalogue == cat.ID && u.Edition == cat.Hash() && u.Picks != nil && len(cat.CheckUnit(u)) == 0
	}
}

func wasPacked(u *config.Unit) bool { return u.Chassis == "" }

// Freeze is the figures that a link of this quote carries.
func Freeze(q *quote.Quote) *Frozen {
	f := &Frozen{
		Edition: q.Edition.Cat.ID + " " + q.Edition.Cat.Edition,
		Chassis: q.Chassis.Label, Body: q.Body.Label, Total: q.Total(), Until: q.Price.ValidUntil,
		Even: q.Plan.EvenOdds, Safe: q.Plan.NineInTen,
	}
	if left, ok := q.Figure("weight.payload-left"); ok {
		f.Payload = math.Round(left.Value) // as it is shown
	}
	return f
}

// Agrees reports whether the figures are those of a quote as it is computed now. A date
// that a link does not carry is not compared, and a pound of payload is forgiven: earlier
// links cut it to whole pounds.
func (f Frozen) Agrees(now *Frozen) bool {
	if f.Safe.IsZero() {
		f.Safe = now.Safe
	}
	if math.Abs(f.Payload-now.Payload) == 1 {
		f.Payload = now.Payload
	}
	return f == *now
}

// Dates are both dates, in one line.
func (f *Frozen) Dates() string {
	text := "likely date (50 %) " + f.Even.Long()
	if !f.Safe.IsZero() {
		text += ", safe date (90 %) " + f.Safe.Long()
	}
	return text
}

// Decode reads a link of this edition, and refuses one whose cover disagrees with
// its content. The draft of a signed link holds the link itself,
// as Issued. The error is an *Error.
func Decode(cat *config.Catalogue, text string) (*quote.Draft, *Frozen, error) {
	p, err := unwrap(text)
	if err != nil {
		return nil, nil, err
	}
	d, frozen, err := open(cat, p)
	if err != nil {
		if already, ok := errors.AsType[*Error](err); ok {
			if err := checkCover(p.cover, already.Draft, already.Frozen); err != nil {
				return nil, nil, err
			}
			return nil, nil, already
		}
		return nil, nil, &Error{Code: NotValid, Text: "The link does not describe a unit of this edition: " +
			err.Error() + "."}
	}
	if err := checkCover(p.cover, d, frozen); err != nil {
		return nil, nil, err
	}
	if p.key != nil {
		d.Issued = prefix + base64.RawURLEncoding.EncodeToString(p.raw)
	}
	return d, frozen, nil
}

// FrozenIn are the figures that a sound link carries, whether or not its edition
// is loaded; nil when the link is not sound.
func FrozenIn(cat *config.Catalogue, text string) *Frozen {
	_, f, err := Decode(cat, text)
	if e, ok := errors.AsType[*Error](err); ok {
		return e.Frozen
	}
	return f
}

// open takes the content apart and checks what it says.
func open(cat *config.Catalogue, p *parts) (*quote.Draft, *Frozen, error) {
	hash := hex.EncodeToString(p.hash)
	text, packed, err := expand(p.content[len(p.hash):])
	if err != nil {
		return nil, nil, err
	}
	rest, err := readRest(text)
	if err != nil {
		return nil, nil, err
	}
	if !strings.HasPrefix(cat.Hash(), hash) {
		f := &rest.Frozen
		return nil, nil, &Error{Code: UnknownEdition, Frozen: f, Draft: rest.Draft,
			Text: fmt.Sprintf("The link was made with catalogue edition %s, and another is in use here. Take that "+
				"one into use in Catalogue to recompute it. As it was %s, not recomputed: %s, %s; total %s; %s; "+
				"remaining payload %.0f lb.", f.Edition, map[bool]string{true: "issued", false: "sent"}[p.key != nil],
				f.Chassis, f.Body, f.Total, f.Dates(), f.Payload)}
	}
	c := newReader(packed)
	for _, u := range append(units(rest.Draft), weighed(rest.Draft, wasPacked)...) {
		if err := c.unit(cat, u); err != nil {
			return nil, nil, err
		}
		if ps := cat.CheckUnit(u); len(ps) > 0 {
			return nil, nil, ps
		}
	}
	if rest.More {
		c.more(cat, rest.Draft)
	}
	if !c.ended() {
		return nil, nil, errPacked
	}
	if ps := rest.Draft.Check(); len(ps) > 0 {
		return nil, nil, ps
	}
	again, err := packUnits(cat, rest.Draft, rest.More)
	if err != nil || !bytes.Equal(again, packed) {
		return nil, nil, errPacked // other bits that mean the same, or units that also stand in the text
	}
	return rest.Draft, &rest.Frozen, nil
}

// readRest decodes the text of a link and checks the draft in it, without its
// units.
func readRest(text []byte) (*rest, error) {
	var out rest
	if p := config.DecodeStrict(text, &out); p != nil {
		return nil, errors.New(p.String())
	}
	if out.Draft == nil {
		return nil, errors.New("it holds no quote")
	}
	if letters.Wild(text) {
		if ps := config.Texts(&out); len(ps) > 0 {
			return nil, ps
		}
	}
	data, err := out.Draft.Bytes()
	if err != nil {
		return nil, err
	}
	if _, err := quote.ReadDraft(data); err != nil {
		return nil, err
	}
	if out.Draft.Issued != "" || out.Draft.Earlier != "" {
		return nil, errors.New("it carries another link")
	}
	return &out, nil
}
