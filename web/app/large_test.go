package app

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	kept "boxwright/web/areas/quote"
	"boxwright/web/assets/catalogue/large"
)

// A catalogue of ten thousand options is a file that the page reads, and fits into a
// request.
func TestTenThousandOptionsFitIntoARequest(t *testing.T) {
	file, err := large.File(largeSizes[len(largeSizes)-1], 1)
	require.NoError(t, err)
	require.LessOrEqual(t, len(file), min(config.MaxCatalogueBytes, kept.MaxExportBytes))
	request, err := json.Marshal(Request{V: Version, Acts: []Act{{Do: "load-catalogue", Value: string(file)}}})
	require.NoError(t, err)
	require.LessOrEqual(t, len(request), MaxRequestBytes)
}

// In a chapter of hundreds of options each group is a line that says what of it is in the
// unit, and opens.
func TestAGroupOfALargeChapterIsALineThatOpens(t *testing.T) {
	file, err := large.File(2000, 1)
	require.NoError(t, err)
	p := newPresser()
	small := len(pickable.FindAllString(p.html, -1))
	require.Greater(t, small, 20, "of the demonstration all options of a chapter are shown")
	require.NotContains(t, p.html, `data-act="group"`)
	p.ask(Act{Do: "load-catalogue", ID: "large.json", Value: string(file)})
	p.ask(Act{Do: "go", ID: "unit"})
	p.ask(Act{Do: "chapter", ID: "exterior"})
	require.Empty(t, pickable.FindAllString(p.html, -1))
	require.Contains(t, p.html, "In the unit: Front bumper of the chassis.")
	require.Contains(t, p.html, `aria-describedby="of-front-bumper in-front-bumper"`, "who hears it is told so too")
	p.ask(Act{Do: "group", ID: "front-bumper"})
	of := p.app.memory.Edition.Cat
	require.Len(t, pickable.FindAllString(p.html, -1), len(of.Members("front-bumper")))
	p.ask(Act{Do: "pick", ID: "fb-push", Value: "1", On: true})
	require.Contains(t, p.html, `id="o-fb-push" name="g-front-bumper" data-act="pick" data-id="fb-push" `+
		`data-value="1" checked`)
	p.ask(Act{Do: "group", ID: "front-bumper"})
	require.Empty(t, pickable.FindAllString(p.html, -1))
	require.Contains(t, p.html, "In the unit: Push bumper.")
	p.ask(Act{Do: "part", ID: "fb-push"})
	require.Contains(t, p.html, `id="o-fb-push"`, "who comes from the picture finds it open")
}

// A search shows no more options than anybody reads, and says how many it found.
func TestASearchShowsTheFirstOfMany(t *testing.T) {
	file, err := large.File(2000, 1)
	require.NoError(t, err)
	p := newPresser()
	p.ask(Act{Do: "load-catalogue", ID: "large.json", Value: string(file)})
	p.ask(Act{Do: "go", ID: "unit"})
	p.ask(Act{Do: "search", Value: "e"})
	require.Len(t, pickable.FindAllString(p.html, -1), 100)
	require.Regexp(t, `\d{3,} options found for “e”; the first 100 are shown, another word finds fewer`, p.html)
	p.ask(Act{Do: "search", Value: "no. 1310"})
	require.Len(t, pickable.FindAllString(p.html, -1), 1)
	require.Contains(t, p.html, "1 option found for “no. 1310”. ")
}
