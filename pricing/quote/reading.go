package quote

// MaxReadings is the most readings of a test sheet.
const (
	MaxReadings = 400
	maxReading  = 1e6
)

// Reading is what was weighed, measured or found on the finished unit.
type Reading struct {
	Check string  `json:"check"` // id of the check
	Value float64 `json:"value"` // in the check's unit; 1 in order or 0 a fault where there is none
}
