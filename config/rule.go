package config

// Rule says what must hold of every unit: If (absent means always) implies
// Then. Reason is the sentence a customer reads when the rule stands in the
// way.
type Rule struct {
	ID     string `json:"id"`
	Kind   string `json:"kind"` // one of RuleKinds
	If     *Cond  `json:"if,omitempty"`
	Then   Cond   `json:"then"`
	Reason string `json:"reason"`
}

// The kinds of rule, by who or what stands behind them.
const (
	KindPhysics    = "physics"
	KindStandard   = "standard"
	KindPlant      = "plant"
	KindSupplier   = "supplier"
	KindCommercial = "commercial"
)

// RuleKinds lists them.
var RuleKinds = []string{KindPhysics, KindStandard, KindPlant, KindSupplier, KindCommercial}

// Cond is a tree over picks and over the attributes of chassis and module.
// Exactly one field is set.
type Cond struct {
	Pick    string `json:"pick,omitempty"`     // an option, chassis or body id is in the unit
	All     []Cond `json:"all,omitempty"`      // every one holds
	Any     []Cond `json:"any,omitempty"`      // at least one holds
	Not     *Cond  `json:"not,omitempty"`      // it does not hold
	AtLeast *Count `json:"at_least,omitempty"` // n or more of them hold
	AtMost  *Count `json:"at_most,omitempty"`  // n or fewer of them hold
	Chassis *Test  `json:"chassis,omitempty"`  // an attribute of the chassis
	Body    *Test  `json:"body,omitempty"`     // an attribute of the module
}

// Count is a number and the conditions it counts.
type Count struct {
	N  int    `json:"n"`
	Of []Cond `json:"of"`
}

// Test compares an attribute. Attributes of a chassis: type, cab, drive, fuel
// (texts), wheelbase_in, cab_to_axle_in, gvwr_lb, gawr_front_lb, gawr_rear_lb.
// Of a body: kind, existing ("yes" or "no") (texts), length_in, width_in,
// headroom_in.
type Test struct {
	Attr   string  `json:"attr"`
	Op     string  `json:"op"` // "=" or "!=" with Text; "<", "<=", ">", ">=" with Number
	Text   string  `json:"text,omitempty"`
	Number float64 `json:"number,omitempty"`
}

// Attr reads a named attribute of the chassis: its text or its number.
func (c *Chassis) Attr(name string) (text string, number float64, known bool) {
	switch name {
	case "type":
		return c.Type, 0, true
	case "cab":
		return c.Cab, 0, true
	case "drive":
		return c.Drive, 0, true
	case "fuel":
		return c.Fuel, 0, true
	case "wheelbase_in":
		return "", float64(c.WheelbaseIn), true
	case "cab_to_axle_in":
		return "", float64(c.CabToAxleIn), true
	case "gvwr_lb":
		return "", float64(c.GVWRLb), true
	case "gawr_front_lb":
		return "", float64(c.GAWRFrontLb), true
	case "gawr_rear_lb":
		return "", float64(c.GAWRRearLb), true
	}
	return "", 0, false
}

// Attr reads a named attribute of the body: its text or its number.
func (b *Body) Attr(name string) (text string, number float64, known bool) {
	switch name {
	case "kind":
		return b.Kind, 0, true
	case "existing":
		return map[bool]string{false: "no", true: "yes"}[b.Existing], 0, true
	case "length_in":
		return "", float64(b.LengthIn), true
	case "width_in":
		return "", float64(b.WidthIn), true
	case "headroom_in":
		return "", float64(b.HeadroomIn), true
	}
	return "", 0, false
}

// Holds applies the test to an attribute's text and number.
func (t *Test) Holds(text string, number float64) bool {
	switch t.Op {
	case "=":
		return text == t.Text
	case "!=":
		return text != t.Text
	case "<":
		return number < t.Number
	case "<=":
		return number <= t.Number
	case ">":
		return number > t.Number
	case ">=":
		return number >= t.Number
	}
	return false
}
