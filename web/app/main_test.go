package app

import (
	"os"
	"testing"

	"boxwright/pricing/seal/sealtest"
)

// TestMain has keys and cost sheets sealed with little work: how much it takes is
// what package seal is about.
func TestMain(m *testing.M) {
	sealtest.Cheap()
	os.Exit(m.Run())
}
