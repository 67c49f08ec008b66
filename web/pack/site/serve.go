package site

import (
	"net"
	"net/http"
	"path"
	"strings"
	"time"
)

// Handler serves the folder form the way any static host would.
func Handler(folder string) http.Handler {
	files := http.FileServer(http.Dir(folder))
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if strings.HasSuffix(r.URL.Path, ".bin") {
			// The packed core, which the page unpacks itself.
			w.Header().Set("Content-Type", "application/octet-stream")
		}
		// A file named by its content has its hash between two points.
		if strings.Count(path.Base(r.URL.Path), ".") >= 2 {
			w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
		} else {
			w.Header().Set("Cache-Control", "no-cache")
		}
		for name, value := range Headers {
			w.Header().Set(name, value)
		}
		files.ServeHTTP(w, r)
	})
}

// Headers are those that a host should send with every file beside what it sends anyway:
// nobody shows the page in a frame of their own, and it hands no address on.
var Headers = map[string]string{
	"Content-Security-Policy":    "frame-ancestors 'none'",
	"Cross-Origin-Opener-Policy": "same-origin",
	"Referrer-Policy":            "no-referrer",
	"X-Content-Type-Options":     "nosniff",
}

// Listen takes the preferred port of localhost, or any free one.
func Listen(preferred string) (net.Listener, error) {
	if l, err := net.Listen("tcp", net.JoinHostPort("127.0.0.1", preferred)); err == nil {
		return l, nil
	}
	return net.Listen("tcp", "127.0.0.1:0")
}

// Serve answers on l until it fails.
func Serve(l net.Listener, folder string) error {
	s := &http.Server{Handler: Handler(folder), ReadHeaderTimeout: 5 * time.Second}
	return s.Serve(l)
}
