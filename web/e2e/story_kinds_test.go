package e2e

import (
	"strings"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// A unit of any kind, from its needs to the plant's papers.
func init() {
	know(deeds, map[string]sentence{
		`ask for "…" as "…"`: func(s *story, says []string) { s.area("needs"); s.set(says[1], says[0]) },
		`ask for "…" seats`:  func(s *story, says []string) { s.area("needs"); s.typed(`#f-needs\.crew`, says[0]) },
		`take the proposal of "…"`: func(s *story, says []string) {
			s.area("needs")
			s.click("#propose")
			require.Empty(s.t, s.trouble())
			take := `[data-act="take-proposal"][aria-label^=` + drive.Quote("Take this one: "+says[0]) + `]`
			require.True(s.t, s.has(take), "it is proposed among %s", s.text("#answer"))
			s.click(take)
		},
		`take its usual equipment aboard`: func(s *story, _ []string) {
			s.area("equipment")
			s.click("#carry-usual")
			require.Contains(s.t, flat(s.text("#main")), "0 items left to stow")
		},
		`lay out the "…"`: func(s *story, says []string) { s.layOut(says[0]) },
		`print the "…"`: func(s *story, says []string) {
			s.layOut(says[0])
			s.sheets = flat(strings.Join(s.paper(), " "))
		},
		`add another unit`: func(s *story, _ []string) { s.area("price"); s.click("#add-item") },
	})
	know(looked, map[string]sentence{
		`all musts are met`: func(s *story, _ []string) {
			s.area("needs")
			musts := eval[[]string](s.window, `[...document.querySelectorAll(".asks tbody tr, .asked li")].filter((r) =>
				(r.querySelector("select")?.value ?? r.textContent.match(/(must|want)/g)?.at(-1)) === "must").map((r) =>
				r.querySelector(".mark .hidden-text").textContent + ": " + r.textContent)`)
			require.NotEmpty(s.t, musts)
			for _, must := range musts {
				require.Regexp(s.t, "^OK: ", must)
			}
		},
		`nothing on it is to be put right`: func(s *story, _ []string) {
			require.NotRegexp(s.t, `(?i)■|▲|must fix|check:`, s.text("#standing"))
		},
	})
}

// set chooses what a list of a field is to say.
func (s *story) set(label, choice string) {
	s.t.Helper()
	done := eval[bool](s.window, `(() => {
		const f = document.querySelector(`+drive.Quote(s.field(label))+`);
		const o = [...f.options].find((o) => o.text === `+drive.Quote(choice)+`);
		if (!o) return false;
		f.value = o.value;
		f.dispatchEvent(new Event("change", { bubbles: true }));
		return true;
	})()`)
	require.True(s.t, done, "%s can be %s", label, choice)
	s.must(s.Settle())
}

// layOut shows a document of the quote, as it would be printed.
func (s *story) layOut(name string) {
	s.t.Helper()
	s.area("quote")
	id := eval[string](s.window, `([...document.querySelectorAll('[data-act="paper"]')].find((b) => b.innerText === `+
		drive.Quote(name)+`) || {}).id || ""`)
	require.NotEmpty(s.t, id, "there is a document %s", name)
	s.click("#" + id)
	s.sheets = s.whole("article.paper")
}
