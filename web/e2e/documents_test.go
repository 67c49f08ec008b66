package e2e

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
	"boxwright/web/e2e/drive"
)

// Needs are stated, three units proposed, one taken, and a buyer's list is
// answered; then each document is looked at. Nobody is shut out on the way.
func TestNeedsToDocuments(t *testing.T) {
	t.Parallel()
	list, err := os.ReadFile("../../testdata/requirements/county.csv")
	require.NoError(t, err)
	w := open(t, folder, drive.Desk, "", engine(t))
	check := w.onBothScreens()
	w.area("needs")
	eval[bool](w,
		`(document.getElementById("f-needs.duty").value = "contaminated", document.getElementById("f-needs.duty").dispatchEvent(new Event("change", { bubbles: true })), true)`)
	w.must(w.Settle())
	w.typed("#f-find", "powered cot")
	w.click("#must-cot-power")
	w.click("#propose")
	check("needs with proposals")
	w.click("#take-lightest")
	eval[bool](w, // a unit begun anew need not be of that duty
		`(document.getElementById("f-needs.duty").value = "", document.getElementById("f-needs.duty").dispatchEvent(new Event("change", { bubbles: true })), true)`)
	w.must(w.Settle())
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.area("needs")
	eval[bool](w, `(document.getElementById("fold-requirements").open = true)`)
	w.typed("#f-list", string(list))
	check("needs with a requirement list")
	require.Contains(t, w.text("#requirements"), "40 lines: 37 comply, 2 comply with additions, 1 exception.")
	w.click("#preview-answers")
	w.click("#take-answers")
	require.Contains(t, w.text("#requirements"), "39 comply, 1 exception.")

	w.area("compare")
	w.click("#add-rival")
	w.typed(`#f-rival\.0\.price`, "301500")
	check("compare with another bid")
	w.area("quote")
	for id, words := range seeds.InOrder(map[string]string{"exceptions": "Overall height not to exceed 104",
		"response": "Signature and date", "bidspec": "Squad bench",
		"order": "Cut list", "test": "Whole unit", "labels": "Payload sign", "upkeep": "Tire pressures"}) {
		w.click("#paper-" + id)
		check(id)
		require.Contains(t, flat(strings.Join(w.paper(), " ")), words)
	}
}

// On a phone the way to the documents and to print stands on the first screen of the area.
func TestDocumentsAreAPressAway(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Phone, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.area("quote")
	w.firstScreen("#to-documents")
	w.click("#to-documents")
	require.Equal(t, "documents", w.focus().ID)
	w.firstScreen("#paper-quote", "#print-quote")
}
