package standards

// measured settles what a figure would.
const measured = "measuring or weighing the finished unit"

// named settles what the text leaves to the purchaser.
const named = "the purchaser's number"

// Settles is the paper or the test that settles a clause which no figure does; empty for
// a clause that is not known. Which report a test makes is common practice.
func Settles(clause string) string {
	if text, ok := settles[clause]; ok {
		return text
	}
	if len(clause) == len("amd-000") && clause[:4] == "amd-" {
		return "the report of the test on a unit of this model"
	}
	return ""
}

var settles = map[string]string{
	"kkk-declaration":   "the declaration, signed by who certifies",
	"kkk-payload-sign":  "the sign on the unit and the form, filled in from the scale ticket",
	"kkk-remaining-tag": "the tag in the unit, engraved after the test of the finished unit",
	"kkk-load-list":     "the electrical load analysis",
	"kkk-monitor":       "the operating test of the finished unit",
	"kkk-wiring":        "the wire maker's certificate and the circuit schedule",
	"kkk-wire-marking":  "looking at the harness before it is closed in",
	"kkk-shore":         "the inlet's nameplate and a trip of its ground-fault breaker",
	"kkk-flash":         "the lamp maker's certificate",
	"kkk-beam":          "the lamp maker's certificate",
	"kkk-light-test":    "the lamp maker's certificate",
	"kkk-flood":         "the lamp maker's photometry, and height and aim as measured",
	"kkk-mounts":        "the mounting drawing and a count at final inspection",
	"kkk-fasteners":     "the body drawing and the inspection before skinning",
	"kkk-ventilation":   "an air-flow measurement of the finished unit",
	"kkk-climate":       "the report of the soak test on a unit of this model",
	"kkk-cold-start":    "the chassis maker's statement",
	"kkk-seats-litters": "the makers' test reports to SAE J3026 and J3027",
	"amd-003":           "the mount makers' test reports to SAE J3043",
	"amd-013":           "the scale ticket by wheels, see the test sheet",
	"in-speed":          "a road test with the speed held",
	"in-tread":          "a tread gauge at delivery",
	"nv-kneeling":       "measuring the finished unit",
	"nv-light":          "a light meter in the finished unit",
	"wa-light":          "a light meter in the finished unit",
	"ny-climate":        "a thermometer in the finished unit",
	"own-generating":    "the electrical load analysis",
	"own-load-analysis": "the electrical load analysis itself",
	"own-circuits":      "the wire maker's certificate and the circuit schedule",
	"own-low-voltage":   "the operating test of the finished unit",
}
