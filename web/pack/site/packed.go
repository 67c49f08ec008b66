package site

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"boxwright/web/pack/deflate"
)

// packed gives the data as gzip. Packing takes some seconds, so the last
// result is kept in a folder under the digest of what went in.
func packed(data []byte, folder string) ([]byte, error) {
	sum := sha256.Sum256(data)
	file := filepath.Join(folder, hex.EncodeToString(sum[:]))
	kept, err := os.ReadFile(file)
	if err == nil {
		return kept, nil
	}
	if !errors.Is(err, fs.ErrNotExist) {
		return nil, err
	}
	out := deflate.Gzip(data)
	if err := os.RemoveAll(folder); err != nil {
		return nil, err
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return nil, err
	}
	part := file + ".part"
	if err := os.WriteFile(part, out, 0o644); err != nil {
		return nil, err
	}
	return out, os.Rename(part, file)
}
