package quote

import (
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// parties says who the quote goes to, who it is from and what heads it.
func parties(p *Page) Part {
	d := p.Q.Draft
	field := func(id, label, value, hint string) Part { return page.Field(p.Page, id, label, value, hint) }
	return El("div", Class("columns parties screen"),
		page.Block("To",
			El("div", Class("fields"), page.Group("To"),
				field("buyer.name", "Service or department", d.Buyer.Name, ""),
				page.Choose(p.Page, "terms.buyer", "Who buys", d.Terms.Buyer, "Decides the sales tax that is assumed",
					page.BuyerChoices()),
				field("buyer.person", "Person", d.Buyer.Person, ""),
				field("buyer.reach", "Telephone or mail", d.Buyer.Reach, ""),
				El("div", Class("field wide"), field("buyer.address", "Address", d.Buyer.Address, "")))),
		page.Block("From",
			El("div", Class("fields"), page.Group("From"),
				field("seller.name", "Distributor", d.Seller.Name, ""),
				field("seller.person", "Person", d.Seller.Person, ""),
				field("seller.reach", "Telephone or mail", d.Seller.Reach, ""))),
		page.Block("About",
			El("div", Class("fields"),
				field("number", "Quote number", d.Number, ""),
				page.Day(p.Page, "date", "Quote dated", d.Date, "The price book in force on this day is used"),
				El("div", Class("field wide"), page.TextField(p.Page, "notes", "Notes printed in the quote", d.Notes,
					"Never write cost or margin here: every reader of the quote sees it")))))
}
