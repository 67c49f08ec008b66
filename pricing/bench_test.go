package pricing_test

import (
	"encoding/json"
	"fmt"
	"testing"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/money"
)

// bigUnit is a unit of 120 picks from 300 options, with every kind of term.
func bigUnit(b *testing.B) (*pricing.Book, *config.Catalogue, *config.Unit, *pricing.Terms) {
	cat := catalogue(b)
	var raw map[string]any
	if err := json.Unmarshal([]byte(bookText), &raw); err != nil {
		b.Fatal(err)
	}
	prices := raw["prices"].(map[string]any)
	u := scenePicks()
	for i := range 300 {
		id := fmt.Sprintf("opt-%03d", i)
		cat.Options = append(cat.Options, config.Option{ID: id, Group: "all", Label: "Option " + id, MaxQty: 3})
		prices[id] = fmt.Sprintf("%d.%02d", 100+17*i, i%100)
		if i%5 < 2 {
			u.Set(config.Pick{Option: id, Qty: 1 + i%3})
		}
	}
	cat.PriceBook, _ = json.Marshal(raw)
	if ps := cat.Prepare(); len(ps) > 0 {
		b.Fatal(ps)
	}
	bk, err := pricing.ReadBook(cat.PriceBook, cat)
	if err != nil {
		b.Fatal(err)
	}
	terms := &pricing.Terms{
		Contract: "coop", DiscountPercent: percent(b, "1.5"), Prepay: "on-arrival", FreightMiles: quantity(b, "412.5"),
		TrainingDays: quantity(b, "3"), TradeIn: amount(b, "12000"), Bond: true, DepositPercent: percent(b, "5"),
		Budget: money.Dollars(900000),
	}
	return bk, cat, u, terms
}

func BenchmarkPriceUnit(b *testing.B) {
	bk, cat, u, terms := bigUnit(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := pricing.Build(bk, cat, u, terms, day); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBudgetLimit(b *testing.B) {
	bk, cat, u, terms := bigUnit(b)
	b.ReportAllocs()
	for b.Loop() {
		if len(pricing.Limits(bk, cat, u, terms)) != 1 {
			b.Fatal("no limit")
		}
	}
}

// A fleet of 200 units of 20 kinds.
func BenchmarkPriceFleet200(b *testing.B) {
	bk, cat, u, terms := bigUnit(b)
	items := make([]pricing.Item, 20)
	for i := range items {
		x := u.Clone()
		x.Set(config.Pick{Option: fmt.Sprintf("opt-%03d", 2+5*i), Qty: 1})
		items[i] = pricing.Item{Unit: &x, Units: 10}
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := pricing.BuildFleet(bk, cat, items, terms, day); err != nil {
			b.Fatal(err)
		}
	}
}

// A fleet of 200 units, each unlike every other.
func BenchmarkPriceFleet200Unlike(b *testing.B) {
	bk, cat, u, terms := bigUnit(b)
	items := make([]pricing.Item, 200)
	for i := range items {
		x := u.Clone()
		x.Set(config.Pick{Option: fmt.Sprintf("opt-%03d", i), Qty: 1 + i%2})
		items[i] = pricing.Item{Unit: &x}
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := pricing.BuildFleet(bk, cat, items, terms, day); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReadBook(b *testing.B) {
	_, cat, _, _ := bigUnit(b)
	b.SetBytes(int64(len(cat.PriceBook)))
	for b.Loop() {
		if _, err := pricing.ReadBook(cat.PriceBook, cat); err != nil {
			b.Fatal(err)
		}
	}
}
