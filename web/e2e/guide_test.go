package e2e

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// printing counts what would be printed, since no window of a printer opens here.
const printing = `window.printed = 0; window.print = () => window.printed++;`

var toType = regexp.MustCompile(`type (\d+)`)

// next is the id of the control that the guide points at.
func (w *window) next() string {
	w.t.Helper()
	ids := eval[[]string](w, `[...document.querySelectorAll("[data-next]")].map((el) => el.id)`)
	require.Len(w.t, ids, 1, "one thing is pointed at; the strip says %q", w.text("#guide"))
	return ids[0]
}

// follow does what the strip says until it has nothing more to say: it asks to be
// taken there, and then does to the one thing pointed at what can be done to it.
func (w *window) follow(do func(selector, typed string)) (said []string) {
	w.t.Helper()
	for range 13 {
		strip := flat(w.text("#guide"))
		said = append(said, strip)
		if w.has("#guide-own") {
			return said
		}
		step := strings.SplitN(strip, ":", 2)[0]
		do("#guide-go", "")
		if strings.HasPrefix(flat(w.text("#guide")), step+":") {
			typed := ""
			if m := toType.FindStringSubmatch(strip); m != nil {
				typed = m[1]
			}
			do("#"+escaped(w.next()), typed)
		}
		require.NotEqual(w.t, step, strings.SplitN(flat(w.text("#guide")), ":", 2)[0],
			"the guide goes on when what it says was done: %s", strip)
		require.Empty(w.t, w.trouble())
	}
	require.Fail(w.t, "the guide never ends", "%q", said)
	return nil
}

func escaped(id string) string { return strings.ReplaceAll(id, ".", `\.`) }

func TestANewcomerFinishesTheGuidedQuote(t *testing.T) {
	t.Parallel()
	for _, x := range []struct {
		how    string
		form   form
		screen drive.Screen
	}{{"by mouse", shipped, drive.Desk}, {"by keyboard", folder, drive.Desk}, {"on a phone", carried, drive.Phone}} {
		t.Run(x.how, func(t *testing.T) {
			t.Parallel()
			w := open(t, x.form, x.screen, "", printing)
			do := func(selector, typed string) {
				w.t.Helper()
				switch {
				case x.how == "by keyboard":
					// What is pointed at has the focus already, taken there.
					if selector == "#guide-go" {
						eval[bool](w, `(document.getElementById("guide-go").focus(), true)`)
					}
					require.True(t, eval[bool](w, `document.activeElement === document.querySelector(`+
						drive.Quote(selector)+`)`), "the focus is on %s", selector)
					key := drive.Enter
					if eval[bool](w, `document.activeElement.type === "radio"`) {
						key = drive.Space
					}
					if typed != "" {
						w.must(w.Press(typed[:1], typed[1:]))
					}
					w.must(w.Press(key))
				case typed != "":
					w.typed(selector, typed)
				default:
					w.click(selector)
				}
			}
			if x.how == "by keyboard" {
				eval[bool](w, `(document.getElementById("guide-start").focus(), true)`)
				w.must(w.Press(drive.Enter))
			} else {
				w.click("#guide-start")
			}
			said := w.follow(func(selector, typed string) {
				if x.screen == drive.Phone {
					require.Equal(t, "static",
						eval[string](w, `getComputedStyle(document.getElementById("guide")).position`),
						"the strip lies over nothing")
				}
				do(selector, typed)
			})
			require.Len(t, said, 12)
			require.Equal(t, 1, eval[int](w, `window.printed`))
			draft := w.draft()
			for _, id := range []string{"rest-four", "cot-power", "fb-winch"} {
				require.Regexp(t, `"option":"`+id+`","qty":1[},]`, draft)
			}
			require.Contains(t, draft, `"deposit_percent":"15"`)
			require.NotContains(t, w.text("#standing"), "■ Must fix")

			w.click("#guide-own")
			require.False(t, w.has("#guide"))
			require.False(t, w.has("#guide-offer"), "who has done it is not asked again")
			require.Contains(t, strings.Join(w.kept(), "\n"), "Demonstration: county ambulance")
		})
	}
}

// A guided quote is one of its own: what was worked on stays, the guide goes on
// where it was left, and it ends when it is told to.
func TestTheGuideKeepsToItsOwnQuote(t *testing.T) {
	t.Parallel()
	f := folder
	f.apart = true
	w := open(t, f, drive.Desk, "")
	require.True(t, w.has("#guide-offer"))
	w.typed("#f-title", "Medic 9")
	require.False(t, w.has("#guide-offer"), "it is offered while nothing was done")
	w.click("#guide-again")
	w.click("#begin-cut-14500-158-gas")
	require.Contains(t, w.text("#guide"), "2 of 11")

	o := w.again("")
	w.must(w.Kill())
	o.must(o.Open(o.address))
	require.Contains(t, o.text("#guide"), "2 of 11", "a window that is gone takes no step with it")

	list := strings.Join(o.kept(), "\n")
	require.Contains(t, list, "Medic 9")
	require.Contains(t, list, "Demonstration: county ambulance")
	o.openKept("Medic 9")
	require.False(t, o.has("#guide"), "the other quote has no guide")
	o.head("#go-quotes")
	o.openKept("Demonstration: county ambulance")
	require.Contains(t, o.text("#guide"), "2 of 11")
	o.click("#guide-skip")
	require.Contains(t, o.text("#guide"), "3 of 11")
	o.click("#guide-end")
	require.False(t, o.has("#guide"))
	require.Equal(t, "main", o.focus().ID, "the focus is not lost with the strip")
	o.area("start")
	o.click("#guide-on")
	require.Contains(t, o.text("#guide"), "3 of 11")
}

// openKept takes up a kept quote by its name.
func (w *window) openKept(name string) {
	w.t.Helper()
	w.click("#" + eval[string](w, `[...document.querySelectorAll("#kept-quotes tr")].find((r) => r.innerText.includes(`+
		drive.Quote(name)+`)).querySelector("[id^=kept-open]").id`))
	w.must(w.Until(`document.querySelector("#masthead b").textContent === ` + drive.Quote(name)))
	w.must(w.Settle())
}

func TestHelpWhereTheQuestionArises(t *testing.T) {
	t.Parallel()
	for _, screen := range []drive.Screen{drive.Desk, drive.Phone} {
		w := open(t, folder, screen, "")
		w.area("weight")
		w.click(`#ask-weight\.front-axle`)
		shown := `#help-weight\.front-axle p`
		require.Contains(t, w.text(shown), "Gross axle weight rating")
		require.Contains(t, w.text(shown+" .how"), "read", "it says how well it is known")
		w.head(`[data-act="units"]`)
		require.True(t, eval[bool](w, `document.getElementById("help-weight.front-axle").open`),
			"it stays open when the figures change")
		require.Contains(t, w.text("#main"), " kg")
		require.Equal(t, "ask-weight.front-axle",
			eval[string](w, `(document.getElementById("ask-weight.front-axle").focus(), document.activeElement.id)`))
		w.must(w.Press(drive.Enter))
		require.False(t, eval[bool](w, `document.getElementById("help-weight.front-axle").open`))
		for _, a := range areas {
			w.area(a)
			w.click("#words-" + a + " summary")
			require.NotEmpty(t, w.text("#words-"+a+" dl"))
		}
		require.LessOrEqual(t,
			eval[int](w, `document.scrollingElement.scrollWidth - document.documentElement.clientWidth`), 0)
	}
}

// Neither the guide nor the meaning of words is on paper.
func TestGuideAndHelpAreNotPrinted(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.click("#guide-start")
	for _, a := range []string{"weight", "quote"} {
		w.area(a)
		eval[bool](w, `(document.querySelectorAll("details").forEach((d) => (d.open = true)), true)`)
		sheets := strings.Join(w.paper(), " ")
		require.Contains(t, sheets, "Front axle")
		for _, words := range []string{"1 of 11", "Take me there", "Words explained", "Gross axle weight rating"} {
			require.NotContains(t, sheets, words, a)
		}
	}
}
