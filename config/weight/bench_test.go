package weight

import "testing"

func BenchmarkWeigh(b *testing.B) {
	cat, u, as := prepared(b), typical(), people(175)
	b.ReportAllocs()
	for b.Loop() {
		Weigh(cat, u, as)
	}
}

func BenchmarkLimits(b *testing.B) {
	cat, u, as := prepared(b), typical(), people(175)
	b.ReportAllocs()
	for b.Loop() {
		Limits(cat, u, as)
	}
}

func BenchmarkTakeOff(b *testing.B) {
	body := &fixture().Bodies[0]
	b.ReportAllocs()
	for b.Loop() {
		takenOff(body, nil)
	}
}
