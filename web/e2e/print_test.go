package e2e

import (
	"os/exec"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// paper prints the page and gives the text of each sheet, read back from the
// PDF by an independent reader.
func (w *window) paper() []string {
	w.t.Helper()
	pdf, err := w.PDF()
	w.must(err)
	read := exec.Command("pdftotext", "-layout", written(w.t, "quote.pdf", pdf), "-")
	text, err := read.Output()
	w.must(err)
	return strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
}

var spaces = regexp.MustCompile(`[\s\x{a0}]+`)

// flat joins lines, since paper breaks them elsewhere than the screen.
func flat(text string) string { return spaces.ReplaceAllString(text, " ") }

func TestPrintedQuote(t *testing.T) {
	t.Parallel()
	w := blank(t, folder, drive.Desk)
	w.openWinch()
	w.area("needs")
	w.typed("#f-title", "Medic 12")
	w.area("quote")
	w.typed(`#f-buyer\.name`, "Alder County Rescue")
	w.typed("#f-number", "Q-2041")
	total := eval[string](w, `document.querySelector("#standing .big").textContent`)
	require.Regexp(t, `\d,\d{3}`, total)

	sheets := w.paper()
	require.Greater(t, len(sheets), 2, "a quote is some pages long")
	require.Less(t, len(sheets), 30, "and not a book")
	whole := flat(strings.Join(sheets, " "))
	for _, words := range []string{
		"Medic 12", "Alder County Rescue", "Quote Q-2041",
		demo.LabelOf("cut-14500-158-gas"), demo.LabelOf("mod-146-72"), demo.LabelOf("cot-power"),
		demo.LabelOf("rest-four"),
		total, "Specification", "Weights", "Electrical", "Compliance", "Delivery", "Price", "Payments", "Cautions",
		"Acceptance",
		"Computed weights do not replace a certified scale",
	} {
		require.Contains(t, whole, words)
	}
	for i, s := range sheets {
		require.Contains(t, flat(s), "Content "+demo.Hash()[:16], "sheet %d names the content of its catalogue",
			i+1)
		require.Contains(t, flat(s), "Quote Q-2041", "sheet %d is numbered as its quote", i+1)
		require.Regexp(t, `Page `+itoa(i+1)+` of `+itoa(len(sheets)), flat(s))
	}
	for _, words := range []string{"Undo", "Copy the link", "Where it stands", "High contrast", "Skip to"} {
		require.NotContains(t, whole, words, "tools of the screen are not printed")
	}
}
