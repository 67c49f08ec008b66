package pagetest

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A List is one that is cut short where it is long.
type List struct {
	Name string
	Most int                   // how many are shown
	Draw func(n int) string    // of the first n of the things that Numbered names
	More func(rest int) string // what is said of the rest; nil where nothing is
}

// Numbered is the name of the i-th thing.
func Numbered(i int) string { return fmt.Sprintf("Thing %d", i+1) }

// Texts are the names of the first n things.
func Texts(n int) (list []string) {
	for i := range n {
		list = append(list, Numbered(i))
	}
	return list
}

// numbers are the things numbered from 1 that a text names.
func numbers(html string) (list []int) {
	seen := map[int]bool{}
	for _, m := range regexp.MustCompile(`Thing (\d+)\b`).FindAllStringSubmatch(html, -1) {
		if i, _ := strconv.Atoi(m[1]); !seen[i] {
			seen[i] = true
			list = append(list, i)
		}
	}
	slices.Sort(list)
	return list
}

// IsCutShort holds that a list shows the first so many, and says how many more
// there are where that can be said; one that fits is whole and says nothing.
func (l List) IsCutShort(t *testing.T) {
	for _, n := range []int{1, l.Most - 1, l.Most, l.Most + 1, l.Most + 3} {
		t.Run(l.Name+" "+strconv.Itoa(n), func(t *testing.T) {
			html := l.Draw(n)
			var want []int
			for i := range min(n, l.Most) {
				want = append(want, i+1)
			}
			assert.Equal(t, want, numbers(html), "the first %d are shown", l.Most)
			switch {
			case l.More == nil:
			case n > l.Most:
				assert.Contains(t, html, l.More(n-l.Most), "the rest is counted")
			default:
				assert.NotContains(t, strings.ToLower(html), "more", "a whole list has no rest")
			}
		})
	}
}
