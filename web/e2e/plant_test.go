package e2e

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/link"
	"boxwright/pricing/sign"
	"boxwright/pricing/tables"
	"boxwright/web/e2e/drive"
	"boxwright/web/pack/site"
)

// keyOf is a key of an invented plant.
func keyOf(t *testing.T, letter string) *sign.Key {
	t.Helper()
	k, err := sign.New(strings.NewReader(strings.Repeat(letter, 32)))
	require.NoError(t, err)
	return k
}

// onePlant is a page built for the plant with that key, around its catalogue.
func onePlant(t *testing.T, key *sign.Key, file []byte) form {
	t.Helper()
	root, err := site.Root()
	require.NoError(t, err)
	parts, err := site.GatherFor(root, sign.Text(key.Public()))
	require.NoError(t, err)
	parts.Catalogue = file
	dir := t.TempDir()
	require.NoError(t, parts.Write(dir))
	return form{name: "plant", address: "file://" + filepath.Join(dir, site.SingleForm), offline: true, lean: true}
}

// resigned is the own link of the quote in work, signed with a key for a catalogue.
func (w *window) resigned(cat *config.Catalogue, key *sign.Key) string {
	w.t.Helper()
	w.parties()
	own, cover, _ := link.Split(w.link())
	signed, err := link.Sign(own, cat, key)
	w.must(err)
	return link.WithCover(signed, cover)
}

// follows opens a link in the page as it stands.
func (w *window) follows(link string) {
	w.t.Helper()
	eval[bool](w, `(location.hash = `+drive.Quote("#"+link)+`, true)`)
	w.must(w.Until(`!location.hash`))
	w.must(w.Settle())
}

// A page that was built for one plant trusts what that plant signed, and nobody else.
func TestThePageOfOnePlantTrustsThatPlantAlone(t *testing.T) {
	t.Parallel()
	plant, thief := keyOf(t, "p"), keyOf(t, "q")
	edition := altered(t, `"edition": "2026-11"`, `"edition": "2027-01"`)
	file, err := tables.Sign(edition, plant)
	require.NoError(t, err)
	cat, err := config.Read(file)
	require.NoError(t, err)
	data, err := os.ReadFile("../assets/catalogue/demo-key.json")
	require.NoError(t, err)
	seller, err := sign.Read(data)
	require.NoError(t, err)

	f := onePlant(t, plant, file)
	w := open(t, f, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	good, stranger := w.resigned(cat, seller), w.resigned(cat, keyOf(t, "z"))

	// Catalogues of others are refused in words, as files and as what the browser kept.
	again, err := tables.Sign(edition, thief)
	require.NoError(t, err)
	for name, other := range map[string][]byte{
		"unsigned.json": altered(t, `"edition": "2026-11"`, `"edition": "2027-03"`),
		"thief.json":    again,
	} {
		w.area("catalogue")
		w.must(w.Choose("#f-catalogue", written(t, name, other)))
		w.must(w.Until(`!document.getElementById("trouble").hidden`))
		require.Contains(t, w.trouble(), "the plant did not sign this one", name)
		require.Contains(t, w.trouble(), "the catalogue in use stays", name)
	}
	eval[bool](w, strings.Replace(keepCatalogue, `"{}"`, drive.Quote(string(again)), 1))
	w.must(w.Reload())
	require.Contains(t, w.trouble(), "the plant did not sign this one")
	require.Contains(t, w.text("#masthead"), "Cutaway")

	w.follows(good)
	require.Contains(t, w.text("#trust"), "Genuine. Signed by Dana Whitfield (invented)")
	w.follows(stranger)
	require.Contains(t, w.text("#trust"), "Signed by somebody unknown.")
	require.Contains(t, w.whole("#trust"), "does not know the key")
}
