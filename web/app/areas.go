package app

import (
	"boxwright/web/areas"
	"boxwright/web/areas/catalogue"
	"boxwright/web/areas/compare"
	"boxwright/web/areas/delivery"
	"boxwright/web/areas/needs"
	"boxwright/web/areas/power"
	"boxwright/web/areas/price"
	"boxwright/web/areas/quote"
	"boxwright/web/areas/space"
	"boxwright/web/areas/unit"
	"boxwright/web/areas/weight"
	"boxwright/web/page"
)

// tabs are the areas in the order of the job. A new area is a package and a line
// here.
var tabs = []*areas.Area{
	&needs.Area,
	&unit.Area,
	&weight.Area,
	&power.Area,
	&space.Area,
	&delivery.Area,
	&price.Area,
	&compare.Area,
	&quote.Area,
}

// keeping is the catalogue's own part, which takes the place of Needs.
var keeping = &catalogue.Area

// Areas are the ids of the areas in the order of their tabs.
func Areas() []string {
	var ids []string
	for _, a := range tabs {
		ids = append(ids, a.ID)
	}
	return ids
}

// areaOf finds an area by its id; the first one when there is none of that name.
func areaOf(id string) *areas.Area {
	for _, a := range tabs {
		if a.ID == id {
			return a
		}
	}
	return tabs[0]
}

// all goes through the areas, the catalogue's own part last.
func all(yield func(*areas.Area) bool) {
	for _, a := range tabs {
		if !yield(a) {
			return
		}
	}
	yield(keeping)
}

// glossary is every word that some area explains.
var glossary = allWords()

func allWords() (out []*page.Term) {
	for a := range all {
		out = append(out, a.Words...)
	}
	return out
}
