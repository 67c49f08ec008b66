package quote_test

import (
	"bytes"
	"encoding/json"
	"runtime"
	"runtime/debug"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/seeds"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/assets/catalogue"

	"math/rand/v2"
)

func TestAcceptedCataloguesHaveAQuoteOnEveryChassis(t *testing.T) {
	ed, err := quote.Accept(catalogue.Demo)
	require.NoError(t, err)
	require.NotEmpty(t, ed.Cat.Hash())
	for _, c := range []struct {
		name     string
		old, new string
		where    string
	}{
		{"not JSON", "{", "[", "line 2"},
		{"a price that is none", `"van-9500-148-gas": "54800.00"`, `"van-9500-148-gas": "x"`, "price_book"},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.True(t, bytes.Contains(catalogue.Demo, []byte(c.old)))
			_, err := quote.Accept(bytes.Replace(catalogue.Demo, []byte(c.old), []byte(c.new), 1))
			require.ErrorAs(t, err, new(config.Problems))
			require.Contains(t, err.Error(), c.where)
		})
	}
}

// A plant without activities has no schedule: a file that says so is in order, field
// by field, and no quote can be computed with it.
func TestACatalogueThatCannotBeQuotedIsRefused(t *testing.T) {
	var c map[string]any
	require.NoError(t, json.Unmarshal(catalogue.Demo, &c))
	c["plant"].(map[string]any)["activities"] = []any{}
	for _, o := range c["options"].([]any) {
		delete(o.(map[string]any), "parts_for")
	}
	file, err := json.Marshal(c)
	require.NoError(t, err)
	_, err = config.Read(file)
	require.NoError(t, err, "the reader takes it")
	_, err = quote.Accept(file)
	var ps config.Problems
	require.ErrorAs(t, err, &ps)
	require.Equal(t, "time.no-network", ps[0].Code)
}

// A file with an id of any length is refused in a few words.
func TestARefusalIsShort(t *testing.T) {
	for name, put := range map[string]string{
		"a key": `"` + strings.Repeat("k", 1<<16) + `":1,"id":"demo"`,
		"an id": `"id":"` + strings.Repeat("i", 1<<16) + `"`,
	} {
		t.Run(name, func(t *testing.T) {
			_, err := quote.Accept(bytes.Replace(catalogue.Demo, []byte(`"id": "van-9500-148-gas"`), []byte(put), 1))
			require.ErrorAs(t, err, new(config.Problems))
			require.Less(t, len(err.Error()), 1000)
		})
	}
}

// The rules of this catalogue take minutes to work out in a page.
func TestACatalogueThatTakesTooMuchWorkIsRefusedAtItsFirstChassis(t *testing.T) {
	_, err := quote.Accept(quotetest.Hostile(rand.New(rand.NewPCG(1, 0)), 1<<18, false))
	var ps config.Problems
	require.ErrorAs(t, err, &ps)
	require.Equal(t, "catalogue.too-much-work", ps[0].Code)
	require.Contains(t, ps[0].Where, "chassis[0]")
}

// stuck is how long one catalogue may take on a busy machine before it counts as
// hanging the page.
const stuck = 2 * time.Minute

// Catalogues made to hang or kill the page are taken, or refused in words.
func TestHostileCataloguesAreTakenOrRefusedInWords(t *testing.T) {
	n, most := int64(20), 1<<18
	if testing.Short() {
		n = 10
	}
	defer debug.SetMemoryLimit(debug.SetMemoryLimit(3 << 30))
	taken, slowest, slowestSeed := 0, time.Duration(0), int64(0)
	var highest uint64
	for seed := range seeds.Each(n) {
		size, full := most, seed%20 == 9
		if full {
			size = config.MaxCatalogueBytes
		}
		file := quotetest.Hostile(rand.New(rand.NewPCG(uint64(seed), 0)), size, full)
		began := time.Now()
		end := time.AfterFunc(stuck, func() {
			buf := make([]byte, 1<<16)
			panic("catalogue of seed hangs: " + strings.TrimSpace(string(buf[:runtime.Stack(buf, true)])))
		})
		_, err := quote.Accept(file)
		end.Stop()
		if took := time.Since(began); took > slowest {
			slowest, slowestSeed = took, seed
		}
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		highest = max(highest, m.HeapSys)
		if testing.Verbose() {
			said := "taken"
			if err != nil {
				said = err.Error()
			}
			t.Logf("seed %d, %d KB, %v, heap %d MB: %.200s", seed, len(file)>>10, time.Since(began).Round(time.Millisecond),
				m.HeapSys>>20, said)
		}
		if err == nil {
			taken++
			continue
		}
		var ps config.Problems
		require.ErrorAs(t, err, &ps, "seed %d", seed)
		for _, p := range ps {
			require.NotEmpty(t, p.Text, "seed %d", seed)
			require.LessOrEqual(t, len(p.Where)+len(p.Text), 2400, "seed %d", seed)
		}
		require.NotContains(t, err.Error(), "the program fails", "seed %d", seed)
	}
	t.Logf("%d of %d taken; the slowest, of seed %d, took %v; the heap reached %d MB", taken, n, slowestSeed, slowest,
		highest>>20)
}
