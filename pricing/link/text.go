package link

import (
	"bytes"
	"compress/flate"
	"io"
)

// squeeze compresses the text of a link. The same text gives the same bytes
// natively and in wasm, as long as one toolchain builds both.
func squeeze(text []byte) ([]byte, error) {
	var out bytes.Buffer
	w, err := flate.NewWriterDict(&out, flate.BestCompression, []byte(dictionary2))
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(text); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// expand reads a compressed text from the front of data and returns what follows
// it. It stops at maxRest bytes, however large the text claims to be.
func expand(data []byte) (text, after []byte, err error) {
	r := bytes.NewReader(data) // an io.ByteReader, so that flate takes no byte too many
	text, err = io.ReadAll(io.LimitReader(flate.NewReaderDict(r, []byte(dictionary2)), maxRest+1))
	if err != nil || len(text) > maxRest {
		return nil, nil, errPacked
	}
	return text, data[len(data)-r.Len():], nil
}
