package price

import "boxwright/web/page"

// words of the area, in the order they are met.
var words = []*page.Term{
	page.PriceBook,
	{
		Name: "Cooperative contract",
		Text: "Prices that a purchasing group has bid out once for its members. Whether a county may " +
			"buy from it without a bid of its own, its rules say.",
		Source: page.Practice,
		About:  "terms.contract",
	},
	{
		Name: "Performance bond",
		Text: "A surety's promise to pay the buyer if the seller does not deliver. Its premium is a " +
			"line of the price.",
		Source: page.Practice,
		About:  "terms.bond",
	},
	{
		Name:   "Milestone",
		Text:   "A part of the price that falls due at an event, such as the chassis arriving.",
		Source: "The catalogue's price book, or your own",
	},
	{
		Name: "Lease-purchase",
		Text: "The buyer pays the unit off in level payments and then owns it. The rate is the " +
			"lessor's to state; nothing here is an offer of credit.",
		Source: "Annuity formula, checked against numpy-financial",
		About:  "lease.rate",
	},
	{
		Name: "Equal annual cost",
		Text: "Every cost over the years of service, brought to today's money and spread evenly, so " +
			"that ways that last unequally long can be compared.",
		Source: "Equivalent annual cost, checked against a published example",
		About:  "rates.discount",
	},
}
