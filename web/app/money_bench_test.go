package app

import "testing"

// A click with three kinds of unit on the quote, and the areas that show all of
// them.
func BenchmarkFleetClick(b *testing.B) {
	for _, area := range []string{"unit", "price", "delivery", "quote"} {
		b.Run(area, func(b *testing.B) {
			p := open(&testing.T{})
			p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}, Act{Do: "add", ID: "item"},
				Act{Do: "chassis", ID: "cut-14000-158-gas"}, Act{Do: "add", ID: "item"}, Act{Do: "go", ID: area})
			on := true
			for b.Loop() {
				p.do(Act{Do: "pick", ID: "fb-push", On: on})
				on = !on
			}
		})
	}
}
