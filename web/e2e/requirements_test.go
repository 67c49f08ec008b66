package e2e

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// A reading is put in other words beside the line, and what the seller always answers to a
// term of the bid is kept and answers the next list.
func TestTheReadingIsCorrectedInTheRow(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.area("needs")
	w.click("#fold-requirements summary")
	w.click("#standing-answers")
	eval[bool](w, `(() => { const f = document.getElementById("f-stand.bond.verdict"); f.value = "meets";
		f.dispatchEvent(new Event("change", { bubbles: true })); return true; })()`)
	w.must(w.Settle())
	w.typed(`#f-stand\.bond\.answer`, "A bond is furnished with the bid.")
	w.click("#standing-answers")
	w.typed("#f-list", "1. Payload of a laden wagon, 3,000 lb or so\n2. A bid bond of 5% is required\n3. Powered cot\n")
	w.must(w.Until(`document.querySelector("#requirements .answers")`))
	require.Equal(t, "A bond is furnished with the bid.",
		eval[string](w, `document.getElementById("f-req.1.answer").value`))
	require.Contains(t, w.text("#requirements"), "1 line is not answered yet")

	w.typed(`#f-req\.0\.meant`, "payload at least 3,000 lb")
	w.must(w.Until(`document.getElementById("requirements").innerText.includes("Every line is answered")`))
	require.Contains(t, w.text("#requirements"), "Payload of a laden wagon, 3,000 lb or so",
		"the purchaser's words stay")
	require.Contains(t, w.text("#requirements"), "Payload, GVWR less curb weight: 3,715 lb")
	w.must(w.Until(`/Delivery (date unchanged|.* in place of)/.test(document.getElementById("requirements").innerText)`))

	w.click("#to-response")
	w.must(w.Until(`document.querySelector(".paper .form")`))
	require.Contains(t, w.text(".paper"), "Section 3, Weights")
	w.click("#fold-document summary")
	w.click("#at-0-0") // leads to the numbered section of the quote
	w.must(w.Until(`document.activeElement.id === "section-3"`))
	require.Equal(t, "3 Weights", w.text("#section-3"))

	// What was corrected is remembered for the next list of the same purchaser.
	w.area("needs")
	w.click("#fold-list summary")
	w.typed("#f-list", "8. PAYLOAD of a laden  wagon, 3,000 lb or so\n9. Siren, 100 W\n")
	w.must(w.Until(`document.getElementById("requirements").innerText.includes("2 lines: 2 comply")`))
	require.Contains(t, w.text("#requirements"), "8 PAYLOAD of a laden wagon, 3,000 lb or so")
}

// Of a line with a word that was not read the page says what its answer is without it. The line stays open until
// the reader leaves the word out, and what becomes of it is said.
func TestAWordIsLeftOut(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "", engine(t))
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.area("needs")
	w.click("#fold-requirements summary")
	w.typed("#f-list", "1. Payload at least 3,000 lb\n2. engine block heater, moored to the shoreline\n3. Powered cot with leather grips\n")
	w.must(w.Until(`document.getElementById("leave-req.1")`))
	require.False(t, w.has(`#leave-req\.2`), "a quality is never left out")
	require.Equal(t, "moored", w.text(".answers mark"))
	require.Contains(t, w.text(".answers p"), "Not read: “moored”. Without it: comply with: ")
	require.Contains(t, w.text("#requirements"), "2 lines are not answered yet")
	require.Equal(t, drive.Heard{Role: "button", Name: "Leave it out: “moored” of line 2"}, w.heard(`#leave-req\.1`))
	w.onBothScreens()("a line to be read without a word")

	eval[bool](w, `(document.getElementById("leave-req.1").focus(), true)`)
	w.must(w.Press(drive.Enter))
	w.must(w.Until(`document.getElementById("requirements").innerText.includes("1 line is not answered yet")`))
	require.Equal(t, "f-req.1.meant", w.focus().ID, "what is read now can be changed")
	require.Equal(t, "engine block heater, to the shoreline", eval[string](w, `document.activeElement.value`))
	require.Contains(t, w.text("#say"), "Line 2, read as ")
	require.Contains(t, w.text("#requirements"), "Read in your words")
	require.Contains(t, w.text("#requirements"), "engine block heater, moored to the shoreline",
		"the purchaser's words stay")
	w.typed(`#f-req\.1\.meant`, "")
	w.must(w.Until(`document.getElementById("leave-req.1")`))
}
