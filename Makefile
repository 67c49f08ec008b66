.PHONY: run site check test soak bench pictures fmt packages tools checked native wasm scripts page browser engines

# A failure before a pipe is a failure.
SHELL = /bin/bash
.SHELLFLAGS = -euo pipefail -c

GO_FOLDERS = config pricing schema wasm web
IN_WASM = GOOS=js GOARCH=wasm CGO_ENABLED=0

# Tests that need no browser and no built page. Those that take longest begin
# first, so that none of them is left over at the end for one processor.
LONGEST = ./web/app ./schema ./pricing/propose ./config/rules ./pricing/tables ./config/solve
NATIVE = $(LONGEST) $$(go list ./... | grep -v -e '/web/e2e$$' -e /web/e2e/engines -e /web/pack/site)

# Tests that run again in wasm, since they could end otherwise there: what counts
# in floating point, what encrypts (in assembly on this machine), and what reads
# anything from strangers, on a smaller stack. The rest is the same instructions
# on the same whole numbers and texts, and the test that holds a recorded
# conversation byte for byte beside the shipped core goes through all of it.
FLOATING = ./config/leadtime ./config/power ./config/quantity ./config/solve ./config/space ./config/weight \
	./pricing/bid ./pricing/finance ./pricing/seal ./pricing/sign
READERS = ./config ./config/csv ./config/expr ./pricing ./pricing/bid ./pricing/link ./pricing/quote ./pricing/tables \
	./web/app
NODE = -exec="env -i PATH=$$PATH RAPID_SEED=$$RAPID_SEED $$(go env GOROOT)/lib/wasm/go_js_wasm_exec"
TESTED = grep -v '\[no test'

# Random tests draw the same each time; make soak draws afresh.
export RAPID_SEED = 1
MINUTES = 10

# What tests of the built page need.
NEEDED = packages tools

run: packages
	go run ./web/pack -serve

site: packages
	go run ./web/pack

# Formatted, sound and right natively, in little time: for while one works.
check: checked native scripts

# One command, quiet when all is well but for what go test says. Three parts at a
# time: browsers wait often enough to leave room for another. What they need is
# there by then, so they begin at once.
test: packages tools
	@$(MAKE) --no-print-directory -j3 --output-sync=target NEEDED= browser engines check wasm page

fmt:
	gofmt -w $(GO_FOLDERS)

# Formatted, and sound by go vet. One package is for the browser alone; the others
# are the same source there.
checked:
	@bad=$$(gofmt -l $(GO_FOLDERS)); if [ -n "$$bad" ]; then echo "not formatted (make fmt does it):" $$bad; exit 1; fi
	@go vet ./...
	@$(IN_WASM) go vet ./wasm

# Everything that needs neither browser nor page, on this machine. What is
# generated is held against what is committed by the tests of schema. (The whole
# of vet runs in checked.)
native:
	@go test -vet=off $(NATIVE) | $(TESTED)

# Under Node, which takes only a small environment.
wasm:
	@$(IN_WASM) go test -vet=off -short $(NODE) $(FLOATING) | $(TESTED)
	@$(IN_WASM) go test -vet=off -run='^Fuzz' $(NODE) $(READERS) | $(TESTED)

# The page's scripts: their types, and their tests under Node.
scripts: $(filter packages,$(NEEDED))
	@cd web && npm run -s types && npm test -s

# The built page, without a browser.
page: $(filter packages,$(NEEDED))
	@go test -vet=off ./web/pack/site

# The built page in Chromium's headless shell: one browser, four tabs at a time, since
# each waits for pictures and answers between its presses.
browser: $(NEEDED)
	@go test -vet=off -timeout 40m -parallel 4 ./web/e2e

# The first walk, and three windows on one quote, in Firefox and in WebKitGTK. BOXWRIGHT_DIST names a folder with a
# page that is built already.
engines: $(NEEDED)
	@go test -vet=off -timeout 20m ./web/e2e/engines

# Random tests on fresh seeds and fuzz targets for MINUTES in all.
soak:
	@go run ./web/e2e/soak -minutes $(MINUTES)

# The pictures of the README.
pictures: packages tools
	@go run ./web/e2e/pictures

bench: packages tools
	@go run ./web/e2e/measure

packages: web/node_modules/.package-lock.json

web/node_modules/.package-lock.json: web/package.json web/package-lock.json
	@cd web && npm ci --silent --no-audit --no-fund

# Browsers and pdftotext come from Debian, where this may install; elsewhere the
# message says what to install.
PROGRAMS = chromium chromium-headless-shell pdftotext firefox-esr WebKitWebDriver Xvfb
DEBIAN = chromium chromium-headless-shell poppler-utils firefox-esr webkit2gtk-driver xvfb

tools:
	@if [ "$$(command -v $(PROGRAMS) | wc -l)" -lt $(words $(PROGRAMS)) ]; then \
		if [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null; then \
			echo "installing $(DEBIAN)"; \
			export DEBIAN_FRONTEND=noninteractive; \
			{ apt-get update && apt-get install -y --no-install-recommends $(DEBIAN); } >/dev/null; \
		else \
			echo "The browser tests need more programs. On Debian: apt-get install $(DEBIAN)"; exit 1; \
		fi; \
	fi
