package pagetest

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// RowOf is the cells of a table's row, without marks and markup.
func RowOf(t testing.TB, html, first string) []string {
	t.Helper()
	for _, row := range regexp.MustCompile(`(?s)<tr[^>]*>(.*?)</tr>`).FindAllStringSubmatch(html, -1) {
		var cells []string
		for _, c := range regexp.MustCompile(`(?s)<t[hd][^>]*>(.*?)</t[hd]>`).FindAllStringSubmatch(row[1], -1) {
			cells = append(cells, strings.TrimSpace(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(c[1], "")))
		}
		if len(cells) > 0 && cells[0] == first {
			return cells
		}
	}
	require.Fail(t, "no row "+first)
	return nil
}
