package weight

import "boxwright/config"

// TireCapacity is what the tires of an axle may carry together. Passenger-car
// tires on a truck or multipurpose vehicle count their load divided by 1.10.
// The result is zero when count or load is none that an axle can have.
//
// Source: 49 CFR 571.120 S5.1.2 (sum of the maximum loads, as quoted in NHTSA
// letters nht80-3.25; passenger-car tires divided by 1.10 before the sum,
// nht76-1.47).
// Units: lb.
// Valid: load rating of one tire in the mounting it has (single or dual).
// Example: four dual tires of 3,550 lb carry 14,200 lb.
func TireCapacity(t config.Tires) float64 {
	load := float64(t.LoadLb)
	if t.Count <= 0 || t.Count > 100 || !within(0, mostLb, load) {
		return 0
	}
	if t.Passenger {
		load /= 1.10
	}
	return load * float64(t.Count)
}
