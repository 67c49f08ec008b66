package catalogue

import (
	"encoding/base64"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/pricing/editions"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
	"boxwright/pricing/tables"
	"boxwright/web/session"
)

func loadCatalogue(s *session.Session, a session.Act) {
	file := []byte(a.Value)
	ed, err := s.Memory.Accept(file)
	if err != nil {
		s.Fault("%s was not loaded; the catalogue in use stays. %s", a.ID, session.Sentence(err))
		return
	}
	if bringsSigners(s.Memory.Edition.Cat, ed.Cat) {
		s.Begin()
		s.View.Area = id
		compareWith(s, a.ID, file) // who may sign is shown before it counts
		s.Notice = "The catalogue brings another list of signers: look at it, then use the catalogue."
		return
	}
	if ed.Cat.Hash() == s.Memory.Edition.Cat.Hash() {
		return
	}
	s.ChangeEdition(session.Held{Ed: ed, File: file}, true)
	s.Step(session.Step{Do: "keep-catalogue", Text: a.Value})
	s.Notice = strings.TrimSpace("Catalogue " + letters.Isolate(ed.Cat.Title) + ", edition " +
		letters.Isolate(ed.Cat.Edition) + ", is in use. " +
		s.Notice)
}

// bringsSigners reports whether who may sign has to be looked at before a catalogue is
// used: where it differs in that alone, and where another edition lets more people sign,
// or otherwise than before.
func bringsSigners(now, other *config.Catalogue) bool {
	if plantOf(now) != "" && plantOf(now) != plantOf(other) {
		return true
	}
	if now.RosterHash() == other.RosterHash() {
		return false
	}
	return now.Hash() == other.Hash() ||
		slices.ContainsFunc(editions.Signers(now, other), func(c editions.SignerChange) bool {
			return c.How != editions.SignerRemoved && c.How != editions.SignerRevoked
		})
}

// plantOf is the key of the plant that signed a catalogue; empty when none did.
func plantOf(cat *config.Catalogue) string {
	if cat.Signed == nil {
		return ""
	}
	return cat.Signed.Key
}

// signCatalogue signs the edition looked at as the plant: Value is the passphrase and File
// the sealed key. The signed file is saved, and takes the place of the one looked at.
func signCatalogue(s *session.Session, a session.Act) {
	sealed, err := base64.StdEncoding.DecodeString(a.File)
	if err != nil || len(sealed) == 0 {
		s.Fault("No signing key is saved on this device: make or open one in Costs and keys.")
		return
	}
	key, err := sign.Open(sealed, a.Value)
	if err != nil {
		s.Fault("The catalogue was not signed: %s.", session.Plain(err))
		return
	}
	h := s.Memory.Keep.Looked()
	beside := h != &s.Memory.Keep.InUse
	file, err := tables.Sign(h.File, key)
	var ed *quote.Edition
	if err == nil {
		ed, err = s.Memory.Open(file)
	}
	if err != nil {
		s.Fault("The catalogue was not signed. %s", session.Sentence(err))
		return
	}
	signed := session.Held{Ed: ed, File: file}
	s.Step(session.Step{Do: "save", Name: fileOf(&signed, ".json"), Type: "application/json", Text: string(file)})
	if beside {
		compareWith(s, "the signed edition", file)
	} else {
		s.Begin()
		s.ChangeEdition(signed, true)
		s.Step(session.Step{Do: "keep-catalogue", Text: string(file)})
	}
	s.Notice = "The catalogue is signed with your key, and its file is saved. Give that file out."
}

// keptCatalogue takes up the one that was in use before.
func keptCatalogue(s *session.Session, a session.Act) {
	file := []byte(a.Value)
	ed, err := s.Memory.Open(file)
	if err != nil {
		s.Fault("%s was not loaded; the catalogue in use stays. %s", a.ID, session.Sentence(err))
		return
	}
	s.ChangeEdition(session.Held{Ed: ed, File: file}, false)
}

func demoCatalogue(s *session.Session, _ session.Act) {
	s.ChangeEdition(s.Memory.Keep.BuiltIn, true)
	s.Step(session.Step{Do: "keep-catalogue"})
	s.Notice = strings.TrimSpace("The built-in catalogue is in use again. " + s.Notice)
}

// mostListed bounds the faults that are listed.
const mostListed = 200

// refuse remembers what is wrong with a file and shows it.
func refuse(s *session.Session, name string, err error) {
	k := &s.Memory.Keep
	k.Refused, k.Problems = session.Clip(name, 100), nil
	if ps, ok := err.(config.Problems); ok {
		k.Problems = ps
		if n := len(ps) - mostListed; n > 0 {
			k.Problems = append(slices.Clone(ps[:mostListed]), config.Problem{Code: more, Where: "the file",
				Text: fmt.Sprintf("has %d more faults", n)})
		}
	} else {
		k.Problems = []config.Problem{{Where: "the file", Text: err.Error()}}
	}
	s.View.Area = id
	s.Step(session.Step{Do: "focus", ID: "refused"})
}

// compareWith sets an edition beside the one in use and compares the two. Then
// the page sends the quotes it keeps, one after another.
func compareWith(s *session.Session, name string, file []byte) {
	k := &s.Memory.Keep
	ed, err := s.Memory.Accept(file)
	if err != nil {
		refuse(s, name, err)
		return
	}
	k.Refused, k.Problems = "", nil
	if ed.Cat.Hash() == s.Memory.Edition.Cat.Hash() && ed.Cat.RosterHash() == s.Memory.Edition.Cat.RosterHash() &&
		plantOf(ed.Cat) == plantOf(s.Memory.Edition.Cat) {
		k.Apart()
		s.Notice = letters.Isolate(session.Clip(name, 100)) + " has the same content as the edition in use. Columns " +
			"that are not in a table stay as they are."
		return
	}
	k.From, k.To = k.InUse, session.Held{Ed: ed, File: file}
	k.Diff, k.Touched = editions.Compare(k.From.Ed, ed), nil
	s.View.Area = id
	s.Notice = "Edition " + letters.Isolate(ed.Cat.Edition) + " is open and compared with the one in use."
	s.Step(session.Step{Do: "focus", ID: "beside"})
	goThrough(s)
}

// goThrough asks for the kept quotes.
func goThrough(s *session.Session) {
	s.Memory.Keep.More = true
	s.Step(session.Step{Do: "send-kept", ID: "first"})
}

func setBeside(s *session.Session, a session.Act) {
	if a.ID == "" {
		compareWith(s, "The built-in catalogue", s.Memory.Keep.BuiltIn.File)
		return
	}
	compareWith(s, a.ID, []byte(a.Value))
}

// tablesIn takes edited tables into the edition looked at.
func tablesIn(s *session.Session, a session.Act) {
	var sheets []tables.Sheet
	if p := config.DecodeStrict([]byte(a.Value), &sheets); p != nil {
		s.Fault("The tables could not be read: %s.", p)
		return
	}
	for i := range sheets {
		sheets[i].Name = session.Clip(sheets[i].Name, 100)
	}
	file, err := tables.In(s.Memory.Keep.Looked().File, sheets)
	if err != nil {
		refuse(s, a.ID, err)
		return
	}
	compareWith(s, a.ID, file)
}

func tablesOut(s *session.Session, a session.Act) {
	h := s.Memory.Keep.InUse
	text, err := tables.Out(h.File, a.ID)
	if err != nil {
		s.Fault("No table was made: %s", session.Sentence(err))
		return
	}
	s.Step(session.Step{Do: "save", Name: a.ID + ".csv", Type: "text/csv", Text: "\ufeff" + text})
}

// editionFor is the edition that an act is for: the one beside, or the one in use.
func editionFor(s *session.Session, id string) *session.Held {
	if id == "beside" {
		return s.Memory.Keep.Looked()
	}
	return &s.Memory.Keep.InUse
}

func fileOf(h *session.Held, ending string) string {
	return session.FileName(h.Ed.Cat.ID+"-"+h.Ed.Cat.Edition) + ending
}

func saveCatalogue(s *session.Session, a session.Act) {
	h := editionFor(s, a.ID)
	s.Step(session.Step{Do: "save", Name: fileOf(h, ".json"), Type: "application/json", Text: string(h.File)})
}

// embed has the page make one file of itself with an edition built in.
func embed(s *session.Session, a session.Act) {
	h := editionFor(s, a.ID)
	s.Step(session.Step{Do: "embed", Name: "boxwright-" + fileOf(h, ".html"), Text: string(h.File)})
}

// lint begins to go through the edition looked at; goOn goes on with it.
func lint(s *session.Session, _ session.Act) {
	k := &s.Memory.Keep
	k.LintOf, k.Linted, k.Findings, k.Stopped = k.Looked().Ed, nil, nil, ""
	k.Linting = editions.NewLint(k.LintOf)
	s.Spoken = "Checking."
	s.Step(session.Step{Do: "focus", ID: "lint"})
}

// stopLint ends it, and keeps what it found so far.
func stopLint(s *session.Session, _ session.Act) {
	k := &s.Memory.Keep
	if k.Linting != nil && k.LintOf == k.Looked().Ed {
		k.Stopped = progress(k.Linting.Progress())
		tellFindings(k)
	}
	k.Linting = nil
	s.Step(session.Step{Do: "focus", ID: "lint"})
}

// lintSlice is how many steps of a solver are taken before the page shows how far
// it is.
const lintSlice = 150_000

// goOn goes on with what is under way whenever the page comes back for more, and
// has it come back until all is done.
func goOn(s *session.Session) {
	k := &s.Memory.Keep
	if k.LintOf != k.Looked().Ed {
		k.Linting = nil
	}
	if k.Linting == nil {
		return
	}
	if !s.Resting() || !k.Linting.Go(lintSlice) {
		s.Partial = true
		return
	}
	tellFindings(k)
	k.Linting = nil
}

// tellFindings keeps what going through an edition found.
func tellFindings(k *session.Keeping) {
	k.Linted, k.Findings = k.LintOf, k.Linting.Findings()
	quote.Worst(k.Findings)
}

// progress is how far going through an edition is, such as "rules, 120 of 479".
func progress(name string, done, of int) string {
	if of == 0 {
		return name
	}
	return fmt.Sprintf("%s, %d of %d", name, done, of)
}

func useBeside(s *session.Session, _ session.Act) {
	k := &s.Memory.Keep
	h := k.Candidate()
	if h == nil {
		s.Fault("No other edition is open any more: bring it in again.")
		return
	}
	s.ChangeEdition(*h, true)
	s.Step(session.Step{Do: "keep-catalogue", Text: string(h.File)})
	s.Notice = strings.TrimSpace("Edition " + letters.Isolate(h.Ed.Cat.Edition) + " is in use. " + s.Notice)
	goThrough(s)
}

func dropBeside(s *session.Session, _ session.Act) {
	s.Memory.Keep.Apart()
	s.Spoken = "The comparison is closed."
	s.Step(session.Step{Do: "focus", ID: "f-tables"})
}

// editionField gives the edition beside another name or first day.
func editionField(name string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		h := s.Memory.Keep.Candidate()
		if h == nil || strings.TrimSpace(a.Value) == "" || len(a.Value) > 60 {
			return fmt.Errorf("an edition has a name of up to 60 letters and a first day")
		}
		edition, from := a.Value, ""
		if name == "from" {
			edition, from = "", a.Value
		}
		file, err := tables.Rename(h.File, edition, from)
		if err == nil {
			compareWith(s, "the edition", file)
		}
		return err
	}
}

// ---- quotes kept in the browser ----

// touch says what the change means for one kept quote: ID is its place in the
// browser, Value its draft, and On that there are more.
func touch(s *session.Session, a session.Act) {
	k := &s.Memory.Keep
	if k.Diff == nil {
		return
	}
	k.More = a.On
	if a.On {
		s.Step(session.Step{Do: "send-kept"})
	}
	if a.ID == "" {
		return
	}
	x := session.Touched{ID: a.ID}
	d, err := quote.ReadDraft([]byte(a.Value))
	if err != nil {
		x.Name, x.Fault = "A saved quote", session.Sentence(err)
	} else {
		x.Name, x.Line = session.NameOf(k.Diff.From.Cat, d)
		x.Touch = k.Diff.Touch(d)
	}
	for i := range k.Touched {
		if old := &k.Touched[i]; old.ID == x.ID {
			if x.Touch != nil && x.Touch.Current && old.Touch != nil && !old.Touch.Current {
				old.Moved = true
			} else {
				*old = x
			}
			return
		}
	}
	k.Touched = append(k.Touched, x)
}

// moveKept moves a kept quote to the edition in use and hands it back to be
// kept; the state before stays among its earlier ones.
func moveKept(s *session.Session, a session.Act) {
	d, err := quote.ReadDraft([]byte(a.Value))
	if err == nil && d.Issued != "" {
		err = fmt.Errorf("it is signed and stays as it is; open it to make a revision of it")
	}
	var q *quote.Quote
	if err == nil {
		d, _, _ = quote.Move(s.Memory.Edition, d)
		q, err = quote.Compute(s.Memory.Edition, d)
	}
	if err != nil {
		s.Fault("The saved quote was not moved: %s", session.Sentence(err))
		return
	}
	data, err := d.Bytes()
	if err != nil {
		return
	}
	g := session.GistOf(q)
	s.Notice = g.Name + " is moved to the edition in use. Its state before stays among its earlier ones."
	s.Step(session.Step{Do: "keep-moved", ID: a.ID, Name: "moved to edition " + s.Memory.Edition.Cat.Edition,
		Text: string(data), Gist: &g})
	for i := range s.Memory.Keep.Touched {
		if x := &s.Memory.Keep.Touched[i]; x.ID == a.ID {
			x.Moved = true
		}
	}
}

// moveHere moves the quote in work to the edition in use. One that is signed
// becomes a revision, since it is not what was signed any more.
func moveHere(s *session.Session, _ session.Act) {
	if s.Other == nil {
		return
	}
	moved, lost, changes := quote.Move(s.Memory.Edition, s.Other)
	s.Draft, s.Other = moved, nil
	s.Notice = "The quote is moved to the edition in use."
	if len(lost) > 0 {
		s.Notice += " It does not have: " + strings.Join(lost, ", ") + "."
	}
	s.Tell(changes)
}

// builtIn takes the catalogue that this page was made with in the place of the
// demonstration. One that cannot be used is told of, and the demonstration stays.
func builtIn(s *session.Session, a session.Act) {
	file := []byte(a.Value)
	ed, err := s.Memory.Open(file)
	if err != nil {
		s.Fault("The catalogue built into this page cannot be used, and the demonstration catalogue takes its place. %s",
			session.Sentence(err))
		return
	}
	was := s.Memory.Keep.BuiltIn.Ed
	s.Memory.Keep.BuiltIn = session.Held{Ed: ed, File: file}
	if s.Memory.Edition == was {
		s.ChangeEdition(s.Memory.Keep.BuiltIn, false)
	}
}
