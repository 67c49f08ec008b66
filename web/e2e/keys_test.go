package e2e

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// A quote from the need to the signed link by keys alone, from a profile where nothing is kept:
// the focus is never lost nor out of sight, and each thing is a few stops from the one before.
func TestNeedToSignedQuoteByKeysAlone(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Screen{Width: 1440, Height: 900}, "")
	stops := 0
	stands := func() stop {
		t.Helper()
		at := w.focus()
		require.NotEmpty(t, at.What, "the focus fell to the page")
		return at
	}
	key := func(key string, leads string) {
		t.Helper()
		w.must(w.Press(key))
		require.Equal(t, leads, stands().ID)
	}
	// to presses Tab until the focus stands on what has that id, or that text, which may take so
	// many stops.
	to := func(what string, most int) {
		t.Helper()
		for range most {
			w.must(w.Press(drive.TabKey))
			stops++
			at := stands()
			require.True(t, at.Seen && at.InView && !at.Hidden, "the focus is not seen on %s", at.What)
			if at.ID == what || at.Name == what {
				return
			}
		}
		require.Fail(t, what+" is too far away", "%d stops lead to %s", most, stands().What)
	}
	// area goes there: back by Shift and Tab where that is nearer.
	area := func(id string, most int) {
		t.Helper()
		for range most {
			w.must(w.ShiftTab())
			stops++
			if strings.HasPrefix(stands().ID, "area-") {
				w.toArea(id)
				require.NotEmpty(t, w.text("#say"))
				return
			}
		}
		require.Fail(t, "the areas are too far away", "%d stops back lead to %s", most, stands().What)
	}
	says := func(part string) {
		t.Helper()
		w.must(w.Until(`document.getElementById("say").textContent.includes(` + drive.Quote(part) + `)`))
	}

	for range 3 { // what leads past the rest, of which the second goes to the areas
		w.must(w.Press(drive.TabKey))
		if stops++; stands().Name == "Areas" {
			break
		}
	}
	key(drive.Enter, "areas")
	to("area-start", 1)
	w.toArea("needs")

	to("f-needs.duty", 2)
	key(drive.Down, "f-needs.duty")
	to("f-needs.drive", 6)
	key(drive.Down, "f-needs.drive")
	key(drive.Down, "f-needs.drive")
	to("f-find", 22)
	w.must(w.Press(strings.Split("winch", "")...))
	to("must-fb-winch", 1)
	key(drive.Enter, "must-fb-winch")
	to("propose", 12)
	key(drive.Enter, "first-proposal")
	says(" proposals. ")
	to("take-lightest", 3)
	key(drive.Enter, "told")
	says("Most remaining payload is showing now.")

	to("told-unit", 2)
	key(drive.Enter, "main")
	to("chapter-chassis", 10)
	for range 2 {
		w.must(w.Press(drive.Right))
	}
	key(drive.Right, "chapter-exterior")
	key(drive.Space, "chapter-exterior")
	says("Exterior and marking.")
	to("o-rail-channel", 2) // what is chosen comes before the picture
	key(drive.Down, "o-rail-rubber")
	key(drive.Space, "o-rail-rubber")
	says("Rub rail with rubber insert is in.")
	to("ask-rec-front-hooks", 11)
	key(drive.Enter, "why-rec-front-hooks")
	says("1 way out.")
	key(drive.Escape, "ask-rec-front-hooks")
	key(drive.Enter, "why-rec-front-hooks")
	to("yield-rec-front-hooks-0", 1)
	key(drive.Enter, "o-rec-front-hooks")
	says("Front tow hooks is in.")

	area("weight", 30)
	area("power", 1)
	area("delivery", 1)
	area("price", 1)
	to("Contract and discount", 3) // the terms come before the lines
	w.must(w.Press(drive.Enter))
	to("f-terms.discount_percent", 3)
	w.must(w.Press("1", ".", "5"))
	to("f-terms.discount_amount", 1)
	says("Price −")

	area("quote", 20)
	for _, field := range []string{"f-buyer.name", "f-buyer.address", "f-seller.name", "f-number"} {
		to(field, 4)
		w.must(w.Press("Q", "1"))
	}
	to("go-keys", 8)
	key(drive.Enter, "main")
	to("key-pass", 3)
	w.must(w.Press(strings.Split("crane lantern orchard velvet", "")...))
	to("key-new", 1)
	key(drive.Enter, "key-export")
	to("key-quote", 1)
	key(drive.Enter, "main")
	to("key-pass", 18)
	w.must(w.Press(strings.Split("crane lantern orchard velvet", "")...))
	to("sign", 1)
	key(drive.Enter, "copy-link")
	says("The quote is signed.")
	to("print-quote", 12)
	require.LessOrEqual(t, stops, 165, "from the first press to the printed quote")
	t.Logf("%d stops", stops)
}

// A purchaser's list is read, corrected and answered, a proposal chosen, units compared, and
// saved quotes opened and deleted by keys alone: the focus is never lost nor out of sight,
// and what each press came to is said.
func TestListCompareAndSavedQuotesByKeysAlone(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Screen{Width: 1440, Height: 900}, "")
	stops := 0
	stands := func() stop {
		t.Helper()
		at := w.focus()
		require.NotEmpty(t, at.What, "the focus fell to the page")
		return at
	}
	reach := func(press func() error, what string, most int) {
		t.Helper()
		for range most {
			w.must(press())
			w.must(w.Settle())
			stops++
			at := stands()
			require.True(t, at.Seen && at.InView && !at.Hidden, "the focus is not seen on %s", at.What)
			if at.ID == what || at.Name == what || what == "area" && strings.HasPrefix(at.ID, "area-") {
				return
			}
		}
		require.Fail(t, what+" is too far away", "%d stops lead to %s", most, stands().What)
	}
	to := func(what string, most int) {
		t.Helper()
		reach(func() error { return w.Press(drive.TabKey) }, what, most)
	}
	back := func(what string, most int) { t.Helper(); reach(w.ShiftTab, what, most) }
	key := func(key, leads, says string) {
		t.Helper()
		w.must(w.Press(key))
		w.must(w.Until(`document.getElementById("say").textContent.includes(` + drive.Quote(says) + `)`))
		w.must(w.Settle())
		require.Equal(t, leads, stands().ID)
	}
	write := func(text string) { t.Helper(); w.must(w.Press(strings.Split(text, "")...)) }
	area := func(id string, most int) { t.Helper(); back("area", most); w.toArea(id) }

	to("Areas", 3)
	key(drive.Enter, "areas", "")
	to("area-start", 1)
	w.toArea("needs")
	back("Propose", 10)
	key(drive.Enter, "proposing-row", "")
	to("propose", 1)
	to("The purchaser's requirement list", 1)
	key(drive.Enter, "", "")
	to("f-list", 1)
	for i, line := range []string{"1. Headroom 72 in", "2. A widget of brass", "3. Powered cot"} {
		if i > 0 {
			w.must(w.Press(drive.Enter))
		}
		write(line)
	}
	key(drive.TabKey, "requirements", "Read: 3 lines.")

	to("Correct the reading of line 1", 12)
	key(drive.Enter, "", "")
	to("f-req.0.meant", 2)
	write("Headroom 90 in")
	to("f-req.1.verdict", 6)
	require.Contains(t, w.text("#say"), "Line 1, read as ")
	key(drive.Down, "f-req.1.verdict", "Line 2: Comply.")
	key(drive.Down, "f-req.1.verdict", "Line 2: Exception.")
	to("f-req.1.answer", 1)
	write("Stainless")
	to("f-req.1.meant", 2)
	require.Contains(t, w.text("#say"), "Line 2: Exception.")
	to("take-req.2", 1)
	key(drive.Enter, "stands-req.2", "Added for 1 of the lines.")

	back("Propose", 60)
	key(drive.Enter, "proposing-row", "")
	to("propose", 1)
	key(drive.Enter, "first-proposal", " proposals. ")
	to("take-lightest", 4)
	key(drive.Enter, "told", "Most remaining payload is showing now.")
	to("told-undo", 1)
	key(drive.Enter, "take-cheapest", "Undone: Most remaining payload is showing now.")

	area("compare", 40)
	to("pin", 1)
	key(drive.Enter, "pin", "Added to compare.")
	area("needs", 2)
	back("Propose", 10)
	key(drive.Enter, "proposing-row", "")
	to("take-lightest", 6)
	key(drive.Enter, "told", "Most remaining payload is showing now.")
	area("compare", 40)
	to("swap-0", 5)
	key(drive.Enter, "swap-0", "is showing now. The quote worked on before is kept here.")
	to("unpin-0", 1)
	key(drive.Enter, "pin", "Taken out of Compare.")
	back("go-quotes", 30)
	key(drive.Enter, "kept-quotes", "")
	to("kept-copy", 3)
	key(drive.Enter, "kept-copy", "You work on a copy now.")
	back("Delete Cutaway 14,500 lb, 158 in wheelbase, gasoline", 2)
	back("kept-open-1", 1)
	key(drive.Enter, "main", "Another quote: Cutaway 14,500 lb, 158 in wheelbase, gasoline.")
	back("go-quotes", 4)
	key(drive.Enter, "kept-quotes", "")
	const name = "Cutaway 14,500 lb, 158 in wheelbase, gasoline"
	to("Delete "+name, 4)
	key(drive.Enter, "", "Deleted: "+name+".")
	require.Equal(t, "Undo delete", w.focus().Name)
	require.True(t, w.focus().InView, "the offer stands at the foot of the window")
	key(drive.Enter, "kept-quotes", "Put back: "+name+".")
	to("Delete "+name, 4)
	key(drive.Enter, "", "Deleted: "+name+".")
	to("Close", 1)
	key(drive.Enter, "main", "")
	require.NotContains(t, w.text("#kept-quotes"), "Delete")
	require.Empty(t, w.text("#bar"))
	require.LessOrEqual(t, stops, 190, "from the first press to the last")
	t.Logf("%d stops", stops)
}

// The browser's Back leads to the area before, with what was being typed, and changes nothing
// of the quote; a reader of a quote has one place, of which no more is remembered.
func TestBackLeadsToTheAreaBefore(t *testing.T) {
	t.Parallel()
	eachForm(t, func(t *testing.T, f form) {
		w := open(t, f, drive.Desk, "")
		back := func(by, leads string) {
			t.Helper()
			eval[bool](w, `(history.`+by+`(), true)`)
			w.must(w.Until(`document.querySelector("#area-` + leads + `[aria-current]")`))
			w.must(w.Settle())
			require.Equal(t, "main", w.focus().ID)
		}
		w.begin("cut-14500-158-gas", "mod-146-72")
		w.area("price")
		w.area("quote")
		w.click("#f-number")
		w.must(w.Press("7"))
		back("back", "price")
		require.Contains(t, w.draft(), `"number":"7"`, "what was typed is entered")
		was := w.draft()
		back("back", "unit")
		back("forward", "price")
		eval[bool](w, `(document.querySelector("a.skip[href='#standing']").click(), true)`)
		require.Equal(t, "standing", w.focus().ID)
		back("back", "unit")
		require.Equal(t, was, w.draft())
	})
}

// Enlarged four times, as a window of 1,280 x 1,024 that is 320 x 256 then, nothing runs off to
// the side, and what has the focus is seen, while a notice lies over the page as well.
// Source: WCAG 2.2, success criteria 1.4.10 and 2.4.11, from memory.
func TestFocusIsSeenEnlargedFourTimes(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Screen{Width: 320, Height: 256}, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	for _, id := range areas {
		w.area(id)
		eval[bool](w, `(() => {
			for (const fold of document.querySelectorAll("#main details")) fold.open = true;
			const done = document.getElementById("done");
			done.textContent = "The unit is kept in Compare, and this is one more sentence about what was done here.";
			return !(done.hidden = false);
		})()`)
		require.LessOrEqual(t, eval[int](w, `document.scrollingElement.scrollWidth`), 320, id)
		seen, rounds := map[string]bool{}, 1
		if id == areas[0] {
			rounds++ // through the head of the page too
		}
		for rounds > 0 {
			w.must(w.Press(drive.TabKey))
			at := w.focus()
			if at.What == "" {
				rounds--
				continue
			}
			require.True(t, at.Seen && at.InView && !at.Hidden, "%s: the focus is not seen on %s", id, at.What)
			seen[at.What] = true
			require.Less(t, len(seen), 300, id)
		}
		require.NotEmpty(t, seen, id)
	}
}
