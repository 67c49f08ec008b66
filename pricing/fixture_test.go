package pricing_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/money"
)

// A small catalogue of our own with round prices that can be summed by hand.
const bookText = `{
  "currency": "USD", "rounding": "half-up", "validity_days": 60, "notes": ["All data are invented."],
  "prices": {"cutaway": "60000.00", "heavy": "90000.00", "module": "95000.00", "rescue-body": "110000.00",
    "winch": "2000.00", "lights": "350.00", "camera": "499.99", "no-spare": "-310.00", "cot-mount": "4200.00"},
  "editions": [
    {"id": "2027-07", "from": "2027-07-01", "reason": "Mid-year change.", "prices": {"winch": "2300.00"}},
    {"id": "2027-01", "from": "2027-01-01", "reason": "Yearly change.", "prices": {"winch": "2150.00", "module": "97000.00"}}
  ],
  "surcharges": [
    {"id": "aluminum", "label": "Aluminum surcharge", "from": "2026-07-01", "until": "2026-12-31", "on": "body", "percent": "1.5", "reason": "Sheet cost."},
    {"id": "display", "label": "Camera supply surcharge", "from": "2026-10-01", "until": "2027-03-31", "keys": ["camera"], "amount": "25.00", "reason": "Per camera."}
  ],
  "credits": [
    {"id": "scene-pack", "label": "Scene package credit", "when": ["winch", "lights"], "amount": "150.00", "reason": "Shared wiring."},
    {"id": "scene-pack-plus", "label": "Large scene package credit", "when": ["winch", "lights", "camera"], "amount": "260.00", "ousts": ["scene-pack"], "reason": "Shared wiring."}
  ],
  "fleet_breaks": {"on": "build", "reason": "Fewer change-overs.", "breaks": [{"units": 2, "percent": "1"}, {"units": 5, "percent": "2.25"}]},
  "contracts": [
    {"id": "coop", "label": "Invented cooperative", "from": "2026-01-01", "until": "2028-12-31", "no_fleet_break": true, "fee": "0.5",
     "discounts": [{"on": "chassis", "percent": "1"}, {"on": "build", "percent": "4"}], "reason": "Contract terms."}
  ],
  "prepayments": [{"id": "on-arrival", "label": "Chassis paid on arrival", "percent": "1.6", "at": "arrival", "reason": "Saves interest."}],
  "freight": {"per_mile": "3.25", "free": "50", "minimum": "450.00"},
  "training": {"per_day": "1150.00", "free": "1"},
  "fees": [
    {"id": "documents", "label": "Title fee", "amount": "185.00", "per": "unit", "untaxed": true, "reason": "Passed through."},
    {"id": "trip", "label": "Inspection trip", "amount": "2800.00", "per": "order", "choice": true, "reason": "When asked for."}
  ],
  "tax": {"rate": "6.5", "label": "State sales tax", "freight_untaxed": true, "reason": "Usual rate."},
  "bond": [{"over": "0", "percent": "1.2"}, {"over": "500000", "percent": "0.9"}],
  "milestones": [
    {"id": "order", "label": "With the order", "percent": "10"},
    {"id": "chassis", "label": "When the chassis arrives", "percent": "30"},
    {"id": "delivery", "label": "On acceptance", "percent": "60"}
  ]
}`

func catalogue(t testing.TB) *config.Catalogue {
	t.Helper()
	front := config.Tires{Size: "225/70R19.5", Count: 2, LoadLb: 3640, PressurePSI: 95}
	rear := front
	rear.Count = 4
	chassis := config.Chassis{
		ID: "cutaway", Label: "Cutaway 14,500 lb, 158 in wheelbase", Type: "III", Cab: "cutaway", Drive: "4x2",
		Fuel:        "diesel",
		WheelbaseIn: 158, FloorHeightIn: 32, TrackFrontIn: 68, TrackRearIn: 76, CGHeightIn: 28, GVWRLb: 14500,
		GAWRFrontLb: 5000, GAWRRearLb: 9450, CurbFrontLb: 3200, CurbRearLb: 2600, FrontTires: front, RearTires: rear,
	}
	heavy := chassis
	heavy.ID, heavy.Label, heavy.GVWRLb = "heavy", "Medium-duty 35,000 lb, 193 in wheelbase", 35000
	option := func(id string, most int) config.Option {
		return config.Option{ID: id, Group: "all", Label: "Option " + id, Spec: "The " + id + ".", MaxQty: most}
	}
	c := &config.Catalogue{
		Format: config.CatalogueFormat, ID: "small", Title: "Small", Edition: "2026-11",
		ValidFrom: config.Date{Year: 2026, Month: 11, Day: 1},
		Notice:    "Invented.", Chapters: []config.Chapter{{ID: "all", Label: "All"}},
		Chassis: []config.Chassis{chassis, heavy},
		Bodies: []config.Body{
			{ID: "module", Label: "148 in module", Kind: "module", Shell: &config.Shell{}},
			{ID: "rescue-body", Label: "Rescue body", Kind: "module", Shell: &config.Shell{}, Tags: []string{"not-ambulance"}},
		},
		Groups: []config.Group{{ID: "all", Label: "All", Chapter: "all", Choose: config.ChooseAny}},
		Options: []config.Option{option("winch", 1), option("lights", 4), option("camera", 2), option("no-spare", 1),
			option("mount", 1)},
		Plant: config.Plant{HoursPerDay: 8},
	}
	c.Options[4].PriceKey = "cot-mount"
	c.PriceBook = json.RawMessage(bookText)
	require.Empty(t, c.Prepare())
	return c
}

func book(t testing.TB) (*pricing.Book, *config.Catalogue) {
	t.Helper()
	cat := catalogue(t)
	b, err := pricing.ReadBook(json.RawMessage(bookText), cat)
	require.NoError(t, err)
	return b, cat
}

func amount(t testing.TB, text string) money.Amount {
	t.Helper()
	a, err := money.ParseAmount(text)
	require.NoError(t, err)
	return a
}
