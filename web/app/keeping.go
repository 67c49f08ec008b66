package app

import (
	"encoding/json"
	"fmt"
	"strings"

	"boxwright/config"
	"boxwright/pricing/editions"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/pricing/tables"
	shelf "boxwright/web/areas/catalogue"
	"boxwright/web/assets/catalogue"
)

// Keeping a catalogue. An edition that comes in is set beside the one in use,
// checked and compared, and taken into use at a press. Quotes made with another
// edition stay as they are until somebody moves them.

// held is an edition with the text of its file.
type held struct {
	ed   *quote.Edition
	file []byte
}

// keeper is what an app remembers for whoever keeps the catalogue.
type keeper struct {
	builtIn  held
	inUse    held
	refused  string // name of what was not taken
	problems []config.Problem
	linted   *quote.Edition // that findings are of
	findings []config.Finding
	from, to held // the two compared; one of them is in use
	diff     *editions.Comparison
	kept     []shelf.Kept
	more     bool
}

// use takes an edition into use.
func (a *App) use(h held) {
	a.edition, a.keep.inUse = h.ed, h
	if h.ed != a.keep.from.ed && h.ed != a.keep.to.ed {
		a.keep.apart()
	}
}

func (k *keeper) apart() { k.from, k.to, k.diff, k.kept, k.more = held{}, held{}, nil, nil, false }

// beside is the edition that is set beside the one in use, if there is one.
func (k *keeper) beside() *held {
	if k.diff != nil && k.to.ed != k.inUse.ed {
		return &k.to
	}
	return nil
}

// looked is the edition that is checked, saved and handed out.
func (k *keeper) looked() *held {
	if b := k.beside(); b != nil {
		return b
	}
	return &k.inUse
}

func openKeeping(s *session, _ Act) {
	s.view.Keeping = !s.view.Keeping
	s.view.Area = "needs"
	s.step(Step{Do: "top"})
}

// refuse remembers what is wrong with a file and shows it.
func (s *session) refuse(name string, err error) {
	k := &s.app.keep
	k.refused, k.problems = clip(name, 100), nil
	if ps, ok := err.(config.Problems); ok {
		k.problems = ps[:min(len(ps), 200)]
	} else {
		k.problems = []config.Problem{{Where: "the file", Text: err.Error()}}
	}
	s.view.Keeping = true
	s.step(Step{Do: "focus", ID: "refused"})
}

// setBeside sets an edition beside the one in use and compares the two. Then
// the page sends the quotes it keeps, one after another.
func (s *session) setBeside(name string, file []byte) {
	k := &s.app.keep
	ed, err := quote.OpenEdition(file)
	if err != nil {
		s.refuse(name, err)
		return
	}
	k.refused, k.problems = "", nil
	if ed.Cat.Hash() == s.app.edition.Cat.Hash() {
		k.apart()
		s.notice = clip(name, 100) + " has the same content as the edition in use."
		return
	}
	k.from, k.to = k.inUse, held{ed, file}
	k.diff, k.kept = editions.Compare(k.from.ed, ed), nil
	s.view.Keeping = true
	s.notice = "Edition " + ed.Cat.Edition + " stands beside the one in use."
	s.step(Step{Do: "focus", ID: "beside"})
	s.goThrough()
}

// goThrough asks for the kept quotes.
func (s *session) goThrough() {
	s.app.keep.more = true
	s.step(Step{Do: "send-kept", ID: "first"})
}

func setBeside(s *session, a Act) {
	if a.ID == "" {
		s.setBeside("The built-in catalogue", s.app.keep.builtIn.file)
		return
	}
	s.setBeside(a.ID, []byte(a.Value))
}

// tablesIn takes edited tables into the edition looked at.
func tablesIn(s *session, a Act) {
	var sheets []tables.Sheet
	if p := config.DecodeStrict([]byte(a.Value), &sheets); p != nil {
		s.fault("The tables could not be read: %s.", p)
		return
	}
	for i := range sheets {
		sheets[i].Name = clip(sheets[i].Name, 100)
	}
	file, err := tables.In(s.app.keep.looked().file, sheets)
	if err != nil {
		s.refuse(a.ID, err)
		return
	}
	s.setBeside(a.ID, file)
}

func tablesOut(s *session, a Act) {
	h := s.app.keep.inUse
	text, err := tables.Out(h.file, a.ID)
	if err != nil {
		s.fault("No table was made: %s", sentence(err))
		return
	}
	s.step(Step{Do: "save", Name: a.ID + ".csv", Type: "text/csv", Text: "\ufeff" + text})
}

// named is the edition that an act is for: the one beside, or the one in use.
func (s *session) named(id string) *held {
	if id == "beside" {
		return s.app.keep.looked()
	}
	return &s.app.keep.inUse
}

func fileOf(h *held, ending string) string {
	return fileName(h.ed.Cat.ID+"-"+h.ed.Cat.Edition) + ending
}

func saveCatalogue(s *session, a Act) {
	h := s.named(a.ID)
	s.step(Step{Do: "save", Name: fileOf(h, ".json"), Type: "application/json", Text: string(h.file)})
}

// embed has the page make one file of itself with an edition built in.
func embed(s *session, a Act) {
	h := s.named(a.ID)
	s.step(Step{Do: "embed", Name: "boxwright-" + fileOf(h, ".html"), Text: string(h.file)})
}

func lint(s *session, _ Act) {
	k := &s.app.keep
	k.linted = k.looked().ed
	k.findings = editions.Lint(k.linted)
	s.step(Step{Do: "focus", ID: "lint"})
}

func useBeside(s *session, _ Act) {
	k := &s.app.keep
	h := k.beside()
	if h == nil {
		s.fault("No edition stands beside the one in use any more: bring it in again.")
		return
	}
	s.changeEdition(*h, true)
	s.step(Step{Do: "keep-catalogue", Text: string(h.file)})
	s.notice = strings.TrimSpace("Edition " + h.ed.Cat.Edition + " is in use. " + s.notice)
	s.goThrough()
}

func dropBeside(s *session, _ Act) {
	s.app.keep.apart()
	s.step(Step{Do: "focus", ID: "f-tables"})
}

// editionField gives the edition beside another name or first day.
func editionField(name string) setter {
	return func(s *session, a Act) error {
		h := s.app.keep.beside()
		if h == nil || strings.TrimSpace(a.Value) == "" || len(a.Value) > 60 {
			return fmt.Errorf("an edition has a name of up to 60 letters and a first day")
		}
		edition, from := a.Value, ""
		if name == "from" {
			edition, from = "", a.Value
		}
		file, err := tables.Rename(h.file, edition, from)
		if err == nil {
			s.setBeside("the edition", file)
		}
		return err
	}
}

// ---- quotes kept in the browser ----

// touch says what the change means for one kept quote: ID is its place in the
// browser, Value its draft, and On that there are more.
func touch(s *session, a Act) {
	k := &s.app.keep
	if k.diff == nil {
		return
	}
	k.more = a.On
	if a.On {
		s.step(Step{Do: "send-kept"})
	}
	if a.ID == "" {
		return
	}
	x := shelf.Kept{ID: a.ID}
	d, err := quote.ReadDraft([]byte(a.Value))
	if err != nil {
		x.Name, x.Fault = "A kept quote", sentence(err)
	} else {
		x.Name, x.Line = nameOf(k.diff.From.Cat, d)
		x.Touch = k.diff.Touch(d)
	}
	for i := range k.kept {
		if old := &k.kept[i]; old.ID == x.ID {
			if x.Touch != nil && x.Touch.Current && old.Touch != nil && !old.Touch.Current {
				old.Moved = true
			} else {
				*old = x
			}
			return
		}
	}
	k.kept = append(k.kept, x)
}

// nameOf is how a list calls a quote, without a price.
func nameOf(cat *config.Catalogue, d *quote.Draft) (name, line string) {
	name = d.Title
	if name == "" {
		name = cat.LabelOf(d.Unit.Chassis)
	}
	line = strings.TrimSpace(d.Number + " · " + d.Buyer.Name)
	return name, strings.Trim(line, "· ")
}

// moveKept moves a kept quote to the edition in use and hands it back to be
// kept; the state before stays among its earlier ones.
func moveKept(s *session, a Act) {
	d, err := quote.ReadDraft([]byte(a.Value))
	if err == nil && d.Issued != "" {
		err = fmt.Errorf("it is signed and stays as it is; open it to make a revision of it")
	}
	var q *quote.Quote
	if err == nil {
		d, _, _ = quote.Move(s.app.edition, d)
		q, err = quote.Compute(s.app.edition, d)
	}
	if err != nil {
		s.fault("The kept quote was not moved: %s", sentence(err))
		return
	}
	data, err := d.Bytes()
	if err != nil {
		return
	}
	g := gist(q)
	s.notice = g.Name + " is moved to the edition in use. Its state before stays among its earlier ones."
	s.step(Step{Do: "keep-moved", ID: a.ID, Name: "moved to edition " + s.app.edition.Cat.Edition, Text: string(data), Gist: &g})
	for i := range s.app.keep.kept {
		if x := &s.app.keep.kept[i]; x.ID == a.ID {
			x.Moved = true
		}
	}
}

// ---- a quote of another edition ----

// elsewhere is the draft that came with the request, when it was made with
// another edition than the one in use; nil otherwise.
func (s *session) elsewhere() *shelf.Elsewhere {
	d := s.other
	if d == nil {
		return nil
	}
	e := &shelf.Elsewhere{Edition: fmt.Sprintf("content %.16s", d.Unit.Edition)}
	for _, h := range []*quote.Edition{s.app.keep.builtIn.ed, s.app.keep.from.ed, s.app.keep.to.ed} {
		if h != nil && h.Cat.Hash() == d.Unit.Edition {
			e.Edition = h.Cat.Edition
		}
	}
	if d.Issued != "" {
		if f := link.FrozenIn(s.app.edition.Cat, d.Issued); f != nil {
			e.As, e.Edition = f, f.Edition
		}
	}
	return e
}

// otherEditionFinding stops a quote of another edition from being issued.
var otherEditionFinding = config.Finding{
	Code: "unit.edition", Severity: config.Stop, Where: "Edition of the catalogue",
	Text:   "The quote was made with another edition. What is shown is what it would be with the one in use.",
	Remedy: "Move it to the edition in use, at the top of the page.",
}

// moveHere moves the quote in work to the edition in use. One that is signed
// becomes a revision, since it is not what was signed any more.
func moveHere(s *session, _ Act) {
	if s.other == nil {
		return
	}
	moved, lost, changes := quote.Move(s.app.edition, s.other)
	s.draft, s.other = moved, nil
	s.notice = "The quote is moved to the edition in use."
	if len(lost) > 0 {
		s.notice += " It does not have: " + strings.Join(lost, ", ") + "."
	}
	s.tell(changes)
}

// builtIn takes the catalogue that this page was made with in the place of the
// demonstration. One that cannot be used is told of, and the demonstration stays.
func builtIn(s *session, a Act) {
	file := []byte(a.Value)
	ed, err := quote.OpenEdition(file)
	if err != nil {
		s.fault("The catalogue built into this page cannot be used, and the demonstration catalogue takes its place. %s", sentence(err))
		return
	}
	was := s.app.keep.builtIn.ed
	s.app.keep.builtIn = held{ed, file}
	if s.app.edition == was {
		s.changeEdition(s.app.keep.builtIn, false)
	}
}

// keeper is what the catalogue's own part shows.
func (s *session) keeper() *shelf.Keeper {
	k := &s.app.keep
	v := &shelf.Keeper{Refused: k.refused, Problems: k.problems, Diff: k.diff, Kept: k.kept, More: k.more, Before: k.from.ed}
	if b := k.beside(); b != nil {
		v.Beside = b.ed
	}
	if k.linted == k.looked().ed {
		v.Linted, v.Findings = true, k.findings
	}
	return v
}

// demonstration is the catalogue that is part of the core.
func demonstration() (held, error) {
	open := quote.OpenEdition
	if catalogue.Hash != "" {
		open = func(file []byte) (*quote.Edition, error) { return quote.OpenBuilt(file, catalogue.Hash) }
	}
	ed, err := open(catalogue.Demo)
	if err != nil {
		return held{}, fmt.Errorf("the demonstration catalogue: %w", err)
	}
	return held{ed, catalogue.Demo}, nil
}

// canonical is a draft's bytes, to see whether an act has changed it.
func canonical(d *quote.Draft) string {
	data, err := json.Marshal(d)
	if err != nil {
		return ""
	}
	return string(data)
}
