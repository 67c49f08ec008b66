package app

import (
	"encoding/json"
	"fmt"
	"math/rand"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	box "boxwright/config/body"
	"boxwright/config/seeds"
	"boxwright/pricing/bid"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// musts are the musts of needs that a unit keeps, counted by hand.
func musts(cat *config.Catalogue, n *quote.Needs, u *config.Unit) map[string]bool {
	ch, body := cat.ChassisByID(u.Chassis), cat.BodyOf(u)
	at := box.PlanesOf(ch, body)
	seats, patients, ahead, low := len(ch.CabSeats), 0, 0.0, 0.0
	top, loading := float64(at.Bare().HeightIn), float64(at.Bare().LoadingIn)
	for _, p := range u.Picks {
		o := cat.OptionByID(p.Option)
		top, loading = max(top, at.Reach(o).Top), loading-float64(o.LowersIn)*float64(p.Qty)
		for _, s := range o.Seats {
			if s.Kind == "cot" {
				patients += p.Qty
			} else {
				seats += p.Qty
			}
		}
		for _, at := range o.Places {
			if at.Kind == "bumper" && at.Face == config.FaceFront || at.Kind == "step" && at.Face == config.FaceRear {
				ahead += float64(at.OutIn)
			}
		}
		low += float64(o.HeadroomIn) * float64(p.Qty)
	}
	tail := max(float64(ch.BodyStartIn+body.LengthIn), float64(ch.WheelbaseIn+ch.FrameEndIn))
	out := map[string]bool{}
	keep := func(id string, asked, met bool) {
		if asked && met && !n.IsWant(id) {
			out[id] = true
		}
	}
	keep("crew", n.Crew > 0, seats >= n.Crew)
	keep("patients", n.Patients > 0, patients >= n.Patients)
	keep("type", n.Type != "", ch.Type == n.Type || ch.Type == n.Type+"-AD")
	keep("fuel", n.Fuel != "", ch.Fuel == n.Fuel)
	keep("drive", n.Drive != "", ch.Drive == n.Drive)
	keep("module", n.ModuleIn > 0, body.LengthIn >= n.ModuleIn)
	keep("module_most", n.ModuleMostIn > 0, body.LengthIn <= n.ModuleMostIn)
	keep("height", n.HeightIn > 0, top <= float64(n.HeightIn))
	keep("loading", n.LoadingIn > 0, loading <= float64(n.LoadingIn))
	keep("headroom", n.HeadroomIn > 0, box.HeadroomIn(body)-low >= float64(n.HeadroomIn))
	keep("length", n.LengthIn > 0, float64(ch.FrontOverhangIn)+tail+ahead <= float64(n.LengthIn))
	keep("turning", n.TurningFt > 0, box.TurningFt(ch) > 0 && box.TurningFt(ch) <= n.TurningFt)
	must, _ := n.Wishes(cat)
	for _, id := range must {
		keep(id, true, u.Has(id))
	}
	return out
}

// A must that held before a press holds after it, whatever is pressed, and what was
// not done is said.
func TestPressesKeepTheMusts(t *testing.T) {
	presses := 2000
	if seeds.Fixed() {
		presses = 500
	}
	refused, told, given := 0, 0, 0
	for seed := range seeds.Each(1) {
		r := rand.New(rand.NewSource(seed))
		a := New()
		require.NoError(t, a.ensure())
		cat := a.memory.Edition.Cat
		some := func(list ...string) string { return list[r.Intn(len(list))] }
		option := func() string { return cat.Options[r.Intn(len(cat.Options))].ID }
		needs := quote.Needs{Crew: 3 + r.Intn(4), Type: some("", "I", "III"), Fuel: some("", "", "diesel"),
			Drive: some("", "", "4x4"), HeadroomIn: 68, Patients: r.Intn(2)}
		if r.Intn(2) == 0 {
			needs.LengthIn, needs.TurningFt = 300, 55
		}
		if r.Intn(2) == 0 {
			needs.HeightIn, needs.LoadingIn, needs.ModuleMostIn = 112, 36, 160
		}
		needs.Duty, needs.Climate = some("", "critical", "rescue"), some("", "cold", "hot")
		needs.SetFirm("duty", r.Intn(2) == 0)
		needs.SetFirm("climate", r.Intn(2) == 0)
		for range r.Intn(4) {
			if id := option(); !slices.Contains(needs.Must, id) {
				needs.Must = append(needs.Must, id)
			}
		}
		needs.SetWant(some(quote.AskIDs...), r.Intn(2) == 0)
		s := &session.Session{Memory: &a.memory, Req: &Request{Today: config.Date{Year: 2026, Month: 11, Day: 25}},
			View: &session.View{Area: "unit"}}
		s.Begin()
		s.Draft.Needs = needs
		s.Draft.Terms.Budget = money.Dollars(int64(150_000 + r.Intn(250_000)))
		s.Draft.Unit.NeededBy = config.Date{Year: 2027, Month: 3 + r.Intn(6), Day: 1}
		list, _, err := bid.ReadRequirements("A powered cot.\nA telescoping light mast.\nGasoline engine.\n" +
			"Two patients on cots.\nA front winch.\nA second compressor.")
		require.NoError(t, err)
		for step := range presses {
			in := s.Draft.Unit.Picks[r.Intn(len(s.Draft.Unit.Picks))].Option
			var act Act
			switch k := r.Intn(20); {
			case step%350 == 150:
				do(s, Act{Do: "propose"})
				act = Act{Do: "take-proposal", ID: some("cheapest", "lightest", "soonest")}
			case step%350 == 250:
				do(s, Act{Do: "propose"})
				act = Act{Do: "give-up", ID: some("0", "1")}
			case step%350 == 320:
				act = Act{Do: "remount"}
			case step%100 == 60:
				s.Draft.Requirements = list
				act = Act{Do: "take-answer"}
			case k < 7:
				act = Act{Do: "pick", ID: option(), On: true}
			case k < 11:
				act = Act{Do: "pick", ID: in}
			case k < 12:
				act = Act{Do: some("release", "keep"), ID: in}
			case k < 13:
				act = Act{Do: "complete", ID: some("", "cheapest", "lightest", "soonest")}
			case k < 14:
				act = Act{Do: "chassis", ID: cat.Chassis[r.Intn(len(cat.Chassis))].ID}
			case k < 15:
				act = Act{Do: "body", ID: cat.Bodies[r.Intn(len(cat.Bodies))].ID}
			case k < 16:
				act = Act{Do: "qty", ID: in, Value: some("0", "1", "2")}
			case k < 17:
				act = Act{Do: "new", ID: cat.Chassis[r.Intn(len(cat.Chassis))].ID}
			default:
				id := option()
				if r.Intn(4) == 0 {
					id = cat.Chassis[r.Intn(len(cat.Chassis))].ID
				}
				do(s, Act{Do: "why", ID: id})
				act = Act{Do: some("mend", "offer", "yield"), ID: id, Value: some("0", "1")}
			}
			was := s.Draft.Clone()
			s.Faults, s.Notice, s.Changes, s.Steps = nil, "", nil, nil
			do(s, act)
			if act.Do != "yield" && act.Do != "give-up" {
				asks := s.Draft.Needs
				asks.Begun = was.Needs.Begun // which limits nothing
				require.Equal(t, was.Needs, asks, "%+v asks for nothing else", act)
			} else if len(s.Faults) == 0 {
				given++
			}
			before := musts(a.memory.Edition.For(&was.Unit).Cat, &s.Draft.Needs, &was.Unit) // of what is still a must
			after := musts(a.memory.Edition.For(&s.Draft.Unit).Cat, &s.Draft.Needs, &s.Draft.Unit)
			for id := range before {
				require.True(t, after[id], "seed %d, press %d: %+v broke %s of %+v on %s with %s", seed, step, act, id,
					needs,
					was.Unit.Chassis, was.Unit.Body)
			}
			same := slices.Equal(was.Unit.Picks, s.Draft.Unit.Picks) && was.Unit.Chassis == s.Draft.Unit.Chassis &&
				was.Unit.Body == s.Draft.Unit.Body
			if same && act.Do == "pick" && act.On != s.Draft.Unit.Has(act.ID) {
				refused++
				assert.NotEmpty(t, s.Notice+fmt.Sprint(s.Faults), "%+v was not done, and it is said", act)
			}
			if s.View.Told != nil && !same {
				told++
			}
		}
	}
	assert.Greater(t, refused, presses/100)
	assert.Greater(t, told, presses/20)
	assert.Positive(t, given)
}

// What the plant fits as standard comes back by itself, stays out when it is taken
// out, and is all there again at "as standard".
func TestStandardComesBack(t *testing.T) {
	p := open(t)
	picks := func() map[string]bool {
		out := map[string]bool{}
		for _, x := range p.unit().Picks {
			out[x.Option] = true
		}
		return out
	}
	p.do(Act{Do: "new", ID: "cut-14500-158-gas"}, Act{Do: "go", ID: "unit"})
	whole := picks()
	p.do(Act{Do: "pick", ID: "roof-drip"})
	assert.False(t, picks()["roof-drip"])
	p.do(Act{Do: "pick", ID: "rec-hitch", On: true})
	assert.False(t, picks()["roof-drip"], "what was taken out stays out")
	p.do(Act{Do: "pick", ID: "roof-drip", On: true}, Act{Do: "pick", ID: "rec-hitch"})
	assert.Equal(t, whole, picks())

	s := p.do(Act{Do: "complete", ID: "cheapest"})
	assert.Less(t, len(picks()), len(whole), "the cheapest goes without")
	assert.Contains(t, s.Regions["main"], "12 months or 15,000 mi instead of 24 months or 30,000 mi",
		"and says so, warranties among it")
	assert.Contains(t, s.Regions["main"], `id="told-undo"`)
	p.do(Act{Do: "pick", ID: "rec-hitch", On: true}, Act{Do: "pick", ID: "rec-hitch"})
	assert.False(t, picks()["wt-24"], "and stays the cheapest at the next press")
	p.do(Act{Do: "complete"})
	for id := range whole {
		assert.True(t, picks()[id], "%s is back as standard", id)
	}
}

// The needs' own fields, what is a must, and the answer when nothing fits.
func TestNeedsAreAskedByNumber(t *testing.T) {
	p := openAt(t, "needs")
	s := p.do(set("needs.type", "I"), set("needs.drive", "4x4"), set("needs.fuel", "diesel"),
		set("needs.module", "153"),
		set("needs.module_most", "153 in"), set("needs.headroom", "72"), set("needs.crew", "6"),
		Act{Do: "wish", ID: "cot-power", Value: "must"}, Act{Do: "wish", ID: "mount-power", Value: "must"},
		set("unit.needed_by", "2027-04-28"))
	require.Empty(t, s.Fault)
	assert.Contains(t, s.Regions["main"], "not diesel", "the unit showing now is not what was asked for")
	assert.Regexp(t, `KKK-A-1822F</td>.*?\d+ of \d+ computed clauses`, s.Regions["main"],
		"the standard in force is a must too")
	assert.Contains(t, s.Regions["standing"], "diesel (it is gasoline)", "and that is open")
	s = p.do(Act{Do: "propose"})
	assert.Contains(t, s.Regions["main"], "Everything else fits. The earliest is Fri, May 14, 2027, 16 days after "+
		"your date.")
	assert.Contains(t, s.Regions["main"], "Move the date to Fri, May 14, 2027")
	s = p.do(Act{Do: "give-up", ID: "0"})
	require.Empty(t, s.Fault)
	d := draftOf(t, s)
	assert.Equal(t, config.Date{Year: 2027, Month: 5, Day: 14}, d.Unit.NeededBy)
	assert.Equal(t, "mod-153-72", d.Unit.Body)
	assert.True(t, d.Unit.Has("mount-power"))
	assert.NotContains(t, s.Regions["standing"], "Not what was asked for")
	assert.Contains(t, s.Regions["main"], "Taking it changed ", "what the whole unit changed is told")
	assert.Contains(t, s.Regions["main"], "Delivery by Wed, Apr 28, 2027 → by Fri, May 14, 2027", "the needs with it")
	assert.Contains(t, s.Regions["main"], `id="told-undo"`, "and taken back at a press")
	assert.Contains(t, s.Regions["main"], "an opening needs the flexible bellows", "what needs an exchange is named")
	assert.Contains(t, s.Regions["main"], "On the raised 4x4 frame the first rise at the side door is too high",
		"and what needs one of a group")

	s = p.do(Act{Do: "go", ID: "unit"}, Act{Do: "chassis", ID: "cut-14500-158-gas"})
	assert.Equal(t, d.Unit.Chassis, draftOf(t, s).Unit.Chassis, "a gasoline cutaway is refused")
	assert.Contains(t, s.Fault+s.Say, "does not go with the present choices")
	s = p.do(Act{Do: "go", ID: "needs"}, set("strength.fuel", "want"))
	assert.Equal(t, []string{"fuel"}, draftOf(t, s).Needs.Wants)
	s = p.do(Act{Do: "find", Value: "powered loader"})
	assert.Contains(t, s.Regions["main"], "Power-load arm", "an option is found by what purchasers call it")
	s = p.do(set("needs.crew", "6.5"), set("needs.turning", "54"), set("needs.height", "9 ft 8 in"))
	assert.Contains(t, s.Regions["main"], `id="w-needs.crew"`, "half a seat is refused")
	assert.Equal(t, 6, draftOf(t, s).Needs.Crew)
	assert.InDelta(t, 54, float64(draftOf(t, s).Needs.TurningFt), 1e-9, "a turning circle is in feet")
	assert.InDelta(t, 116, float64(draftOf(t, s).Needs.HeightIn), 1e-9)
}

// Needs of an older page have no sizes and no wants; those read as they were.
func TestOlderNeedsRead(t *testing.T) {
	p := open(t)
	p.do()
	var d map[string]any
	require.NoError(t, json.Unmarshal(p.req["draft"].(json.RawMessage), &d))
	d["needs"] = map[string]any{"type": "I", "crew": 5}
	data, err := json.Marshal(d)
	require.NoError(t, err)
	p.req["draft"] = json.RawMessage(data)
	s := p.do(Act{Do: "go", ID: "needs"})
	assert.Empty(t, s.Fault)
	assert.Equal(t, 5, draftOf(t, s).Needs.Crew)
}

// What stands against a chassis because the customer asked for another is let go at
// one press, and only that.
func TestANeedGivesWayAtAPress(t *testing.T) {
	p := open(t)
	s := p.do(Act{Do: "new", ID: "cab-17500-169-4x4-diesel"}, set("needs.type", "I"), set("needs.fuel", "diesel"),
		set("needs.crew", "4"), Act{Do: "go", ID: "unit"}, Act{Do: "why", ID: "cut-14500-158-gas"})
	assert.Contains(t, s.Regions["main"], "If the customer gives up a need")
	assert.Contains(t, s.Regions["main"], "Make them wants, no musts: Type I; Fuel diesel")
	s = p.do(Act{Do: "yield", ID: "cut-14500-158-gas", Value: "0"})
	require.Empty(t, s.Fault)
	d := draftOf(t, s)
	assert.Equal(t, "cut-14500-158-gas", d.Unit.Chassis)
	assert.Equal(t, []string{"fuel", "type"}, d.Needs.Wants, "the seats stay a must")
	assert.Contains(t, s.Regions["main"], "Fuel diesel → diesel, a want", "what is asked for otherwise is told")
	assert.Contains(t, p.do(Act{Do: "yield", ID: "cut-14500-158-gas", Value: "0"}).Fault, "no longer offered")
}

// Duty, roads and climate are musts or wants as a whole.
func TestWordsAreMustsOrWants(t *testing.T) {
	p := openAt(t, "needs")
	s := p.do(set("needs.duty", "neonatal"), set("needs.roads", "snow"), set("needs.climate", "cold"))
	for _, id := range []string{"duty", "roads"} {
		assert.Contains(t, s.Regions["main"], `id="f-strength.`+id+`"`)
	}
	assert.Contains(t, s.Regions["main"], "of 4 things that suit it", "what only suits the cold is a would-like")
	ed := p.app.memory.Edition
	whole := func(s shown) []string {
		n := draftOf(t, s).Needs
		must, _ := n.Wishes(ed.Cat)
		return must
	}
	assert.NotContains(t, whole(s), "heat-fuel")
	s = p.do(set("strength.climate", "must"))
	require.Empty(t, s.Fault)
	assert.Contains(t, whole(s), "heat-fuel", "the customer makes it a must")
	assert.Contains(t, whole(s), "ins-foam")
	assert.Contains(t, s.Regions["main"], "and 3 more not in the unit")
	s = p.do(set("needs.climate", "hot"))
	assert.NotContains(t, whole(s), "ins-poly", "another climate is a must only when that is said")
	s = p.do(set("needs.climate", "cold"), set("strength.climate", "must"), set("strength.climate", "want"))
	assert.NotContains(t, whole(s), "heat-fuel")
	before := draftOf(t, s)
	must, _ := before.Needs.Wishes(ed.Cat)
	s = p.do(set("strength.duty", "want"), set("strength.roads", "want"))
	require.Empty(t, s.Fault)
	after := draftOf(t, s)
	assert.Equal(t, []string{"duty", "roads"}, after.Needs.Wants)
	fewer, like := after.Needs.Wishes(ed.Cat)
	assert.NotEmpty(t, must)
	assert.Empty(t, fewer)
	assert.Subset(t, like, must, "what was a must is a would-like")
	s = p.do(Act{Do: "wish", ID: like[len(like)-1], Value: "must"})
	require.Empty(t, s.Fault)
	assert.Equal(t, like[len(like)-1:], draftOf(t, s).Needs.Must, "and one of what suits it may be a must by itself")
}

// An order before the quote's own day is refused, and one that has passed is asked
// about.
func TestOrderDatesInThePast(t *testing.T) {
	p := openAt(t, "needs")
	s := p.do(set("unit.order_on", "2026-11-20"))
	assert.Contains(t, s.Regions["main"], "no order comes before the day of the quote, Wed, Nov 25, 2026")
	assert.Contains(t, s.Regions["main"], `value="2026-11-20"`, "what was typed stays")
	assert.Equal(t, "2026-11-25", draftOf(t, s).Unit.OrderOn.String())
	s = p.do(set("item.0.order", "2026-11-20"))
	assert.Equal(t, "2026-11-25", draftOf(t, s).Unit.OrderOn.String(), "nor in the list of the order's units")
	p.do(set("unit.order_on", "2026-11-25"), set("unit.needed_by", "2027-06-01"))
	p.req["today"] = "2026-12-10"
	s = p.do(Act{Do: "go", ID: "delivery"})
	assert.Contains(t, s.Regions["main"], "Wed, Nov 25, 2026 has passed. Was the order placed then?")
	s = p.do(Act{Do: "order-now"})
	assert.Equal(t, "2026-12-10", draftOf(t, s).Unit.OrderOn.String())
	assert.NotContains(t, s.Regions["main"], "has passed")
	s = p.do(set("date", "2026-12-20"))
	assert.Contains(t, s.Regions["standing"], "before the quote is dated", "a quote dated later asks about its order")
	s = p.do(set("unit.needed_by", "2026-12-28"))
	assert.NotContains(t, s.Regions["main"], "order by", "nobody is told to order before today")
	p.do(set("unit.order_on", "2026-12-20"))
	for _, area := range []string{"delivery", "quote"} {
		s = p.do(Act{Do: "go", ID: area})
		assert.Contains(t, s.Regions["main"], "Safe date (90 %)")
		for _, m := range regexp.MustCompile(`order by (?:<b>)?([^<.]*)`).FindAllStringSubmatch(s.Regions["main"], -1) {
			assert.Fail(t, "nobody is told to order before the quote's own date, nor on paper", area+": "+m[0])
		}
	}
}

// Starting a remount keeps what the customer asked for.
func TestARemountKeepsTheNeeds(t *testing.T) {
	p := open(t)
	p.do(set("needs.type", "I"), set("needs.fuel", "diesel"), set("needs.crew", "4"), set("terms.budget", "300000"),
		set("unit.needed_by", "2027-08-02"))
	s := p.do(Act{Do: "remount"})
	require.Empty(t, s.Fault)
	d := draftOf(t, s)
	assert.Equal(t, quote.Needs{Type: "I", Fuel: "diesel", Crew: 4}, d.Needs)
	assert.Equal(t, "diesel", p.app.memory.Edition.Cat.ChassisByID(d.Unit.Chassis).Fuel,
		"and begins on a chassis asked for")
	assert.Equal(t, "300000.00", d.Terms.Budget.String())
	assert.Equal(t, "2027-08-02", d.Unit.NeededBy.String())
	assert.NotContains(t, s.Regions["standing"], "Not what was asked for")
}

// How many are wanted is asked beside the budget, which is for all of them; of several
// kinds of unit Price holds the numbers.
func TestNeedsAskHowManyTheBudgetIsFor(t *testing.T) {
	p := openAt(t, "needs")
	s := p.do(set("terms.buyer", "fire-district"), set("item.0.units", "3"), set("terms.budget", "700k"))
	assert.Contains(t, s.Regions["main"], `id="f-item.0.units"`)
	assert.Contains(t, s.Regions["main"], "For the whole order: all 3 units, no sales tax")
	assert.Contains(t, s.Regions["main"], " over", "the price of three is over it")
	s = p.do(set("item.0.units", "1"))
	assert.Contains(t, s.Regions["main"], "For the whole order: the unit, no sales tax")
	s = p.do(Act{Do: "go", ID: "price"}, Act{Do: "add", ID: "item"}, Act{Do: "go", ID: "needs"})
	assert.NotContains(t, s.Regions["main"], `id="f-item.0.units"`)
	assert.Contains(t, s.Regions["main"], "For the whole order: all 2 units, no sales tax")
}

// What the kind of a unit brings of itself is not told as if the customer had given it up.
func TestWhatWasGivenUpIsToldAlone(t *testing.T) {
	p := openAt(t, "needs")
	p.do(set("needs.duty", "rescue"), set("terms.units", "3"), set("terms.budget", "600000"))
	s := p.do(Act{Do: "propose"})
	require.Contains(t, s.Regions["main"], "Raise the budget to ")
	before := draftOf(t, s).Needs
	s = p.do(Act{Do: "give-up", ID: "0"})
	require.Empty(t, s.Fault)
	require.Equal(t, before, draftOf(t, s).Needs, "only the budget")
	asked := regexp.MustCompile(`<b>Asked for: </b>[^<]*`).FindAllString(s.Regions["main"], -1)
	require.Len(t, asked, 1)
	assert.Contains(t, asked[0], "Budget at most USD 600,000.00 → at most USD ")
}

// Of several alike the last is to be there by the day they are needed: what was asked for,
// the proposals and what would have to go judge that one.
func TestTheLastOfSeveralIsToBeInTime(t *testing.T) {
	p := openAt(t, "needs")
	p.do(set("needs.duty", "bls"), set("needs.type", "III"), set("needs.crew", "5"), set("terms.units", "3"),
		Act{Do: "propose"}, Act{Do: "take-proposal", ID: "cheapest"})
	q := p.quote()
	first, last := q.Plan.NineInTen, q.LastSafe()
	require.True(t, first.Before(last), "the third is built behind the first")

	s := p.do(set("unit.needed_by", first.String()))
	require.Contains(t, s.Regions["main"], last.Long()+" at 90 %, the last of 3")
	require.Contains(t, s.Regions["main"], "Move it to "+last.Long())
	q = p.quote()
	late := slices.IndexFunc(q.Findings, func(f config.Finding) bool { return f.Code == "time.needed-by.last" })
	require.GreaterOrEqual(t, late, 0, "and it is among the open items")
	require.Contains(t, q.Findings[late].Text, "the last by "+last.Long())

	s = p.do(Act{Do: "propose"})
	require.Contains(t, s.Regions["main"], "The earliest for the last of 3 is ")
	require.Contains(t, s.Regions["main"], "safe date (90 %) of the last of 3 ")
	s = p.do(Act{Do: "give-up", ID: "0"})
	require.Empty(t, s.Fault)
	q = p.quote()
	require.False(t, q.Draft.Unit.NeededBy.Before(q.LastSafe()), "the moved day is that of the last")

	s = p.do(Act{Do: "go", ID: "needs"}, Act{Do: "loosen", ID: quote.AskDate})
	require.Empty(t, s.Fault)
	require.Equal(t, q.LastSafe(), p.quote().Draft.Unit.NeededBy, "a day with nothing to spare is met")
	require.NotContains(t, s.Regions["main"], `id="loosen-date"`)

	s = p.do(Act{Do: "go", ID: "quote"})
	name := q.NameOf(0)
	text := regexp.MustCompile(`<[^>]*>`).ReplaceAllString(s.Regions["main"], "")
	require.Contains(t, text, name+"3", "how many stands beside the name")
	require.NotContains(t, text, name+name, "the list of units names a unit once")
}

// Of units whose declaration is not kept by the same figures the sentence stands once.
func TestADeclarationIsToldOnce(t *testing.T) {
	p := openAt(t, "needs")
	s := p.do(set("terms.buyer", "county"), set("needs.type", "I"), set("needs.drive", "4x4"),
		set("needs.fuel", "diesel"), set("needs.crew", "6"), set("needs.module", "153"),
		set("terms.budget", "330000"), Act{Do: "wish", ID: "cot-power", Value: "must"},
		Act{Do: "wish", ID: "mount-power", Value: "must"}, Act{Do: "propose"})
	_, ways, found := strings.Cut(s.Regions["main"], `id="give-ups"`)
	require.True(t, found)
	ways, _, _ = strings.Cut(ways, "</section>")
	said := regexp.MustCompile(`The unit is declared to [^<]*`).FindAllString(ways, -1)
	require.NotEmpty(t, said)
	slices.Sort(said)
	require.Equal(t, len(said), len(slices.Compact(slices.Clone(said))), "each once: %q", said)
	require.Contains(t, ways, "Its declaration is not kept either, by the same figures.")
	require.Contains(t, ways, "Cab-chassis 17,500 lb", "the one that keeps it is offered too")
}

// What a duty needs is told by the duty, and not by what else only that duty has.
func TestReasonsNameWhatWasAskedFor(t *testing.T) {
	p := openAt(t, "needs")
	p.do(set("terms.buyer", "hospital"), set("needs.duty", "neonatal"), set("needs.crew", "4"), Act{Do: "propose"})
	s := p.do(Act{Do: "take-proposal", ID: "cheapest"})
	require.Contains(t, s.Regions["main"], "Neonatal transport is never built without: ")
	require.NotContains(t, s.Regions["main"], "for Neonatal transport only")
}

// Who buys is asked for beside the budget, which is held against the price with or without
// tax.
func TestNeedsAskWhoBuys(t *testing.T) {
	p := openAt(t, "needs")
	s := p.do(set("terms.budget", "330000"))
	require.Contains(t, s.Regions["main"], `id="f-terms.buyer"`)
	require.Contains(t, s.Regions["main"], "the unit, sales tax included")
	s = p.do(set("terms.buyer", "county"))
	require.Contains(t, s.Regions["main"], "the unit, no sales tax")
}

// Where at most one of a group may be chosen, none is a choice like the others.
func TestNoneIsAChoice(t *testing.T) {
	p := openAt(t, "unit")
	none := regexp.MustCompile(`type="radio" id="none-window-tint"[^>]* checked`)
	require.Regexp(t, none, p.do(Act{Do: "chapter", ID: "body"}).Regions["main"])
	s := p.do(Act{Do: "pick", ID: "tint-dark", On: true})
	require.NotRegexp(t, none, s.Regions["main"])
	require.True(t, p.draft().Unit.Has("tint-dark"))
	s = p.do(Act{Do: "none", ID: "window-tint"})
	require.Empty(t, s.Fault)
	require.Regexp(t, none, s.Regions["main"])
	require.False(t, p.draft().Unit.Has("tint-dark"))

	s = p.do(Act{Do: "none", ID: "grille-lights"})
	require.True(t, p.draft().Unit.Has("gr-two"))
	require.Contains(t, s.Say, "has to stay in")
}

// Who asks for an option by its name finds it before those that only mention it.
func TestAnOptionIsFoundByItsNameFirst(t *testing.T) {
	p := openAt(t, "needs")
	s := p.do(Act{Do: "find", Value: "powered cot"})
	first := regexp.MustCompile(`id="must-([^"]*)"`).FindStringSubmatch(s.Regions["main"])
	require.NotNil(t, first)
	assert.Equal(t, "cot-power", first[1])
	assert.Contains(t, s.Regions["main"], `id="must-mount-power"`, "and those after it")
}

// Half a date is refused with what is missing, and the day that stood there before stays.
func TestHalfADateTakesNoneAway(t *testing.T) {
	p := openAt(t, "needs")
	p.do(set("unit.needed_by", "2027-06-15"))
	s := p.do(set("unit.needed_by", "unfinished"))
	assert.Contains(t, s.Regions["main"], "not a whole date: fill in month, day and year")
	assert.Equal(t, "2027-06-15", p.draft().Unit.NeededBy.String())
}
