package session

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"boxwright/config"
	"boxwright/config/csv"
	"boxwright/pricing/quote"
)

// FileName keeps what every file system takes.
func FileName(text string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' {
			return r
		}
		return '-'
	}, text)
}

// Clip is a text cut to at most so many bytes.
func Clip(text string, most int) string {
	if len(text) > most {
		return strings.ToValidUTF8(text[:most], "")
	}
	return text
}

// Sentence words an error for the reader: the first few problems with their
// places.
func Sentence(err error) string {
	var ps config.Problems
	if !errors.As(err, &ps) {
		return err.Error()
	}
	text := ""
	for i, p := range ps {
		if i == 3 {
			return text + fmt.Sprintf(" And %d more.", len(ps)-i)
		}
		if i > 0 {
			text += " "
		}
		text += ended(p.String())
	}
	return text
}

// ended is a sentence with its stop.
func ended(text string) string {
	if strings.HasSuffix(text, ".") || strings.HasSuffix(text, "?") {
		return text
	}
	return text + "."
}

// Plain words an error of sealing without the name of its package.
func Plain(err error) string { return strings.TrimPrefix(Sentence(err), "seal: ") }

// Save has the browser save rows as a table named after the quote.
func (s *Session) Save(what string, rows [][]string) {
	s.Step(Step{Do: "save", Name: s.NameFile(what, ".csv"), Type: "text/csv", Text: "\ufeff" + csv.Write(rows)})
}

// NameFile names a file after the quote, and after what it holds of it, if not all.
func (s *Session) NameFile(what, ending string) string {
	name := FileName(cmp.Or(s.Draft.Number, "quote"))
	if what != "" {
		name += "-" + what
	}
	return name + ending
}

// Canonical is a draft's bytes, to see whether an act has changed it.
func Canonical(d *quote.Draft) string {
	data, err := json.Marshal(d)
	if err != nil {
		return ""
	}
	return string(data)
}

// Hashed is a short name of contents by their hash.
func Hashed(data []byte, err error) string {
	if err != nil {
		return ""
	}
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:8])
}

// JSON is a value as text for the page.
func JSON(v any) string {
	data, err := json.Marshal(v)
	if err != nil {
		return "null"
	}
	return string(data)
}
