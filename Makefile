.PHONY: run site test bench fmt packages

# Packages whose code runs in the browser, and so is tested there too.
CORE = ./config/... ./pricing/... ./web/view/... ./web/app/...
STATIC = GOOS=js GOARCH=wasm
IN_NODE = -exec="$$(go env GOROOT)/lib/wasm/go_js_wasm_exec"

run: packages
	go run ./web/pack -serve

site: packages
	go run ./web/pack

packages: web/node_modules/.package-lock.json

web/node_modules/.package-lock.json: web/package.json web/package-lock.json
	cd web && npm ci --silent --no-audit --no-fund

fmt:
	gofmt -w config pricing schema wasm web

test: packages
	@.ci/browser
	@test -z "$$(gofmt -l config pricing schema wasm web)" || { echo "not formatted (make fmt mends it):"; gofmt -l config pricing schema wasm web; exit 1; }
	go vet ./...
	$(STATIC) go vet $(CORE) ./wasm
	go test ./...
	$(STATIC) go test $(IN_NODE) $(CORE)
