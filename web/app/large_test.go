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

// A search shows no more options than anybody reads, and says how many it found.
func TestASearchShowsTheFirstOfMany(t *testing.T) {
	file, err := large.File(2000, 1)
	require.NoError(t, err)
	p := newPresser()
	p.ask(Act{Do: "load-catalogue", ID: "large.json", Value: string(file)})
	p.ask(Act{Do: "go", ID: "unit"})
	p.ask(Act{Do: "search", Value: "e"})
	require.Len(t, pickable.FindAllString(p.html, -1), 200)
	require.Regexp(t, `\d{3,} options found for “e”; the first 200 are shown, another word finds fewer`, p.html)
	p.ask(Act{Do: "search", Value: "no. 1310"})
	require.Len(t, pickable.FindAllString(p.html, -1), 1)
	require.Contains(t, p.html, "1 option found for “no. 1310”. ")
}
