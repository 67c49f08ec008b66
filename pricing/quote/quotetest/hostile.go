package quotetest

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"

	"boxwright/web/assets/catalogue"
)

// Hostile is a catalogue file that somebody made to hang or kill the page: the
// demonstration with a few things made very many, very large, very deep, empty or
// senseless, most of which the format allows. It has at most so many bytes, about;
// a full one has as many as it can.
func Hostile(r *rand.Rand, most int, full bool) []byte {
	var c object
	if err := json.Unmarshal(catalogue.Demo, &c); err != nil {
		panic(err)
	}
	h := &hostile{r: r, c: c, most: most / 2, full: full}
	for range 1 + r.IntN(3) {
		h.harm(harms[r.IntN(len(harms))])
	}
	file, err := json.Marshal(c)
	if err != nil {
		panic(err)
	}
	if r.IntN(12) == 0 {
		file = h.garble(file)
	}
	return file
}

type (
	object = map[string]any
	list   = []any
)

type hostile struct {
	r    *rand.Rand
	c    object
	most int // bytes that one harm may add
	full bool
}

// harm does one of the harms, unless an earlier one left too little of the catalogue.
func (h *hostile) harm(do func(h *hostile)) {
	defer func() { _ = recover() }()
	do(h)
}

// many is a number up to what fits in, each taking so many bytes; mostly far less.
func (h *hostile) many(bytes int) int {
	top := max(h.most/bytes, 1)
	if h.full {
		return top
	}
	for h.r.IntN(3) > 0 {
		top = max(top/4, 1)
	}
	return 1 + h.r.IntN(top)
}

func (h *hostile) list(name string) list { return h.c[name].(list) }

func (h *hostile) one(name string) object {
	l := h.list(name)
	return l[h.r.IntN(len(l))].(object)
}

func (h *hostile) ids(name string) (out []string) {
	for _, x := range h.list(name) {
		out = append(out, x.(object)["id"].(string))
	}
	return out
}

// pick of some id.
func pick(id string) object { return object{"pick": id} }

// picks are conditions on so many options, over again where there are fewer.
func (h *hostile) picks(n int) list {
	ids := h.ids("options")
	h.r.Shuffle(len(ids), func(i, j int) { ids[i], ids[j] = ids[j], ids[i] })
	out := make(list, n)
	for i := range out {
		out[i] = pick(ids[i%len(ids)])
	}
	return out
}

func (h *hostile) rule(then object) {
	rules := h.list("rules")
	h.c["rules"] = append(rules, object{"id": fmt.Sprintf("harm-%d", len(rules)), "kind": "plant", "then": then,
		"reason": "Because."})
}

// number is one that nobody means.
func (h *hostile) number() any {
	return []any{0, -1, 1, 1e-300, 1e300, -1e300, 99999, 1e4, 0.1, 1e9, 1000, 400}[h.r.IntN(12)]
}

// text is one that no page has room for.
func (h *hostile) text() string {
	n := h.many(64)
	return []string{
		strings.Repeat("W", 1+n), strings.Repeat("word ", 1+n), "", "\u202e000.996,672 DSU", "a\x00b\x07",
		"Z" + strings.Repeat("\u0301", 1+n), "=HYPERLINK(\"x\")", "<img src=x onerror=alert(1)>",
		strings.Repeat("שלום ", 1+n), "\u2067\u2066",
	}[h.r.IntN(10)]
}

// copies has a list grow by copies of its things under new ids.
func (h *hostile) copies(name string) {
	l := h.list(name)
	first := l[h.r.IntN(len(l))].(object)
	one, err := json.Marshal(first)
	if err != nil {
		panic(err)
	}
	prices, priced := h.c["price_book"].(object)["prices"].(object)
	group := ""
	for range h.many(len(one)) {
		var x object
		if err := json.Unmarshal(one, &x); err != nil {
			panic(err)
		}
		id := fmt.Sprintf("%s-%d", name, len(l))
		x["id"] = id
		if was, _ := first["id"].(string); priced && prices[was] != nil {
			prices[id] = prices[was]
		}
		if name == "groups" { // each with an option
			if group == "" {
				group = first["id"].(string)
			}
			h.member(id, group)
		}
		l = append(l, x)
	}
	h.c[name] = l
}

// member puts an option into a group, as one of another group is.
func (h *hostile) member(group, like string) {
	for _, o := range h.list("options") {
		if o := o.(object); o["group"] == like {
			id := "of-" + group
			h.c["options"] = append(h.list("options"), object{"id": id, "group": group, "label": "One", "spec": ""})
			if prices, ok := h.c["price_book"].(object)["prices"].(object); ok {
				prices[id] = "1.00"
			}
			return
		}
	}
}

// spoil puts something senseless somewhere into a value.
func (h *hostile) spoil(x any) any {
	switch v := x.(type) {
	case object:
		keys := make([]string, 0, len(v))
		for k := range v {
			keys = append(keys, k)
		}
		if len(keys) == 0 {
			return v
		}
		// The order of a map is not the same twice; the one that least draws by is.
		key := least(keys, h.r)
		if h.r.IntN(12) == 0 {
			delete(v, key)
		} else {
			v[key] = h.spoil(v[key])
		}
		return v
	case list:
		if len(v) == 0 || h.r.IntN(12) == 0 {
			return list{}
		}
		i := h.r.IntN(len(v))
		v[i] = h.spoil(v[i])
		return v
	case float64:
		return h.number()
	case string:
		return h.text()
	}
	return x
}

// least draws a key in an order of its own.
func least(keys []string, r *rand.Rand) string {
	salt := r.Int64()
	rank := func(k string) (n uint64) {
		n = uint64(salt)
		for i := range len(k) {
			n = (n ^ uint64(k[i])) * 1099511628211
		}
		return n
	}
	best := keys[0]
	for _, k := range keys[1:] {
		if rank(k) < rank(best) || rank(k) == rank(best) && k < best {
			best = k
		}
	}
	return best
}

// plant is the plant's data.
func (h *hostile) plant() object { return h.c["plant"].(object) }

// harms are what is done to a catalogue.
var harms = []func(h *hostile){
	func(h *hostile) { h.copies("options") },
	func(h *hostile) { h.copies("chassis") },
	func(h *hostile) { h.copies("bodies") },
	func(h *hostile) { h.copies("groups") },
	func(h *hostile) { h.copies("equipment") },
	func(h *hostile) { h.copies("rules") },
	func(h *hostile) { h.copies("duties") },
	func(h *hostile) { h.copies("asked") },
	func(h *hostile) { // every body with every chassis, many of both
		h.most /= 2
		h.copies("chassis")
		h.copies("bodies")
	},
	func(h *hostile) { // the same ids again
		name := []string{"chassis", "bodies", "groups", "options", "rules", "equipment", "duties"}[h.r.IntN(7)]
		l := h.list(name)
		for range 1 + h.r.IntN(3) {
			l = append(l, l[h.r.IntN(len(l))])
		}
		h.c[name] = l
	},
	func(h *hostile) { // ids longer than any page has room for
		x := h.one([]string{"chassis", "bodies", "options"}[h.r.IntN(3)])
		x["id"] = strings.Repeat("a-", h.many(2))
	},
	func(h *hostile) { // steps that wait for each other
		l := h.plant()["activities"].(list)
		l[h.r.IntN(len(l))].(object)["after"] = list{l[h.r.IntN(len(l))].(object)["id"]}
	},
	func(h *hostile) { // as long as may be
		for _, a := range h.plant()["activities"].(list) {
			a.(object)["days"] = object{"low": 0, "likely": 2000, "high": 2000}
		}
		for _, c := range h.list("chassis") {
			c.(object)["arrive"] = object{"low": 0, "likely": 0, "high": 2000}
		}
	},
	func(h *hostile) { // work at one station without end
		for _, o := range h.list("options") {
			o := o.(object)
			o["work"] = list{object{"station": h.plant()["stations"].(list)[0].(object)["id"], "hours": 9999}}
			o["standard"] = true
		}
	},
	func(h *hostile) { // one thing in a great many places
		o := h.one("options")
		for o["places"] == nil {
			o = h.one("options")
		}
		l := o["places"].(list)
		o["places"] = slices.Repeat(l, max(h.many(150)/len(l), 1))
	},
	func(h *hostile) { // a row of pieces without end
		for _, o := range h.list("options") {
			places, _ := o.(object)["places"].(list)
			for _, p := range places {
				p.(object)["pitch_in"] = []any{1e-9, 0.01, 0.1, -1, 1}[h.r.IntN(5)]
				p.(object)["length_in"] = 399
			}
		}
	},
	func(h *hostile) { // rooms without end
		b := h.one("bodies")
		l := list{}
		for i := range h.many(160) {
			l = append(l, object{"id": fmt.Sprintf("r%d", i), "label": "Room", "side": "inside", "along": "middle",
				"x_in": i % 300, "y_in": 1, "z_in": 1, "width_in": 1, "depth_in": 1, "height_in": 1, "limit_lb": 10})
		}
		b["compartments"] = l
	},
	func(h *hostile) { // more signers than any plant has
		l := h.list("signers")
		h.c["signers"] = slices.Repeat(l, 1+h.r.IntN(400))
	},
	func(h *hostile) { // every price as high as prices go
		prices := h.c["price_book"].(object)["prices"].(object)
		for id := range prices {
			prices[id] = "999999999999.99"
		}
	},
	func(h *hostile) { // each option needs the next and keeps another off
		ids := h.ids("options")
		for i := range min(len(ids)-7, h.many(150)) {
			h.rule(object{"any": list{object{"not": pick(ids[i])}, pick(ids[i+1])}})
			h.rule(object{"at_most": object{"n": 1, "of": list{pick(ids[i]), pick(ids[i+7])}}})
		}
	},
	func(h *hostile) {
		for range 1 + h.r.IntN(8) {
			h.alter(h.c)
		}
	},
	func(h *hostile) { h.alter(h.c) },
	func(h *hostile) { h.alter(h.c) },
	func(h *hostile) { h.c["options"] = h.alter(h.c["options"]) },
	func(h *hostile) { h.c["duties"] = h.alter(h.c["duties"]) },
	func(h *hostile) { h.c["asked"] = h.alter(h.c["asked"]) },
	func(h *hostile) { h.c["chassis"] = h.alter(h.c["chassis"]) },
	func(h *hostile) { h.c["bodies"] = h.alter(h.c["bodies"]) },
	func(h *hostile) { h.copies("options"); h.wide() },
	func(h *hostile) { h.wide() },
	func(h *hostile) { h.wide() },
	func(h *hostile) { // counts with next to nothing between least and most
		for range 1 + h.r.IntN(30) {
			n := 10 + h.r.IntN(90)
			of := h.picks(n)
			h.rule(object{"at_least": object{"n": n/2 - 1, "of": of}})
			h.rule(object{"at_most": object{"n": n / 2, "of": of}})
		}
	},
	func(h *hostile) { // a tree
		var tree func(deep int) object
		tree = func(deep int) object {
			if deep == 0 {
				return h.picks(1)[0].(object)
			}
			kids := list{}
			for range 2 + h.r.IntN(2) {
				kids = append(kids, tree(deep-1))
			}
			switch h.r.IntN(4) {
			case 0:
				return object{"all": kids}
			case 1:
				return object{"any": kids}
			case 2:
				return object{"not": object{"all": kids}}
			}
			return object{"at_least": object{"n": 2, "of": kids}}
		}
		h.rule(tree(2 + h.r.IntN(8)))
	},
	func(h *hostile) { // a chain
		c := pick(h.ids("options")[0])
		for range h.r.IntN(60) {
			c = object{"not": c}
		}
		h.rule(c)
	},
	func(h *hostile) { // pigeons and holes, which no search by conflicts gets through
		ids := h.ids("options")
		holes := 4 + h.r.IntN(12)
		if len(ids) < (holes+1)*holes {
			return
		}
		at := func(p, hole int) object { return pick(ids[p*holes+hole]) }
		for p := range holes + 1 {
			any := list{}
			for hole := range holes {
				any = append(any, at(p, hole))
			}
			h.rule(object{"any": any})
		}
		for hole := range holes {
			of := list{}
			for p := range holes + 1 {
				of = append(of, at(p, hole))
			}
			h.rule(object{"at_most": object{"n": 1, "of": of}})
		}
	},
	func(h *hostile) { // tests of chassis and body in a great many rules
		for range h.many(150) {
			h.rule(object{"any": list{object{"chassis": object{"attr": "gvwr_lb", "op": ">",
				"number": h.r.IntN(30000)}},
				object{"body": object{"attr": "length_in", "op": "<", "number": h.r.IntN(300)}}, h.picks(1)[0]}})
		}
	},
	func(h *hostile) { h.plant()["activities"] = list{} },
	func(h *hostile) { h.plant()["stations"] = list{} },
	func(h *hostile) { // one step after the other
		l := h.plant()["activities"].(list)
		for range h.many(200) {
			last := l[len(l)-1].(object)["id"]
			l = append(l, object{"id": fmt.Sprintf("step-%d", len(l)), "label": "Step", "after": list{last},
				"days": object{"low": 0, "likely": 1, "high": 2000}})
		}
		h.plant()["activities"] = l
	},
	func(h *hostile) { // closed for good
		h.plant()["shutdowns"] = list{object{"first": "1950-01-01", "last": "2199-12-31", "label": "Closed"}}
	},
	func(h *hostile) {
		l := list{}
		for i := range h.many(70) {
			l = append(l,
				object{"first": fmt.Sprintf("%d-01-02", 2000+i%150), "last": fmt.Sprintf("%d-12-30", 2000+i%150),
					"label": "Closed"})
		}
		h.plant()["shutdowns"] = l
	},
	func(h *hostile) {
		l := list{}
		for i := range h.many(40) {
			l = append(l, object{"start": fmt.Sprintf("%d-%02d-%02d", 2020+i%80, 1+i%12, 1+i%28), "open": h.r.IntN(3)})
		}
		h.plant()["slots"] = l
	},
	func(h *hostile) { h.plant()["hours_per_day"] = 1; h.one("chassis")["work"] = list{} },
	func(h *hostile) { // everything has seats, rooms and work
		rooms := list{}
		for i := range 1 + h.r.IntN(50) {
			rooms = append(rooms, object{"id": fmt.Sprintf("r%d", i), "label": "Room", "side": "curb", "x_in": 1,
				"y_in": 1,
				"z_in": 1, "width_in": 400, "depth_in": 400, "height_in": 400, "limit_lb": 10000})
		}
		for _, o := range h.list("options") {
			o.(object)["compartments"] = rooms
			o.(object)["standard"] = true
		}
	},
	func(h *hostile) {
		for _, o := range h.list("options") {
			o.(object)["standard"] = true
		}
	},
	func(h *hostile) {
		for _, g := range h.list("groups") {
			g.(object)["choose"] = []string{"one", "any", "at-most-one"}[h.r.IntN(3)]
		}
	},
	func(h *hostile) { h.c["price_book"] = object{} },
	func(h *hostile) { // a price of up to 400,000 digits
		prices := h.c["price_book"].(object)["prices"].(object)
		prices[h.ids("chassis")[0]] = strings.Repeat("9", h.many(1)%400_000) + ".00"
	},
	func(h *hostile) { h.c["price_book"] = h.spoil(h.c["price_book"]) },
	func(h *hostile) { h.c["plant"] = h.spoil(h.c["plant"]) },
	func(h *hostile) {
		for range 1 + h.r.IntN(40) {
			for _, name := range []string{"chassis", "bodies", "options", "equipment"} {
				x := h.one(name)
				h.spoil(x)
			}
		}
	},
	func(h *hostile) {
		for range 1 + h.r.IntN(5) {
			h.spoil(h.c)
		}
	},
	func(h *hostile) { h.c["notice"] = h.text(); h.c["title"] = h.text() },
	func(h *hostile) {
		for _, o := range h.list("options") {
			o.(object)["label"] = h.text()
		}
	},
	func(h *hostile) { // things that never ride together
		for _, e := range h.list("equipment") {
			e.(object)["stow"] = object{"apart": h.ids("equipment")}
		}
	},
	func(h *hostile) {
		h.c["guide"] = object{"title": h.text(), "offer": h.text(), "from": "nowhere", "steps": list{}}
	},
}

// wide adds rules that count among many options.
func (h *hostile) wide() {
	for range 1 + h.r.IntN(80) {
		n := 2 + h.r.IntN(min(1200, max(h.most/40, 3)))
		h.rule(object{[]string{"at_least", "at_most"}[h.r.IntN(2)]: object{"n": n * h.r.IntN(101) / 100,
			"of": h.picks(n)}})
	}
}
