package e2e

import (
	"os"
	"path/filepath"
	"slices"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// Who is at which window, and what anybody does with a page: fill in a field,
// press a button, look for words.
func init() {
	know(deeds, map[string]sentence{
		`this is "…"`: func(s *story, says []string) { s.people[says[0]] = s.window },
		`back to "…"`: func(s *story, says []string) {
			require.NotNil(s.t, s.people[says[0]], "%s was here before", says[0])
			s.window = s.people[says[0]]
		},
		`write "…" into "…"`: func(s *story, says []string) { s.typed(s.field(says[1]), says[0]) },
		`in the area "…"`: func(s *story, says []string) {
			id := eval[string](s.window,
				`([...document.querySelectorAll("#areas button")].find((b) => b.querySelector(".name").textContent === `+drive.Quote(says[0])+`) || {}).id || ""`)
			require.NotEmpty(s.t, id, "there is an area %s", says[0])
			s.click("#" + id)
		},
		`begin another quote`: func(s *story, _ []string) {
			s.head("#go-quotes")
			before := s.draft()
			s.click("#kept-fresh")
			s.must(s.Until(`document.getElementById("kept-quotes") && document.querySelectorAll("[id^=kept-open]").length > 0`))
			s.must(s.Settle())
			require.NotEqual(s.t, before, s.draft())
		},
	})
	know(looked, map[string]sentence{
		`the page says "…"`: func(s *story, says []string) { require.Contains(s.t, flat(s.text("#main")), says[0]) },
		`the page does not say "…"`: func(s *story, says []string) {
			require.NotContains(s.t, flat(s.text("#main")), says[0])
		},
		`the quote does not say "…"`: func(s *story, says []string) {
			s.area("quote")
			require.NotContains(s.t, flat(s.text("#main")), says[0])
		},
		`beside every area stands "…"`: func(s *story, says []string) { require.Contains(s.t, flat(s.text("#standing")), says[0]) },
		`beside every area does not stand "…"`: func(s *story, says []string) {
			require.NotContains(s.t, flat(s.text("#standing")), says[0])
		},
		// As far as an engine can tell: names, contrast, order, roles.
		`nobody is shut out here`: func(s *story, _ []string) { s.check("this state of the page") },
		`on the cover "…" stands beside "…"`: func(s *story, says []string) {
			cover := eval[[]string](s.window, `[...document.querySelectorAll(".cover span")].map((x) => x.innerText)`)
			i := slices.Index(cover, says[0])
			require.True(s.t, i >= 0 && i+1 < len(cover) && cover[i+1] == says[1], "%q", cover)
		},
		// Who opened a link came to read.
		`no tool of the seller is here`: func(s *story, _ []string) {
			for _, tool := range []string{"#key-pass", "#f-address", "#areas button", `[data-act="undo"]`, "#costs-pass"} {
				require.False(s.t, s.has(tool), tool)
			}
		},
	})
}

// field finds a field on the page by its label, as a person does.
func (s *story) field(label string) string {
	s.t.Helper()
	id := eval[string](s.window, `([...document.querySelectorAll("#main label")].find((l) => l.textContent.trim() === `+
		drive.Quote(label)+` && l.control) || {}).htmlFor || ""`)
	require.NotEmpty(s.t, id, "the page has a field %s", label)
	return `[id="` + id + `"]`
}

// file is the path of a file that the project has to try things with.
func (s *story) file(name string) string {
	s.t.Helper()
	for _, dir := range []string{"../assets/catalogue", "../../testdata/requirements"} {
		if path, err := filepath.Abs(filepath.Join(dir, name)); err == nil {
			if _, err := os.Stat(path); err == nil {
				return path
			}
		}
	}
	require.Fail(s.t, "there is no file "+name)
	return ""
}
