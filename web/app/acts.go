package app

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing/link"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
)

// acts are all the things the page can ask for, by the word in its markup.
var acts = map[string]func(*session, Act){
	"start":           func(*session, Act) {},
	"restore":         func(*session, Act) {},
	"rehearse":        func(*session, Act) {}, // ignored when sent with other acts
	"go":              goArea,
	"chapter":         func(s *session, a Act) { s.view.Chapter, s.view.Asked, s.view.Search = a.ID, "", "" },
	"search":          func(s *session, a Act) { s.view.Search = clip(a.Value, 80) },
	"units":           func(s *session, _ Act) { s.view.Metric = !s.view.Metric },
	"theme":           setTheme,
	"print":           func(s *session, _ Act) { s.step(Step{Do: "print"}) },
	"pick":            pick,
	"release":         release,
	"keep":            keep,
	"qty":             setQty,
	"chassis":         setChassis,
	"body":            setBody,
	"complete":        complete,
	"settle":          func(s *session, a Act) { s.effort, _ = strconv.Atoi(a.Value) },
	"why":             ask,
	"mend":            mend,
	"offer":           takeOffer,
	"set":             setField,
	"carry":           carry,
	"stow":            stow,
	"take-out":        takeOut,
	"suggest":         suggest,
	"add-ticket":      addTicket,
	"drop-ticket":     dropTicket,
	"count-ticket":    countTicket,
	"new":             startNew,
	"remount":         startRemount,
	"remount-years":   remountYears,
	"mountings":       func(s *session, _ Act) { s.view.Mountings = !s.view.Mountings },
	"open-link":       openLink,
	"copy-link":       func(s *session, a Act) { s.step(Step{Do: "copy", Text: a.Value}); s.notice = "Link copied." },
	"pin":             pin,
	"unpin":           unpin,
	"swap":            swap,
	"only-dif":        func(s *session, a Act) { s.view.OnlyDif = a.On },
	"load-catalogue":  loadCatalogue,
	"kept-catalogue":  keptCatalogue,
	"demo-catalogue":  demoCatalogue,
	"built-in":        builtIn,
	"keeping":         openKeeping,
	"tables-out":      tablesOut,
	"tables-in":       tablesIn,
	"save-catalogue":  saveCatalogue,
	"set-beside":      setBeside,
	"use-beside":      useBeside,
	"drop-beside":     dropBeside,
	"lint":            lint,
	"embed":           embed,
	"touch":           touch,
	"move-kept":       moveKept,
	"move-here":       moveHere,
	"save-draft":      saveDraft,
	"open-draft":      openDraft,
	"add":             add,
	"drop":            drop,
	"work-on":         workOn,
	"open-costs":      openCosts,
	"lock-costs":      lockCosts,
	"forget-costs":    forgetCosts,
	"key-new":         newKey,
	"key-import":      importKey,
	"key-export":      exportKey,
	"key-forget":      forgetKey,
	"sign":            signQuote,
	"foreign-open":    func(s *session, a Act) { openLink(s, Act{Value: s.view.Foreign, File: a.File}) },
	"import":          importKept,
	"quotes":          func(s *session, _ Act) { s.view.Area = "quote"; s.step(Step{Do: "focus", ID: "kept-quotes"}) },
	"foreign-drop":    func(s *session, _ Act) { s.view.Foreign = "" },
	"find":            func(s *session, a Act) { s.view.Find = clip(a.Value, 80) },
	"wish":            wish,
	"propose":         findProposals,
	"take-proposal":   takeProposal,
	"paste-list":      func(s *session, a Act) { a.ID = "list"; setField(s, a) },
	"clear-list":      func(s *session, _ Act) { s.draft.Requirements = nil },
	"take-answer":     takeAnswers,
	"confirm-answers": confirmAnswers,
	"save-answers":    saveAnswers,
	"save-table":      saveTable,
	"paper":           setPaper,
	"add-rival":       addRival,
	"drop-rival":      dropRival,
	"guide":           guide,
	"too-late":        func(s *session, a Act) { s.view.Late = !s.view.Late },
}

// otherEdition are the acts that need no draft to be at hand, since they decide
// which edition it is taken with.
var otherEdition = map[string]bool{"load-catalogue": true, "kept-catalogue": true, "demo-catalogue": true, "built-in": true, "use-beside": true, "move-here": true}

func goArea(s *session, a Act) {
	s.view.Area, s.view.Asked, s.view.Keeping = areaOf(a.ID).ID, "", false
	s.step(Step{Do: "top"})
}

func setTheme(s *session, a Act) {
	if slices.Contains([]string{"", "light", "dark", "contrast"}, a.Value) {
		s.view.Theme = a.Value
	}
}

// pick takes an option into the unit or out of it. In a group of which only
// one can be had it takes the place of the other.
func pick(s *session, a Act) {
	cat := s.app.edition.Cat
	o := cat.OptionByID(a.ID)
	if o == nil {
		s.fault("There is no option %q in this edition.", a.ID)
		return
	}
	u := &s.draft.Unit
	if !a.On {
		u.Drop(o.ID)
		s.refill()
		return
	}
	if !u.Has(o.ID) && s.judge(o.ID) == rules.RuledOut {
		s.view.Asked = o.ID
		s.notice = o.Label + " cannot be had with the present choices."
		return
	}
	full, changes, _ := propose.Take(s.app.edition, s.draft, o.ID)
	if len(changes) > propose.FewChanges {
		s.view.Asked = o.ID
		s.notice = o.Label + " fits, but " + strconv.Itoa(len(changes)) + " things filled in would change. See what is offered beside it."
		s.step(Step{Do: "focus", ID: "why-" + o.ID})
		return
	}
	s.view.Asked = ""
	s.draft.Unit = full
	s.tell(changes)
}

// takeOffer takes an option in one of the ways offered, worked out again from
// the same unit.
func takeOffer(s *session, a Act) {
	q, err := s.compute()
	if err != nil {
		return
	}
	offers := s.ways(a.ID).offers
	i, err := strconv.Atoi(a.Value)
	if err != nil || i < 0 || i >= len(offers) {
		s.fault("That is no longer offered; ask again.")
		return
	}
	s.draft.Unit = offers[i].Unit.Clone()
	s.view.Asked = ""
	s.step(Step{Do: "focus", ID: "o-" + a.ID}) // the button pressed is gone
	s.notice = s.app.edition.Cat.LabelOf(a.ID) + " is in. " + propose.ChangeWords(q, offers[i].Changes)
}

// release makes a deliberate pick give way again.
func release(s *session, a Act) {
	if p := s.draft.Unit.Find(a.ID); p != nil {
		p.Filled = true
		s.refill()
		s.notice = s.app.edition.Cat.LabelOf(a.ID) + " may now give way to other choices. " + s.notice
	}
}

// keep makes what was filled in the customer's own choice.
func keep(s *session, a Act) {
	if s.draft.Unit.Filled(a.ID) {
		s.draft.Unit.Keep(a.ID)
		s.refill()
	}
}

// complete fills every group: with what is standard, or for a goal.
func complete(s *session, a Act) {
	if a.ID == "" {
		s.refill()
		return
	}
	full, said, ok := propose.Complete(s.app.edition, s.draft, propose.Goal(a.ID))
	if !ok {
		s.notice = "No full unit keeps your choices and every limit; what stands in the way is listed."
		return
	}
	s.draft.Unit = full
	s.notice = said
}

func setQty(s *session, a Act) {
	o := s.app.edition.Cat.OptionByID(a.ID)
	if o == nil {
		return
	}
	most := max(o.MaxQty, 1)
	n, err := strconv.Atoi(strings.TrimSpace(a.Value))
	if err != nil || n < 0 || n > most {
		s.wrong("qty-"+a.ID, a.Value, "a whole number from 0 to "+strconv.Itoa(most))
		return
	}
	s.right("qty-" + a.ID)
	if n == 0 {
		s.draft.Unit.Drop(o.ID)
	} else {
		s.draft.Unit.Set(config.Pick{Option: o.ID, Qty: n})
	}
	s.refill()
}

func setChassis(s *session, a Act) {
	if s.app.edition.Cat.ChassisByID(a.ID) == nil {
		s.fault("There is no chassis %q in this edition.", a.ID)
		return
	}
	s.move(&s.draft.Unit.Chassis, a.ID)
}

func setBody(s *session, a Act) {
	if s.app.edition.Cat.BodyByID(a.ID) == nil {
		s.fault("There is no module %q in this edition.", a.ID)
		return
	}
	s.move(&s.draft.Unit.Body, a.ID)
}

// move puts the unit on another chassis or body and completes it there. When
// the picks cannot stand on it the unit stays as it is and the reason is shown.
func (s *session) move(place *string, wanted string) {
	if s.judge(wanted) == rules.RuledOut {
		s.view.Asked = wanted
		s.notice = s.app.edition.Cat.LabelOf(wanted) + " does not go with the present choices."
		return
	}
	s.view.Asked = ""
	before := s.draft.Unit.Clone()
	*place = wanted
	s.draft.Unit.Keep(wanted)
	s.restart(&before)
	s.refill()
}

// judge says what an id is beside the picks of the unit. What the table is still
// checking is given more work, since the user asks for it now.
func (s *session) judge(id string) rules.State {
	w, err := s.work()
	if err != nil {
		return rules.Checking
	}
	u, limits := &w.quote.Draft.Unit, quote.Limits(s.app.edition, w.quote.Draft)
	state := w.quote.Answer.Of(id)
	for effort := 2; effort <= maxEffort && state == rules.Checking; effort += 2 {
		answer := w.quote.Edition.Rules.Settle(u, limits, rules.DefaultBudget<<effort)
		state = answer.Of(id)
	}
	return state
}

// tell words what the program changed to keep the unit whole.
func (s *session) tell(changes []rules.Change) {
	cat := s.app.edition.Cat
	for i, c := range changes {
		if i == 4 {
			s.notice += " And " + strconv.Itoa(len(changes)-i) + " more."
			break
		}
		if c.Added {
			s.notice += " Also added: " + cat.LabelOf(c.Option) + "."
		} else {
			s.notice += " Gave way: " + cat.LabelOf(c.Option) + "."
		}
	}
	s.notice = strings.TrimSpace(s.notice)
}

// ask opens or closes the answer to "why not?".
func ask(s *session, a Act) {
	if s.view.Asked == a.ID {
		s.view.Asked = ""
		return
	}
	s.view.Asked = a.ID
	s.step(Step{Do: "focus", ID: "why-" + a.ID})
}

// mend applies an offered way out: ID is the thing wanted, Value the position
// in the list of ways, worked out again from the same unit.
func mend(s *session, a Act) {
	list := s.ways(a.ID).mends
	i, err := strconv.Atoi(a.Value)
	if err != nil || i < 0 || i >= len(list) {
		s.fault("That way out is no longer open; ask again.")
		return
	}
	s.draft.Unit = list[i].Unit.Clone()
	s.view.Asked = ""
	s.step(Step{Do: "focus", ID: "o-" + a.ID}) // the button pressed is gone
	s.notice = "Done: " + s.app.edition.Cat.LabelOf(a.ID) + " is in."
	s.tell(list[i].Changes)
}

func (s *session) limits() *rules.Limits { return quote.Limits(s.app.edition, s.draft) }

// startNew begins a quote on a chassis, keeping the parties.
func startNew(s *session, a Act) {
	old := s.draft
	s.draft = quote.Begin(s.app.edition, a.ID, a.Value, s.req.Today)
	s.draft.Seller, s.draft.Buyer, s.draft.Title, s.draft.Number = old.Seller, old.Buyer, old.Title, old.Number
	s.draft.Needs, s.draft.Requirements = old.Needs, old.Requirements
	s.draft.Unit.RuleSet, s.draft.Unit.NeededBy, s.draft.Unit.Details = old.Unit.RuleSet, old.Unit.NeededBy, old.Unit.Details
	s.draft.Tickets, s.draft.Wiring = old.Tickets, old.Wiring
	s.weighed(&old.Unit)
	s.notice = "A new unit was begun. Undo brings the earlier one back."
	s.learn()
}

// openLink replaces the draft by the one a link holds; the earlier one is set
// aside in Compare, so that nothing is lost.
func openLink(s *session, a Act) {
	own, _, earlier := link.Split(a.Value)
	d, frozen, err := link.Decode(s.app.edition.Cat, a.Value)
	if e, ok := errors.AsType[*link.Error](err); ok && e.Code == link.UnknownEdition {
		s.view.Foreign, s.view.Area = link.With(own, earlier), "quote"
		s.notice = "The link was made with a catalogue edition this page does not hold. It is shown as it was issued; the quote worked on stays."
		return
	}
	if err != nil {
		s.fault("%s", sentence(err))
		return
	}
	before := s.draft.Issued
	if s.keepAside() {
		s.notice = "The quote was opened from its link. The one worked on before is set aside in Compare."
	} else {
		s.notice = "The quote was opened from its link."
	}
	s.draft = d
	s.brought(d)
	s.recall(append(append(strings.Fields(a.File), earlier, before), s.pins...)...)
	s.view.Area, s.view.Asked, s.view.Foreign, s.view.Paper, s.view.Guide = "quote", "", "", "", 0
	s.view.Received = s.mark()
	s.step(Step{Do: "new-quote"})
	s.tellNewFigures(frozen)
}

// tellNewFigures says where this copy of the page computes another price or date
// than an unsigned link came with. Of a signed one the check list says so.
func (s *session) tellNewFigures(was *link.Frozen) {
	q, err := s.compute()
	if err != nil || s.draft.Issued != "" || q.Total() == was.Total && q.Plan.EvenOdds == was.Even {
		return
	}
	s.notice += " It was made with a total of " + was.Total + " and delivery on " + was.Even.Long() + "; this copy of the page computes " +
		q.Total() + " and " + q.Plan.EvenOdds.Long() + "."
}

// keepAside pins the present draft when it holds any deliberate choice.
func (s *session) keepAside() bool {
	chosen := slices.ContainsFunc(s.draft.Unit.Picks, func(p config.Pick) bool { return !p.Filled })
	if !chosen && s.draft.Buyer.Name == "" {
		return false
	}
	return s.pinDraft()
}

func (s *session) pinDraft() bool {
	q, err := s.compute()
	if err != nil {
		return false
	}
	text, err := link.Encode(q)
	if err != nil {
		return false
	}
	if slices.Contains(s.pins, text) {
		return true
	}
	if len(s.pins) >= maxPins {
		s.pins = s.pins[1:]
	}
	s.pins = append(s.pins, text)
	return true
}

func pin(s *session, _ Act) {
	if s.pinDraft() {
		s.notice = "Set aside for comparison. Now change the unit, and compare."
	}
}

// pinLink sets a quote aside from its link.
func pinLink(s *session, a Act) error {
	d, _, err := link.Decode(s.app.edition.Cat, a.Value)
	if err != nil {
		return err
	}
	s.brought(d)
	if len(s.pins) >= maxPins {
		return errors.New("three quotes are set aside already: take one out first")
	}
	own, _, _ := link.Split(a.Value)
	s.pins = append(s.pins, own)
	return nil
}

func unpin(s *session, a Act) {
	if i, err := strconv.Atoi(a.ID); err == nil && i >= 0 && i < len(s.pins) {
		s.pins = slices.Delete(slices.Clone(s.pins), i, i+1)
	}
}

// swap works on a pinned quote and sets the present one aside in its place.
func swap(s *session, a Act) {
	i, err := strconv.Atoi(a.ID)
	if err != nil || i < 0 || i >= len(s.pins) {
		return
	}
	d, _, err := link.Decode(s.app.edition.Cat, s.pins[i])
	if err != nil {
		s.fault("%s", sentence(err))
		return
	}
	s.pins = slices.Delete(slices.Clone(s.pins), i, i+1)
	s.pinDraft()
	s.draft = d
}

func loadCatalogue(s *session, a Act) {
	file := []byte(a.Value)
	ed, err := quote.OpenEdition(file)
	if err != nil {
		s.fault("%s was not loaded; the catalogue in use stays. %s", a.ID, sentence(err))
		return
	}
	if ed.Cat.Hash() == s.app.edition.Cat.Hash() {
		return
	}
	s.changeEdition(held{ed, file}, true)
	s.step(Step{Do: "keep-catalogue", Text: a.Value})
	s.notice = strings.TrimSpace("Catalogue " + ed.Cat.Title + ", edition " + ed.Cat.Edition + ", is in use. " + s.notice)
}

// keptCatalogue takes up the one that was in use before.
func keptCatalogue(s *session, a Act) {
	file := []byte(a.Value)
	ed, err := quote.OpenEdition(file)
	if err != nil {
		s.fault("%s was not loaded; the catalogue in use stays. %s", a.ID, sentence(err))
		return
	}
	s.changeEdition(held{ed, file}, false)
}

func demoCatalogue(s *session, _ Act) {
	s.changeEdition(s.app.keep.builtIn, true)
	s.step(Step{Do: "keep-catalogue"})
	s.notice = strings.TrimSpace("The built-in catalogue is in use again. " + s.notice)
}

// changeEdition takes another edition into use. The quote in work is carried
// over, if so wanted; one that is signed stays as it is, and so does one that
// waits to be moved.
func (s *session) changeEdition(h held, carry bool) {
	s.app.use(h)
	d := s.draft
	if s.other != nil {
		d = s.other
	}
	switch {
	case d == nil:
	case d.Unit.Edition == h.ed.Cat.Hash() && s.app.suits(d) == nil:
		s.draft, s.other = d, nil
	case s.other != nil || d.Issued != "" || !carry:
		s.draft, s.other = nil, d
	default:
		moved, lost, changes := quote.Move(h.ed, d)
		s.draft = moved
		if len(lost) > 0 {
			s.fault("The new edition does not have: %s. These were left out; Undo brings the earlier state back.", strings.Join(lost, ", "))
		}
		s.tell(changes)
	}
}

func saveDraft(s *session, _ Act) {
	data, err := s.draft.Bytes()
	if err != nil {
		s.fault("%s", sentence(err))
		return
	}
	name := s.draft.Number
	if name == "" {
		name = "quote"
	}
	s.step(Step{Do: "save", Name: fileName(name) + ".json", Type: "application/json", Text: string(data) + "\n"})
}

func openDraft(s *session, a Act) {
	d, err := quote.ReadDraft([]byte(a.Value))
	if err == nil {
		err = s.app.suits(d)
	}
	if err != nil {
		s.fault("%s was not opened; the present quote stays. %s", a.ID, sentence(err))
		return
	}
	s.keepAside()
	s.draft = d
	s.brought(d)
	s.notice = "The quote was opened from " + a.ID + "."
}

// fileName keeps what every file system takes.
func fileName(text string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' {
			return r
		}
		return '-'
	}, text)
}

func clip(text string, most int) string {
	if len(text) > most {
		return strings.ToValidUTF8(text[:most], "")
	}
	return text
}
