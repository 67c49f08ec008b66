package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestFindsWhatDrawsAtRandom(t *testing.T) {
	folder := t.TempDir()
	files := map[string]string{
		"a_test.go": `package p
import "pgregory.net/rapid"
func TestDraws(t *testing.T) { rapid.Check(t, nil) }
func law(t *testing.T) { rapid.Check(t, nil) }
func TestMain(m *testing.M) { law(nil) }
func FuzzAnything(f *testing.F) {}`,
		"b_test.go": `package p
import lots "boxwright/config/seeds"
func TestDrawsThroughAFunction(t *testing.T) { through(t) }
func through(t *testing.T) { law(t) }
func TestDrawsUnderAnotherName(t *testing.T) { lots.Each(1) }
func TestIsTheSameEachTime(t *testing.T) { t.Log("rapid") }
func TestGoesInOrder(t *testing.T) { lots.InOrder(nil) }`,
	}
	var names []string
	for name, text := range files {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600))
		names = append(names, name)
	}
	found, err := random(folder, names)
	require.NoError(t, err)
	require.Equal(t, []string{"FuzzAnything", "TestDraws", "TestDrawsThroughAFunction", "TestDrawsUnderAnotherName"},
		found)
}
