package weight

// SSF is the static stability factor: half the track over the height of the
// center of gravity. Zero when either is none.
//
// Source: SSF = T/2h (NHTSA, rollover resistance rating; TRID 763766 for the
// fleet means of model year 2003). A rigid-body figure: the dynamic threshold
// of heavy trucks was found about 25 percent lower (SAE 2003-01-3385).
// Units: in; in; the result has none.
// Valid: track and height of 0.1 to 1e5 in; otherwise zero.
// Example: SSF(70, 35) = 1.00.
func SSF(track, height float64) float64 {
	if !within(0.1, 1e5, track, height) {
		return 0
	}
	return track / (2 * height)
}
