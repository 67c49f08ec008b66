package seller

import (
	"bytes"
	"encoding/base64"

	"github.com/shopspring/decimal"

	"boxwright/pricing"
	"boxwright/pricing/costs"
	"boxwright/pricing/money"
	"boxwright/pricing/seal"
	"boxwright/web/session"
)

// The seller's cost sheet is open only in this worker's memory: no reply
// carries any of it but the markup of this area, and a worker that ends takes it
// along. The page keeps the sealed file.

// openCosts opens a sealed cost sheet, or seals one that is not: Value is the
// passphrase, File the file and Random 64 random bytes, both in base64.
func openCosts(s *session.Session, a session.Act) {
	file, err := base64.StdEncoding.DecodeString(a.File)
	if err != nil || len(file) == 0 {
		s.Fault("There is no cost sheet to open: choose its file.")
		return
	}
	ed := s.Memory.Edition
	if seal.Sealed(file) {
		sheet, err := costs.Open(file, a.Value, ed.Cat, ed.Book)
		if err != nil {
			s.Fault("The cost sheet was not opened: %s", session.Plain(err))
			return
		}
		s.Memory.Costs = sheet
		s.Step(session.Step{Do: "keep-costs", Text: a.File})
		s.Step(session.Step{Do: "focus", ID: "costs-lock"})
		s.Notice = "The cost sheet is open until you lock it or close the page."
		return
	}
	sheet, err := costs.Read(file, ed.Cat, ed.Book)
	if err != nil {
		s.Fault("The cost sheet was not taken: %s", session.Plain(err))
		return
	}
	random, _ := base64.StdEncoding.DecodeString(a.Random)
	sealed, err := costs.Seal(bytes.NewReader(random), a.Value, file)
	if err != nil {
		s.Fault("The cost sheet was not sealed: %s", session.Plain(err))
		return
	}
	text := base64.StdEncoding.EncodeToString(sealed)
	s.Memory.Costs = sheet
	s.Step(session.Step{Do: "keep-costs", Text: text})
	s.Step(session.Step{Do: "focus", ID: "costs-lock"})
	s.Step(session.Step{Do: "save", Name: "costs.sealed", Type: "application/octet-stream", Text: text, Base64: true})
	s.Notice = "The cost sheet is sealed and saved on this device; its sealed file was saved. Keep the passphrase: " +
		"nobody can open it without."
}

func lockCosts(s *session.Session, _ session.Act) {
	s.Memory.Costs = nil
	s.Step(session.Step{Do: "focus", ID: "costs-pass"})
	s.Notice = "The cost sheet is locked."
}

func forgetCosts(s *session.Session, _ session.Act) {
	s.Memory.Costs = nil
	s.Req.Costs = false
	s.Step(session.Step{Do: "keep-costs"})
	s.Notice = "The sealed cost sheet was removed from this device."
}

// tried are the discounts whose effect is shown.
var tried = []int64{0, 100, 200, 300, 400, 500, 750, 1000}

// loadCosts works out what the seller earns.
func loadCosts(s *session.Session, p *Page) {
	p.CostsKept = s.Req.Costs
	sheet := s.Memory.Costs
	if sheet == nil || sheet.Catalogue != p.Q.Edition.Cat.ID {
		return
	}
	c := &Costs{Title: sheet.Title, Margins: costs.Judge(sheet, p.Q.Price), Most: map[string]string{}}
	var list []pricing.Percent
	for _, n := range tried {
		list = append(list, money.PercentOf(decimal.New(n, -2)))
	}
	var err error
	if c.Steps, err = costs.Effect(sheet, p.Q.Repriced, list); err != nil {
		return
	}
	for _, r := range sheet.Roles {
		if most, any, err := costs.Most(sheet, r, p.Q.Repriced); err == nil && any {
			c.Most[r.ID] = most.Show()
		}
	}
	p.Costs = c
}
