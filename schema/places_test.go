package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestPlacesInWordsHaveALine(t *testing.T) {
	p := placesOf([]byte(`{
  "valid_from": "2026-11-01",
  "options": [
    {"id": "step"},
    {"id": "say \"hi\"",
     "mass": {
       "lb": 4}}
  ],
  "price_book": {
    "prices": {
      "step": "1.00",
      "two words": "2.00"
    },
    "fees": [{"id": "step"}]
  }
}`))
	for _, c := range []struct {
		where  string
		line   int
		reason string
	}{
		{`valid_from`, 2, "a field"},
		{`options[1] "say \"hi\"" mass lb`, 7, "a figure of an option"},
		{`options[1] "say \"hi\"" mass zone`, 6, "a figure that is missing: what it is missing from"},
		{`option "step"`, 4, "as the lint names it"},
		{`option "say \"hi\""`, 5, "a strange id"},
		{`option "ghost"`, 0, "an option that is not there"},
		{`price_book prices "two words"`, 12, "a price"},
		{`price_book prices "ghost"`, 10, "a price that is missing"},
		{`price_book prices.step`, 11, "a path of the price book"},
		{`price_book fees[0] "step" amount`, 14, "an entry of the price book"},
		{`line 7, column 14 at options[1].mass.lb`, 7, "what the strict decoder names"},
		{`the end of the file`, 0, "no place in it"},
		{``, 0, "no place at all"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			assert.Equal(t, c.line, p.line(c.where), "%q: %s", c.where, c.reason)
		})
	}
	assert.NotPanics(t, func() { placesOf([]byte(`{"a": [`)) })
	assert.Empty(t, placesOf(nil))
}
