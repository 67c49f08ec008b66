// Package catalogue holds the demonstration catalogue that is built into the
// page. Everything in it is invented: plant, options, weights, prices, dates.
package catalogue

import _ "embed"

// Demo is the catalogue file, in the form config.Read takes.
//
//go:embed demo.json
var Demo []byte

// Hash of Demo, where the program that holds it was told when it was linked;
// web/pack does that for the page.
var Hash string

// Plant is the key of the one plant whose catalogues the page takes, as rosters write
// keys; empty when it takes any. web/pack sets it when the page is built.
var Plant string
