package money

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// The page and the schemas must accept the same texts.
func TestFormsAreThePublishedPatterns(t *testing.T) {
	forms := map[string]form{AmountPattern: amountForm, PercentPattern: percentForm, QuantityPattern: quantityForm}
	for _, text := range []string{"", "-", ".", "0", "-0", "--1", "+1", "1.", ".5", "-.5", "1..2", "1.2.3", "1e5",
		"1,000", " 1", "1\n", "٣",
		"123456789", "1234567890", "1.12", "1.123", "1.123456", "1.1234567", "123", "1234", "123456", "1234567",
		"-1.5"} {
		for pattern, f := range forms {
			assert.Equal(t, regexp.MustCompile(pattern).MatchString(text), f.fits(text), "%q by %s", text, pattern)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`-?[0-9]{0,10}\.?[0-9]{0,7}[-x]?`).Draw(t, "text")
		for pattern, f := range forms {
			assert.Equal(t, regexp.MustCompile(pattern).MatchString(text), f.fits(text), "%q by %s", text, pattern)
		}
	})
}
