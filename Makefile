.PHONY: run site test soak bench fmt packages tools checked native wasm scripts browser engines engine-tools

# A failure before a pipe is a failure.
SHELL = /bin/bash
.SHELLFLAGS = -euo pipefail -c

# Packages that make up the core: they also build, and are tested, in wasm.
CORE = ./config/... ./pricing/... ./web/app/... ./web/areas/... ./web/drawing/... ./web/guide/... ./web/page/... \
	./web/session/... ./web/assets/...
GO_FOLDERS = config pricing schema wasm web
IN_WASM = GOOS=js GOARCH=wasm CGO_ENABLED=0

# Random tests draw the same each time; make soak draws afresh.
export RAPID_SEED = 1
MINUTES = 10

run: packages
	go run ./web/pack -serve

site: packages
	go run ./web/pack

# One command, quiet when all is well but for what go test says.
test: packages tools checked native wasm scripts browser engines

fmt:
	gofmt -w $(GO_FOLDERS)

# Formatted, and sound by go vet, natively and for the browser.
checked:
	@bad=$$(gofmt -l $(GO_FOLDERS)); if [ -n "$$bad" ]; then echo "not formatted (make fmt does it):" $$bad; exit 1; fi
	@go vet ./...
	@$(IN_WASM) go vet $(CORE) ./wasm

# Everything but the browser, on this machine. What is generated is held against
# what is committed by the tests of schema.
native:
	@go test $$(go list ./... | grep -v '/web/e2e') | grep -v '\[no test files\]'

# The core again, as wasm under Node, which takes only a small environment.
wasm:
	@$(IN_WASM) go test -exec="env -i PATH=$$PATH RAPID_SEED=$$RAPID_SEED $$(go env GOROOT)/lib/wasm/go_js_wasm_exec" $(CORE) | grep -v '\[no test files\]'

# The page's scripts: their types, and their tests under Node.
scripts: packages
	@cd web && npm run -s types && npm test -s

# A browser on a slow machine can miss a moment: what fails is tried once more,
# and a real fault fails twice.
browser: packages tools
	@packages=$$(go list ./web/e2e/... | grep -v '/engines$$'); \
	go test -timeout 40m $$packages || { echo "once more, in case the machine was slow"; go test -count=1 -timeout 40m $$packages; }

# The first walk in Firefox and in WebKitGTK. BOXWRIGHT_DIST names a folder with a
# page that is built already.
engines: packages tools engine-tools
	@go test -timeout 20m ./web/e2e/engines

# Random tests on fresh seeds and fuzz targets for MINUTES in all.
soak:
	@go run ./web/e2e/soak -minutes $(MINUTES)

bench: packages tools
	@go run ./web/e2e/measure

packages: web/node_modules/.package-lock.json

web/node_modules/.package-lock.json: web/package.json web/package-lock.json
	@cd web && npm ci --silent --no-audit --no-fund

# Chromium and pdftotext come from Debian, where this may install; elsewhere the
# message says what to install.
tools:
	@if ! command -v chromium >/dev/null || ! command -v pdftotext >/dev/null; then \
		if [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null; then \
			echo "installing chromium and poppler-utils"; \
			{ apt-get update && DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends chromium poppler-utils; } >/dev/null; \
		else \
			echo "The browser tests need Chromium and pdftotext. On Debian: apt-get install chromium poppler-utils"; exit 1; \
		fi; \
	fi

engine-tools:
	@if ! command -v firefox-esr >/dev/null || ! command -v WebKitWebDriver >/dev/null || ! command -v Xvfb >/dev/null; then \
		if [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null; then \
			echo "installing firefox-esr, webkit2gtk-driver and xvfb"; \
			{ apt-get update && DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends firefox-esr webkit2gtk-driver xvfb; } >/dev/null; \
		else \
			echo "The tests in other engines need Debian packages: apt-get install firefox-esr webkit2gtk-driver xvfb"; exit 1; \
		fi; \
	fi
