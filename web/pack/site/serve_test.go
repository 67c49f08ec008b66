package site

import (
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// The packed core arrives packed, and what is named by its content is kept for
// good; the rest is asked for again at each visit.
func TestHeadersOfTheServedFolder(t *testing.T) {
	dir := t.TempDir()
	host := Handler(dir)
	for _, x := range []struct{ name, kind, cache string }{
		{"core.0123456789ab.bin", "application/octet-stream", "public, max-age=31536000, immutable"},
		{"app.0123456789ab.js", "text/javascript; charset=utf-8", "public, max-age=31536000, immutable"},
		{"service.js", "text/javascript; charset=utf-8", "no-cache"},
		{"manifest.json", "application/json", "no-cache"},
	} {
		t.Run(x.name, func(t *testing.T) {
			body, err := packed([]byte("{}"))
			require.NoError(t, err)
			require.NoError(t, os.WriteFile(filepath.Join(dir, x.name), body, 0o600))
			w := httptest.NewRecorder()
			r := httptest.NewRequest(http.MethodGet, "/"+x.name, nil)
			r.Header.Set("Accept-Encoding", "gzip, br")
			host.ServeHTTP(w, r)
			require.Equal(t, http.StatusOK, w.Code)
			require.Equal(t, x.kind, w.Header().Get("Content-Type"))
			require.Equal(t, x.cache, w.Header().Get("Cache-Control"))
			for name, value := range Headers {
				require.Equal(t, value, w.Header().Get(name))
			}
			require.Contains(t, w.Header().Get("Content-Security-Policy"), "frame-ancestors 'none'")
			require.Empty(t, w.Header().Get("Content-Encoding"), "nobody unpacks it on the way")
			require.Equal(t, body, w.Body.Bytes())
		})
	}
}
