package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/web/assets/catalogue"
)

// A keeper's round on the host: out, edited, in, compared, checked.
func TestTablesAndEditionsOnTheHost(t *testing.T) {
	dir := t.TempDir()
	before, file, sheets := filepath.Join(dir, "before.json"), filepath.Join(dir, "mine.json"), filepath.Join(dir,
		"sheets")
	require.NoError(t, os.WriteFile(before, catalogue.Demo, 0o644))
	require.NoError(t, os.WriteFile(file, catalogue.Demo, 0o644))
	do := func(status int, args ...string) (out, errs string) {
		t.Helper()
		var o, e strings.Builder
		require.Equal(t, status, run(args, &o, &e), e.String())
		return o.String(), e.String()
	}
	edit := func(table, from, to string) {
		t.Helper()
		path := filepath.Join(sheets, table+".csv")
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		require.True(t, bytes.Contains(text, []byte(from)), from)
		require.NoError(t, os.WriteFile(path, bytes.Replace(text, []byte(from), []byte(to), 1), 0o644))
	}
	mine := func() []byte {
		t.Helper()
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		return data
	}

	_, errs := do(2, "import", file, dir)
	assert.Contains(t, errs, "holds none of the tables options, prices, rules")
	out, _ := do(0, "export", file, sheets)
	assert.Contains(t, out, filepath.Join(sheets, "rules.csv"))
	out, _ = do(0, "import", file, sheets)
	assert.Equal(t, "nothing differs\n", out)
	assert.True(t, bytes.Equal(catalogue.Demo, mine()))

	edit("prices", ",6480.00,", ",tbd,")
	edit("rules", "fit-164,physics", "fit-164,whim")
	_, errs = do(1, "import", file, sheets)
	assert.Contains(t, errs, `"fb-winch", column price: “tbd” is not a number of dollars`)
	assert.True(t, bytes.Equal(catalogue.Demo, mine()), "nothing is taken unless all is sound")
	edit("prices", ",tbd,", ",6804,")
	_, errs = do(1, "import", file, sheets)
	assert.Contains(t, errs, `row 5 "fit-164", column kind: "whim" is not one of physics`)
	edit("rules", "fit-164,whim", "fit-164,plant")
	out, _ = do(0, "import", file, sheets)
	assert.Contains(t, out, "Prices: Winch bumper with 9,000 lb electric winch (fb-winch): 6804.00, was 6480.00: "+
		"324.00 +5.0 %\n")

	again, _ := do(0, "compare", before, file)
	assert.Equal(t, out, again)
	assert.Contains(t, out, "Rules: changed fit-164: ")
	out, _ = do(0, "compare", before, before)
	assert.Equal(t, "nothing differs\n", out)
	out, _ = do(0, "check", file)
	assert.Contains(t, out, "in order")

	require.NoError(t, os.WriteFile(before, []byte("{"), 0o644))
	do(1, "compare", before, file)
	do(2, "compare", filepath.Join(dir, "none.json"), file)
	do(2, "compare", file)
	do(1, "export", before, sheets)
	do(2, "export", file)
	do(2, "import", file)
}
