package site

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"

	"boxwright/web/pack/strip"
)

// packed gives the core folded and as Zstandard: a third smaller on the line than
// gzip, for a decoder of a few kilobytes in the page. Packing takes some seconds,
// so the last result is kept in a folder under the digest of what went in.
func packed(root string, core []byte, folder string) ([]byte, error) {
	folded, err := strip.Fold(core)
	if err != nil {
		return nil, fmt.Errorf("folding the core: %w", err)
	}
	file := filepath.Join(folder, digestOf(folded))
	kept, err := os.ReadFile(file)
	if err == nil {
		return kept, nil
	}
	if !errors.Is(err, fs.ErrNotExist) {
		return nil, err
	}
	cmd := exec.Command("node", filepath.Join(root, "web", "pack", "site", "zstd.mjs"))
	cmd.Stdin = bytes.NewReader(folded)
	var out, said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &said
	if err := cmd.Run(); err != nil {
		return nil, fmt.Errorf("packing the core with node: %w\n%s", err, said.Bytes())
	}
	if said.String() != digestOf(core) {
		return nil, fmt.Errorf("the core does not come back from its packing: its digest is %s, and what a page gets has %q", digestOf(core), said.String())
	}
	if err := os.RemoveAll(folder); err != nil {
		return nil, err
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return nil, err
	}
	part := file + ".part"
	if err := os.WriteFile(part, out.Bytes(), 0o644); err != nil {
		return nil, err
	}
	return out.Bytes(), os.Rename(part, file)
}

func digestOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}
