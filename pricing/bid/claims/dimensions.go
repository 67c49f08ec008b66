package claims

import (
	"maps"
	"slices"
	"strings"

	"boxwright/config/quantity"
)

// dimensionWords are the words that say of what dimension an amount is, by their stems.
var dimensionWords = func() map[string]string {
	out := map[string]string{}
	for to, from := range map[string]string{"width": "wide width", "length": "long length",
		"height": "high height tall rise rises rising",
		"depth":  "deep depth", "thickness": "thick thickness", "distance": "apart spaced spacing center centers",
		"diameter": "diameter"} {
		for _, w := range strings.Fields(from) {
			out[stem(w)] = to
		}
	}
	return out
}()

// letters are dimensions in short, behind a length.
var letters = map[string]string{"h": "height", "w": "width", "d": "depth", "l": "length"}

// burdens are the words that tell what a thing carries from what it weighs.
var burdens = func() map[string]string {
	out := map[string]string{}
	for to, from := range map[string]string{"rating": "rated rating capacity patient lift lifts lifting load loads " +
		"raises raise lowers holds supports carries", "weight": "weight weighs weigh"} {
		for _, w := range strings.Fields(from) {
			out[stem(w)] = to
		}
	}
	return out
}()

// measuring are by its unit the words that tell of what an amount is said.
var measuring = map[string]map[string]string{quantity.Inch: dimensionWords, quantity.Pound: burdens}

// said tells each length the dimension it is said of, and each weight whether it is what
// a thing carries: by one of the two words behind it, or of the three before it.
func said(list []Token) []Token {
	for i := range list {
		t := &list[i]
		if t.Kind != Count {
			continue
		}
		t.Num.Whole = ofVehicle(list, i)
		for k := i + 1; k < len(list) && list[k].Kind != Stop && list[k].Kind != Break; k++ {
			t.Num.Choice = t.Num.Choice || list[k].Kind == Or && k+1 < len(list) && list[k+1].Kind == Word
		}
		words := measuring[t.Num.Unit]
		if words == nil {
			continue
		}
		for k, last := i+1, i+2; k < len(list) && k <= last && list[k].Kind == Word && t.Num.Of == ""; k++ {
			if list[k].raw == "of" {
				last++ // "42 in of clear width"
			}
			if leadsOn(list, k) {
				break
			}
			t.Num.Of = words[list[k].Word]
			if d := letters[list[k].raw]; d != "" && k == i+1 && t.Num.Unit == quantity.Inch && t.Num.Of == "" {
				t.Num.Of, list[k].raw, list[k].Word = d, "the", "the" // 70" H
			}
		}
		for k := i - 1; k >= 0 && k >= i-3 && list[k].Kind == Word && t.Num.Of == ""; k-- {
			t.Num.Of = words[list[k].Word]
		}
	}
	return list
}

// leadsOn reports whether a word says of what dimension the amount behind it is: "tube spaced 16 in".
func leadsOn(list []Token, at int) bool {
	return list[at].raw == "spaced" && at+1 < len(list) && list[at+1].Kind == Count
}

// vehicleWords name the whole unit.
var vehicleWords = []string{"overall", "vehicle", "ambulance", "unit", "apparatus", "truck", "rig"}

// ofVehicle reports whether the whole unit is named in the sentence before an amount, or
// right behind it.
func ofVehicle(list []Token, at int) bool {
	for k := at - 1; k >= 0 && list[k].Kind != Stop; k-- {
		if slices.Contains(vehicleWords, list[k].raw) {
			return true
		}
	}
	for k := at + 1; k < len(list) && k <= at+3 && list[k].Kind != Stop; k++ {
		if slices.Contains(vehicleWords, list[k].raw) {
			return true
		}
	}
	return false
}

// Dimension reports whether a word says of what dimension an amount is.
func Dimension(word string) bool { return dimensionWords[word] != "" }

// Dimensions are these words.
func Dimensions() []string { return slices.Collect(maps.Keys(dimensionWords)) }

// DimensionOf is the dimension that a word says an amount is of; empty where it says none.
func DimensionOf(word string) string { return dimensionWords[word] }
