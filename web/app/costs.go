package app

import (
	"bytes"
	"encoding/base64"
	"strings"

	"boxwright/pricing"
	"boxwright/pricing/costs"
	"boxwright/pricing/seal"
	"boxwright/web/areas/price"
)

// The seller's cost sheet is open only in this worker's memory: no reply
// carries any of it but the Price area's markup, and a worker that ends takes it
// along. The page keeps the sealed file.

// openCosts opens a sealed cost sheet, or seals one that is not: Value is the
// passphrase, File the file and Random 32 random bytes, both in base64.
func openCosts(s *session, a Act) {
	file, err := base64.StdEncoding.DecodeString(a.File)
	if err != nil || len(file) == 0 {
		s.fault("There is no cost sheet to open: choose its file.")
		return
	}
	ed := s.app.edition
	if seal.Is(file) {
		sheet, err := costs.Open(file, a.Value, ed.Cat, ed.Book)
		if err != nil {
			s.fault("The cost sheet was not opened: %s", plain(err))
			return
		}
		s.app.costs = sheet
		s.step(Step{Do: "keep-costs", Text: a.File})
		s.step(Step{Do: "focus", ID: "costs-lock"})
		s.notice = "The cost sheet is open until you lock it or close the page."
		return
	}
	sheet, err := costs.Read(file, ed.Cat, ed.Book)
	if err != nil {
		s.fault("The cost sheet was not taken: %s", plain(err))
		return
	}
	random, _ := base64.StdEncoding.DecodeString(a.Random)
	sealed, err := costs.Seal(bytes.NewReader(random), a.Value, file)
	if err != nil {
		s.fault("The cost sheet was not sealed: %s", plain(err))
		return
	}
	text := base64.StdEncoding.EncodeToString(sealed)
	s.app.costs = sheet
	s.step(Step{Do: "keep-costs", Text: text})
	s.step(Step{Do: "focus", ID: "costs-lock"})
	s.step(Step{Do: "save", Name: "costs.sealed", Type: "application/octet-stream", Text: text, Base64: true})
	s.notice = "The cost sheet is sealed and kept in this browser; its sealed file was saved. Keep the passphrase: nobody can open it without."
}

func lockCosts(s *session, _ Act) {
	s.app.costs = nil
	s.step(Step{Do: "focus", ID: "costs-pass"})
	s.notice = "The cost sheet is locked."
}

func forgetCosts(s *session, _ Act) {
	s.app.costs = nil
	s.req.Costs = false
	s.step(Step{Do: "keep-costs"})
	s.notice = "The sealed cost sheet was taken out of this browser."
}

func plain(err error) string { return strings.TrimPrefix(sentence(err), "seal: ") }

// tried are the discounts whose effect is shown.
var tried = []int64{0, 100, 200, 300, 400, 500, 750, 1000}

// private works out what the seller earns, for the Price area alone.
func (s *session) private(p *price.Page) {
	p.CostsKept = s.req.Costs
	sheet := s.app.costs
	if sheet == nil || sheet.Catalogue != p.Q.Edition.Cat.ID {
		return
	}
	c := &price.Costs{Title: sheet.Title, Margins: costs.Judge(sheet, p.Q.Price), Most: map[string]string{}}
	var list []pricing.Percent
	for _, n := range tried {
		list = append(list, hundredths(n))
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
