// Package sealtest is for tests in which something is sealed and that are about
// something else.
package sealtest

import (
	"testing"

	"boxwright/pricing/seal/internal/effort"
)

// Cheap has files sealed, and opened again, with a sixth of the shipped work: the
// least that is opened at all.
func Cheap() {
	if !testing.Testing() {
		panic("sealtest: outside of a test")
	}
	effort.Sealing = effort.Cost{LogN: 14, Blocks: 8, Rounds: 1}
}
