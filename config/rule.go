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

// Test compares an attribute of the chassis or the body, see Attribute. One that is
// true or false is the text "yes" or "no".
type Test struct {
	Attr   string  `json:"attr"`
	Op     string  `json:"op"` // "=" or "!=" with Text; "<", "<=", ">", ">=" with Number
	Text   string  `json:"text,omitempty"`
	Number float64 `json:"number,omitempty"`
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
