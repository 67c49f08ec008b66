package app

import (
	"boxwright/web/areas"
	"boxwright/web/areas/catalogue"
	"boxwright/web/areas/compare"
	"boxwright/web/areas/delivery"
	"boxwright/web/areas/equipment"
	"boxwright/web/areas/needs"
	"boxwright/web/areas/power"
	"boxwright/web/areas/price"
	"boxwright/web/areas/quote"
	"boxwright/web/areas/seller"
	"boxwright/web/areas/space"
	"boxwright/web/areas/standards"
	"boxwright/web/areas/start"
	"boxwright/web/areas/unit"
	"boxwright/web/areas/weight"
	"boxwright/web/page"
)

// tabs are the areas in the order of the job. A new area is a package and a line
// here.
var tabs = []*areas.Area{
	&start.Area,
	&needs.Area,
	&equipment.Area,
	&standards.Area,
	&unit.Area,
	&weight.Area,
	&power.Area,
	&space.Area,
	&delivery.Area,
	&price.Area,
	&compare.Area,
	&quote.Area,
	&catalogue.Area,
	&seller.Area,
}

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

// glossary is every word that some area explains.
var glossary = allWords()

func allWords() (out []*page.Term) {
	for _, a := range tabs {
		out = append(out, a.Words...)
	}
	return out
}
