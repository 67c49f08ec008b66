package quote_test

import (
	"bytes"
	"testing"

	"boxwright/config"
	"boxwright/pricing/quote"
)

// A draft that reads writes itself down the same each time; one that does not
// says where and why.
func FuzzReadDraft(f *testing.F) {
	f.Add([]byte(`{"format":"boxwright-quote/1","number":"","rev":0,"date":"2026-11-25","title":"","seller":{},"buyer":{},"unit":{"catalogue":"demo","edition":"","chassis":"a","body":"b","picks":[],"rule_set":"","order_on":"2026-11-25"},"terms":{}}`))
	f.Add([]byte(`{"format":"boxwright-quote/1","terms":{"tax_rate":"1e999999999"}}`))
	f.Add([]byte(`{"format":"boxwright-quote/1","unit":{"payload_lb":1e308,"picks":[{"qty":-1}]},"more":[{}],"at":-5}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		d, err := quote.ReadDraft(data)
		if err != nil {
			if len(err.(config.Problems)) == 0 {
				t.Fatal("an error without a problem")
			}
			return
		}
		once, err := d.Bytes()
		if err != nil {
			t.Fatal(err)
		}
		again, err := quote.ReadDraft(once)
		if err != nil {
			t.Fatalf("what was written does not read: %v", err)
		}
		if twice, _ := again.Bytes(); !bytes.Equal(once, twice) {
			t.Fatal("not the same bytes")
		}
		d.Clone().WorkOn(0)
	})
}
