package site

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
)

// built are the parts, made once for all tests here.
var built = sync.OnceValues(func() (*Parts, error) {
	root, err := Root()
	if err != nil {
		return nil, err
	}
	return Gather(root)
})

func parts(t *testing.T) *Parts {
	t.Helper()
	p, err := built()
	require.NoError(t, err)
	return p
}

func TestSizeBudget(t *testing.T) {
	total, core, err := parts(t).Size()
	require.NoError(t, err)
	require.LessOrEqual(t, total, Budget, "%d bytes, of which the core %d: see what came in with go list -deps ./wasm",
		total, core)
	require.Greater(t, core, 400_000, "no Go core is this small: something is missing")
}

func TestSameSourcesGiveTheSameBytes(t *testing.T) {
	root, err := Root()
	require.NoError(t, err)
	again, err := Gather(root)
	require.NoError(t, err)
	require.Equal(t, parts(t).folder(), again.folder())
	require.Equal(t, parts(t).Single(), again.Single())
}

func TestBothFormsAreWritten(t *testing.T) {
	dir := t.TempDir()
	stale := filepath.Join(dir, FolderForm, "stale.js")
	require.NoError(t, os.MkdirAll(filepath.Dir(stale), 0o755))
	require.NoError(t, os.WriteFile(stale, nil, 0o644))
	require.NoError(t, parts(t).Write(dir))
	require.NoFileExists(t, stale, "what an earlier build left does not stay")

	page, err := os.ReadFile(filepath.Join(dir, FolderForm, "index.html"))
	require.NoError(t, err)
	require.NotContains(t, string(page), "{{", "every mark of the page is filled")
	names := regexp.MustCompile(`(?:href|src|data-worker|data-core|data-schema)="([^"]+)"`).FindAllStringSubmatch(string(page), -1)
	require.GreaterOrEqual(t, len(names), 6)
	for _, m := range names {
		if !strings.HasPrefix(m[1], "#") {
			require.FileExists(t, filepath.Join(dir, FolderForm, m[1]), "what the page names is there")
		}
	}

	one, err := os.ReadFile(filepath.Join(dir, SingleForm))
	require.NoError(t, err)
	require.NotContains(t, string(one[:4000]), "{{")
	require.NotRegexp(t, `(?:src|href)="(?:https?:|//)`, string(one), "the one file names nothing outside itself")
	require.NotContains(t, policyOf(t, one), "connect-src", "the one file may not connect anywhere")
	source, err := os.ReadFile("../../../schema/" + schemaFile)
	require.NoError(t, err)
	shipped, err := os.ReadFile(filepath.Join(dir, FolderForm, named("quote-schema", parts(t).Schema, "json")))
	require.NoError(t, err)
	require.JSONEq(t, string(source), string(shipped), "the form of a quote's file stands beside the page")
	require.Contains(t, string(one), string(shipped), "and is carried by the one file")
	for _, form := range [][]byte{page, one} {
		require.Contains(t, policyOf(t, form), "default-src 'none'", "what is not named is refused")
		require.NotContains(t, policyOf(t, form), "'unsafe-inline'")
		require.NotContains(t, policyOf(t, form), "'unsafe-eval'")
	}
}

func policyOf(t *testing.T, page []byte) string {
	t.Helper()
	m := regexp.MustCompile(`Content-Security-Policy" content="([^"]*)"`).FindSubmatch(page)
	require.NotNil(t, m, "the page has a content-security policy")
	return string(m[1])
}

// core is the wasm as the worker runs it.
func core(t *testing.T) []byte {
	t.Helper()
	return parts(t).Core
}
