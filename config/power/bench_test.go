package power

import "testing"

func BenchmarkBudget(b *testing.B) {
	cat, u := fixture(b), unit("ac", "battery-agm", "charger", "inverter", "lightbar", "scene-light")
	for b.Loop() {
		Budget(cat, u, nil)
	}
}

func BenchmarkLimits(b *testing.B) {
	cat, u := fixture(b), unit()
	for b.Loop() {
		Limits(cat, u, nil)
	}
}
