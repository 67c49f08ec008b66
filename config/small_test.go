package config_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
)

// small is a whole catalogue of one chassis, one body and two groups; tests
// replace a piece of it.
const small = `{
  "format": "boxwright-catalogue/1", "id": "small", "title": "Small catalogue", "edition": "1", "valid_from": "2026-11-01", "notice": "Everything is invented.",
  "chapters": [{"id": "body", "label": "Body"}],
  "chassis": [
    {"id": "cut", "label": "Cutaway", "spec": "", "type": "III", "cab": "cutaway", "drive": "4x2", "fuel": "gasoline",
     "wheelbase_in": 158, "cab_to_axle_in": 100, "front_overhang_in": 31, "body_start_in": 59, "frame_height_in": 28, "floor_height_in": 32, "cab_height_in": 82, "width_in": 79.5,
     "track_front_in": 69.4, "track_rear_in": 75.6, "dual_spacing_in": 11.2, "frame_end_in": 46, "gvwr_lb": 14500, "gawr_front_lb": 5000, "gawr_rear_lb": 9600,
     "curb_front_lb": 3400, "curb_rear_lb": 2150, "curb_tol_lb": 80, "cg_height_in": 29, "fuel_gal": 55,
     "front_tires": {"size": "LT225/75R16 E", "count": 2, "load_lb": 2680, "pressure_psi": 80}, "rear_tires": {"size": "LT225/75R16 E", "count": 4, "load_lb": 2470, "pressure_psi": 80},
     "cab_seats": [{"id": "driver", "label": "Driver", "kind": "cab", "x_in": 55, "y_in": -20, "z_in": 43}],
     "load": {}, "supply": {}, "arrive": {"low": 20, "likely": 30, "high": 45}, "work": [{"station": "mount", "hours": 4}]}
  ],
  "bodies": [
    {"id": "mod", "label": "Module", "spec": "", "kind": "module", "length_in": 146, "width_in": 95, "height_in": 76, "headroom_in": 72, "aisle_in": 18,
     "shell": {"frame_spacing_in": 16, "side_doors": 1, "rear_doors": 2}, "mass": {"lb": 320, "zone": "module-mid", "z_in": 32},
     "compartments": [{"id": "s1", "label": "Street side", "side": "street", "x_in": 14, "y_in": -37, "z_in": 25, "width_in": 22, "depth_in": 20, "height_in": 66, "limit_lb": 350}],
     "work": []}
  ],
  "groups": [
    {"id": "lamps", "label": "Lamps", "chapter": "body", "choose": "any"},
    {"id": "steps", "label": "Step", "chapter": "body", "choose": "one"}
  ],
  "options": [
    {"id": "flood", "group": "lamps", "label": "Flood lamps", "spec": "", "max_qty": 2, "mass": {"lb": 8, "zone": "module-mid"}, "load": {"scene_a": 12}},
    {"id": "step", "group": "steps", "label": "Rear step", "spec": "", "mass": {"lb": 40, "zone": "module-rear"}}
  ],
  "rules": [
    {"id": "lit-step", "kind": "plant", "if": {"pick": "step"}, "then": {"pick": "flood"}, "reason": "A step is lit."}
  ],
  "equipment": [{"id": "bag", "label": "Bag", "mass_lb": 22, "length_in": 22, "width_in": 13, "height_in": 12}],
  "plant": {
    "activities": [{"id": "mounting", "label": "Mount", "station": "mount", "after": [], "days": {"low": 1, "likely": 2, "high": 3}}],
    "hours_per_day": 8, "shutdowns": [], "slots": [], "stations": [{"id": "mount", "label": "Mount", "bays": 1, "shifts": 1, "crew": 2}]
  },
  "price_book": {}
}`

func readSmall(t *testing.T) *config.Catalogue {
	t.Helper()
	c, err := config.Read([]byte(small))
	require.NoError(t, err)
	return c
}
