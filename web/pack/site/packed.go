package site

import (
	"bytes"
	"compress/gzip"
)

// packed gives data as gzip at its highest level. Nothing but the data goes in:
// no name and no time.
func packed(data []byte) ([]byte, error) {
	var out bytes.Buffer
	z, err := gzip.NewWriterLevel(&out, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := z.Write(data); err != nil {
		return nil, err
	}
	if err := z.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}
