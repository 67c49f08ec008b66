module boxwright

go 1.26.8

require (
	github.com/chromedp/cdproto v0.160.2
	github.com/chromedp/chromedp v0.23.1
	github.com/coder/websocket v1.8.15
	github.com/crillab/gophersat v1.4.0
	github.com/evanw/esbuild v0.28.2
	github.com/go-air/gini v1.0.4
	github.com/hack-pad/safejs v0.1.0
	github.com/invopop/jsonschema v0.14.0
	github.com/rickar/cal/v2 v2.1.13
	github.com/santhosh-tekuri/jsonschema/v6 v6.0.3
	github.com/shopspring/decimal v1.6.0
	github.com/stretchr/testify v1.12.1
	golang.org/x/crypto v0.59.0
	gonum.org/v1/gonum v0.17.0
	pgregory.net/rapid v1.3.0
	rsc.io/qr v0.2.0
)

require (
	github.com/bahlo/generic-list-go v0.2.0 // indirect
	github.com/buger/jsonparser v1.1.2 // indirect
	github.com/go-json-experiment/json v0.0.0-20260213210345-44df1a37e875 // indirect
	github.com/pb33f/ordered-map/v2 v2.3.1 // indirect
	go.yaml.in/yaml/v3 v3.0.5 // indirect
	go.yaml.in/yaml/v4 v4.0.0-rc.2 // indirect
	golang.org/x/sys v0.50.0 // indirect
	golang.org/x/text v0.44.0 // indirect
)
