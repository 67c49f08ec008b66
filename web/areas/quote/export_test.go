package quote

import (
	"encoding/json"
	"testing"
)

// A file of kept quotes from anywhere is refused with a place, or is sound.
func FuzzReadExport(f *testing.F) {
	draft := `{"format":"boxwright-quote/1","number":"","rev":0,"date":"2026-11-25","title":"","seller":{},"buyer":{},"unit":{"catalogue":"demo","edition":"","chassis":"a","body":"b","picks":[],"rule_set":"","order_on":"2026-11-25"},"terms":{}}`
	f.Add([]byte(`{"format":"boxwright-kept/1","quotes":[{"id":"a","name":"n","line":"l","saved":"2026","draft":` +
		draft + `,"pins":["q=A"],"steps":[{"draft":` + draft + `,"said":"","when":""}],"at":0}]}`))
	f.Add([]byte(`{"format":"boxwright-kept/1","quotes":[{"id":"a","draft":null}]}`))
	f.Add([]byte(`{"format":"boxwright-kept/1","quotes":[{"id":"a","draft":` + draft +
		`,"steps":[{}],"at":9}],"catalogue":"{}"}`))
	f.Fuzz(func(t *testing.T, file []byte) {
		e, err := ReadExport(file)
		if err != nil {
			if err.Error() == "" {
				t.Fatal("an error without words")
			}
			return
		}
		data, err := json.Marshal(e)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := ReadExport(data); err != nil {
			t.Fatalf("what was read does not read again: %v", err)
		}
	})
}
