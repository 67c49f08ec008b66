package app

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// dearer is the demonstration catalogue in which the rubber rub rail costs 100
// more.
func dearer(t *testing.T) string {
	t.Helper()
	require.True(t, bytes.Contains(catalogue.Demo, []byte(`"rail-rubber": "380.00"`)))
	return strings.Replace(string(catalogue.Demo), `"rail-rubber": "380.00"`, `"rail-rubber": "480.00"`, 1)
}

func saved(t *testing.T, s shown) string {
	t.Helper()
	require.Empty(t, s.Fault)
	require.Len(t, s.Do, 1)
	require.Equal(t, "save", s.Do[0].Do)
	return s.Do[0].Text
}

func sheetsOf(t *testing.T, pairs ...string) string {
	t.Helper()
	var list []map[string]string
	for i := 0; i < len(pairs); i += 2 {
		list = append(list, map[string]string{"name": pairs[i], "text": pairs[i+1]})
	}
	data, err := json.Marshal(list)
	require.NoError(t, err)
	return string(data)
}

// A saved quote with a text that is too long says which and by how much; a new one is
// begun, and the saved one is not touched.
func TestASavedQuoteWithATextThatIsTooLongIsSaidToStay(t *testing.T) {
	p := open(t)
	var d map[string]any
	require.NoError(t, json.Unmarshal(p.do(Act{Do: "start"}).Draft, &d))
	d["title"] = strings.Repeat("a", quote.MaxText+3)
	p.req["draft"] = d
	s := p.do(Act{Do: "start"})
	assert.Contains(t, s.Fault, "the saved one stays as it is under Saved quotes.")
	assert.Contains(t, s.Fault, "title: is too long by 3 letters; the most is 400 plain letters")
	assert.NotContains(t, string(s.Draft), "aaaa")
}

func TestTablesGoOutAndComeBack(t *testing.T) {
	p := open(t)
	s := p.do(Act{Do: "go", ID: "catalogue"})
	require.Contains(t, s.Regions["main"], "For the person who keeps it")
	require.Equal(t, "Catalogue – Boxwright", s.Title)
	table := saved(t, p.do(Act{Do: "tables-out", ID: "prices"}))
	require.True(t, strings.HasPrefix(table, "\ufeffid,what,price,"))

	// As it went out: the same content, and nothing to set beside.
	s = p.do(Act{Do: "tables-in", ID: "prices.csv", Value: sheetsOf(t, "prices.csv", table)})
	require.Contains(t, s.Say, "same content as the edition in use")
	require.NotContains(t, s.Regions["main"], "not in use yet")

	// A fault is located, and nothing is taken.
	s = p.do(Act{Do: "tables-in", ID: "prices.csv",
		Value: sheetsOf(t, "prices.csv", strings.Replace(table, "insert,380.00,", "insert,<b>,", 1))})
	require.Contains(t, s.Regions["main"], "Not taken: prices.csv")
	require.Contains(t, s.Regions["main"], "prices.csv, row 141 &#34;rail-rubber&#34;, column price")
	require.Contains(t, s.Regions["main"], "“&lt;b&gt;” is not a number of dollars")
	require.NotContains(t, s.Regions["main"], "not in use yet")

	// A list of the changed prices alone: what is wrong is said once, and no number that is not so.
	s = p.do(Act{Do: "tables-in", ID: "prices.csv", Value: sheetsOf(t, "prices.csv", "id,price\nrail-rubber,480\n")})
	require.Contains(t, s.Regions["main"], "prices.csv lacks ")
	require.Contains(t, s.Regions["main"], "The first faults are listed. Nothing was changed.")

	s = p.do(Act{Do: "tables-in", ID: "prices.csv",
		Value: sheetsOf(t, "prices.csv", strings.Replace(table, "insert,380.00,", "insert,480,", 1))})
	require.Empty(t, s.Fault)
	require.NotContains(t, s.Regions["main"], "Not taken")
	require.Contains(t, s.Regions["main"], "The other edition, not in use yet")
	require.Contains(t, s.Regions["main"], "It has the name of the edition in use")
	require.Contains(t, s.Regions["main"], "+26.3 %")
	require.Equal(t, "send-kept", s.Do[len(s.Do)-1].Do)
	require.Equal(t, dearer(t), saved(t, p.do(Act{Do: "save-catalogue", ID: "beside"})))
	require.Equal(t, string(catalogue.Demo), saved(t, p.do(Act{Do: "save-catalogue"})))

	// A second table goes into what was brought in before.
	rules := saved(t, p.do(Act{Do: "tables-out", ID: "rules"}))
	s = p.do(Act{Do: "tables-in", ID: "rules.csv",
		Value: sheetsOf(t, "rules.csv", strings.Replace(rules, "body.length_in > 153,chassis.gvwr_lb >= 14500",
			"body.length_in > 153,chassis.gvwr_lb >= 16000", 1))})
	require.Contains(t, s.Regions["main"], "+26.3 %")
	require.Contains(t, s.Regions["main"], "if body.length_in &gt; 153 then chassis.gvwr_lb &gt;= 16000")

	// It gets a name of its own.
	s = p.do(Act{Do: "set", ID: "edition.name", Value: "2027-02"},
		Act{Do: "set", ID: "edition.from", Value: "2027-02-01"})
	require.NotContains(t, s.Regions["main"], "It has the name of the edition in use")
	s = p.do(Act{Do: "set", ID: "edition.from", Value: ""})
	require.Contains(t, s.Regions["main"], "an edition has a name")
	s = p.do(Act{Do: "use-beside"})
	require.Empty(t, s.Fault)
	kept := stepOf(s, "keep-catalogue")
	require.NotNil(t, kept)
	cat, err := config.Read([]byte(kept.Text))
	require.NoError(t, err)
	require.Equal(t, "2027-02", cat.Edition)
	require.Equal(t, "2027-02-01", cat.ValidFrom.String())
	require.Contains(t, s.Regions["main"], "The edition before")
	require.Contains(t, string(s.Draft), cat.Hash(), "the unsigned quote in work is carried over")
	s = p.do(Act{Do: "drop-beside"})
	require.NotContains(t, s.Regions["main"], "The edition before")
	s = p.do(Act{Do: "go", ID: "unit"}, Act{Do: "go", ID: "needs"})
	require.NotContains(t, s.Regions["main"], "For the person who keeps it")
}

func TestAFaultyCatalogueIsToldWhole(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "go", ID: "catalogue"})
	bad := strings.ReplaceAll(string(catalogue.Demo), `"zone": "module-rear"`, `"zone": "attic"`)
	s := p.do(Act{Do: "set-beside", ID: "mine.json", Value: bad})
	require.Contains(t, s.Regions["main"], "Not taken: mine.json")
	require.Greater(t, strings.Count(s.Regions["main"], "&#34;attic&#34; is not one of"), 3)
	s = p.do(Act{Do: "set-beside", ID: "mine.json", Value: "{"})
	require.Contains(t, s.Regions["main"], "the file ends too early")
	s = p.do(Act{Do: "tables-in", ID: "x", Value: "{"})
	require.Contains(t, s.Fault, "could not be read")
	s = p.do(Act{Do: "use-beside"})
	require.Contains(t, s.Fault, "No other edition is open any more")
}

func TestGoingThroughTheRules(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "go", ID: "catalogue"})
	s := p.do(Act{Do: "lint"})
	require.Contains(t, s.Regions["main"], "No open items were found.")
	require.Contains(t, s.Regions["main"], "worth a look")
	p.do(Act{Do: "set-beside", ID: "mine.json", Value: strings.Replace(string(catalogue.Demo), `"rules": [`, `"rules": [
    {"id": "no-rubber", "kind": "supplier", "then": {"not": {"pick": "rail-rubber"}}, "reason": "The rubber is no longer made."},`, 1)})
	s = p.do(Act{Do: "lint"})
	require.Contains(t, s.Regions["main"], "can be in no unit: rule &#34;no-rubber&#34;")
}

// Going through the rules tells how far it is, lets other presses in between, and keeps
// what it found when it is stopped.
func TestGoingThroughTheRulesIsStopped(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "go", ID: "catalogue"}, Act{Do: "set-beside", ID: "mine.json", Value: strings.Replace(string(catalogue.Demo),
		`"rules": [`, `"rules": [
    {"id": "no-rubber", "kind": "supplier", "then": {"not": {"pick": "rail-rubber"}}, "reason": "The rubber is no longer made."},`, 1)})
	s := p.ask(Act{Do: "lint"})
	require.True(t, s.Partial)
	require.Contains(t, s.Regions["main"], "Checking whether any unit is possible.")
	slices := 0
	for !strings.Contains(s.Regions["main"], "Checking rules, ") {
		require.True(t, s.Partial, "it ended before it came to the rules")
		s = p.ask(Act{Do: "rest"})
		slices++
	}
	require.Contains(t, s.Regions["main"], `<progress id="lint-bar"`)
	s = p.ask(Act{Do: "units"})
	require.True(t, s.Partial, "it goes on after another press")
	require.Contains(t, s.Regions["main"], "Checking rules, ", "a press does not wait for a slice")
	s = p.ask(Act{Do: "stop-lint"})
	require.False(t, s.Partial)
	require.Contains(t, s.Regions["main"], "Stopped while checking rules, ")
	require.Contains(t, s.Regions["main"], "can be in no unit: rule &#34;no-rubber&#34;", "what was found stays")
	s = p.do(Act{Do: "lint"})
	require.NotContains(t, s.Regions["main"], "Stopped while")
	require.Contains(t, s.Regions["main"], "can be in no unit: rule &#34;no-rubber&#34;")
	s = p.ask(Act{Do: "stop-lint"})
	require.NotContains(t, s.Regions["main"], "Stopped while", "there was nothing to stop")
	require.Positive(t, slices)
}

// rubber is a page with a unit that has the rubber rub rail.
func rubber(t *testing.T) *browser {
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}, Act{Do: "set", ID: "title", Value: "Medic 4"})
	s := p.do(Act{Do: "pick", ID: "rail-rubber", On: true})
	require.Contains(t, string(s.Draft), "rail-rubber")
	return p
}

func TestKeptQuotesAreTouchedAndMoved(t *testing.T) {
	p := rubber(t)
	touched := string(p.req["draft"].(json.RawMessage))
	key := demoKey(t, p, "demo-key.json")
	p.do(parties...)
	signed := p.do(Act{Do: "sign", Value: keyPhrase, File: key})
	require.Empty(t, signed.Fault)
	total := quoteOf(t, signed)
	plain := open(t).do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"})

	p.do(Act{Do: "go", ID: "catalogue"}, Act{Do: "set-beside", ID: "dearer.json", Value: dearer(t)})
	s := p.do(Act{Do: "touch", ID: "a", Value: touched, On: true})
	require.NotNil(t, stepOf(s, "send-kept"))
	require.Contains(t, s.Regions["main"], "Going through the saved quotes: 1 looked at so far.")
	p.do(Act{Do: "touch", ID: "b", Value: string(signed.Draft), On: true})
	p.do(Act{Do: "touch", ID: "c", Value: string(plain.Draft), On: true})
	s = p.do(Act{Do: "touch", ID: "d", Value: "not a draft"})
	require.Nil(t, stepOf(s, "send-kept"))
	main := s.Regions["main"]
	require.Contains(t, main, "2 saved quotes are touched, of 4 looked at.")
	require.Contains(t, main, "<b>+1")
	require.Contains(t, main, "Signed: it stays as signed.")
	require.Contains(t, main, "Total "+total)
	require.Contains(t, main, "It cannot be read")
	require.Contains(t, main, "It can be moved once the edition is in use.")
	require.NotContains(t, main, `data-act="move-kept"`)

	// Taken into use: the signed quote in work stays as it is, to the byte.
	s = p.do(Act{Do: "use-beside"})
	require.Empty(t, s.Fault)
	require.JSONEq(t, string(signed.Draft), string(s.Draft))
	require.Contains(t, s.Regions["main"], "It is signed and stands as it was signed: total "+total)
	require.Contains(t, s.Regions["main"], `data-act="move-kept"`)

	s = p.do(Act{Do: "move-kept", ID: "b", Value: string(signed.Draft)})
	require.Contains(t, s.Fault, "it is signed and stays as it is")
	s = p.do(Act{Do: "move-kept", ID: "a", Value: touched})
	require.Empty(t, s.Fault)
	moved := stepOf(s, "keep-moved")
	require.NotNil(t, moved)
	require.Equal(t, "a", moved.ID)
	require.Equal(t, "Medic 4", moved.Gist.Name)
	d, err := quote.ReadDraft([]byte(moved.Text))
	require.NoError(t, err)
	require.True(t, d.Unit.Has("rail-rubber"))
	require.Equal(t, p.app.memory.Edition.Cat.Hash(), d.Unit.Edition)
	require.Contains(t, s.Regions["main"], ">moved<")
	s = p.do(Act{Do: "touch", ID: "a", Value: moved.Text})
	require.Contains(t, s.Regions["main"], ">moved<", "what it was before is still shown")
	require.Contains(t, s.Regions["main"], "2 saved quotes are touched")

	// Another edition altogether leaves nothing to compare.
	s = p.do(Act{Do: "load-catalogue", ID: "third.json", Value: strings.Replace(dearer(t), `"480.00"`, `"490.00"`, 1)},
		Act{Do: "go", ID: "catalogue"}, Act{Do: "go", ID: "catalogue"})
	require.NotContains(t, s.Regions["main"], "saved quotes are touched")
}

// quoteOf is the total of the quote that a reply shows.
func quoteOf(t *testing.T, s shown) string {
	t.Helper()
	_, rest, ok := strings.Cut(s.Regions["standing"], `<p class="big">`)
	require.True(t, ok)
	total, _, _ := strings.Cut(rest, "<")
	return total
}

// A quote of another edition is shown, kept to the byte, and changed only when
// it is moved.
func TestAQuoteOfAnotherEdition(t *testing.T) {
	p := rubber(t)
	before := string(p.req["draft"].(json.RawMessage))
	p.app = New()
	s := p.do(Act{Do: "kept-catalogue", ID: "the one kept", Value: dearer(t)}, Act{Do: "start"})
	require.Empty(t, s.Fault)
	require.JSONEq(t, before, string(s.Draft))
	require.Contains(t, s.Regions["main"], "Made with another edition of the catalogue: 2026-11")
	require.Contains(t, s.Regions["standing"], "made with another edition")
	for _, a := range []Act{{Do: "set", ID: "title", Value: "Other"}, {Do: "pick", ID: "hw-sealed", On: true},
		{Do: "complete", ID: "cheapest"}, {Do: "sign"}} {
		s = p.do(a)
		require.NotEmpty(t, s.Fault, a.Do)
		require.JSONEq(t, before, string(s.Draft), a.Do)
	}
	for _, area := range []string{"unit", "weight", "power", "space", "delivery", "price", "compare", "quote"} {
		s = p.do(Act{Do: "go", ID: area})
		require.Empty(t, s.Fault, area)
		require.JSONEq(t, before, string(s.Draft), area)
		require.Contains(t, s.Regions["main"], "Made with another edition", area)
	}
	require.Contains(t, s.Regions["main"], "This quote cannot be issued yet")
	s = p.do(Act{Do: "move-here"})
	require.Empty(t, s.Fault)
	require.NotContains(t, s.Regions["main"], "Made with another edition")
	require.Contains(t, string(s.Draft), "rail-rubber")
	require.NotContains(t, s.Regions["main"], "This quote cannot be issued yet")

	// Back to the edition it was made with, and to the quote as it was.
	p.req["draft"] = json.RawMessage(before)
	s = p.do(Act{Do: "demo-catalogue"})
	require.JSONEq(t, before, string(s.Draft))
	require.NotContains(t, s.Regions["main"], "Made with another edition")

	// Another quote is begun in its place without a word about the old one.
	p.app = New()
	s = p.do(Act{Do: "kept-catalogue", Value: dearer(t)}, Act{Do: "new", ID: "van-9500-148-gas"})
	require.Empty(t, s.Fault)
	require.NotContains(t, s.Regions["main"], "Made with another edition")
	require.Contains(t, string(s.Draft), "van-9500-148-gas")
}

func TestARevisionOfASignedQuoteOfAnotherEdition(t *testing.T) {
	p := rubber(t)
	p.do(parties...)
	signed := p.do(Act{Do: "sign", Value: keyPhrase, File: demoKey(t, p, "demo-key.json")})
	require.Empty(t, signed.Fault)
	total := quoteOf(t, signed)
	p.app = New()
	s := p.do(Act{Do: "kept-catalogue", Value: dearer(t)}, Act{Do: "go", ID: "quote"})
	require.Contains(t, s.Regions["main"], "stands as it was signed: total "+total)
	require.JSONEq(t, string(signed.Draft), string(s.Draft))
	around := s.Regions["masthead"] + s.Regions["areas"] + s.Regions["standing"] + s.Say
	require.Contains(t, around, total, "beside every area, and at the foot, stands what was signed")
	require.Equal(t, 3, strings.Count(around, total))
	require.Equal(t, 3, strings.Count(around, "USD "), "and no other price")
	s = p.do(Act{Do: "move-here"})
	d := signedDraft(t, s)
	require.Empty(t, d.Issued)
	require.Equal(t, 1, d.Rev)
	require.NotEmpty(t, d.Prev)
	require.Contains(t, s.Regions["main"], "As it was issued: total "+total)
}

func TestTheCatalogueOfThePage(t *testing.T) {
	p := openAt(t, "catalogue")
	s := p.do(Act{Do: "built-in", Value: strings.Replace(dearer(t), `"title": "Demonstration catalogue`,
		`"title": "Own catalogue`, 1)})
	require.Empty(t, s.Fault)
	require.Contains(t, s.Regions["main"], "Own catalogue of an invented plant")
	s = p.do(Act{Do: "load-catalogue", ID: "x.json", Value: dearer(t)})
	require.Contains(t, s.Regions["main"], "Demonstration catalogue")
	s = p.do(Act{Do: "demo-catalogue"})
	require.Contains(t, s.Regions["main"], "Own catalogue of an invented plant")
	embedded := stepOf(p.do(Act{Do: "embed"}), "embed")
	require.Contains(t, embedded.Text, "Own catalogue")
	require.Equal(t, "boxwright-demo-2026-11.html", embedded.Name)

	for _, bad := range []string{"", "{", strings.Repeat(" ", config.MaxCatalogueBytes+1)} {
		p := open(t)
		s := p.do(Act{Do: "built-in", Value: bad}, Act{Do: "start"})
		assert.Contains(t, s.Fault, "The catalogue built into this page cannot be used, and the demonstration "+
			"catalogue takes its place.")
		assert.Contains(t, s.Regions["main"], "Demonstration catalogue")
	}
}
