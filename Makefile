.PHONY: run site test bench fmt packages

run: packages
	go run ./web/pack -serve

site: packages
	go run ./web/pack

packages: web/node_modules/.package-lock.json

web/node_modules/.package-lock.json: web/package.json web/package-lock.json
	cd web && npm ci --silent --no-audit --no-fund

fmt:
	gofmt -w config pricing schema wasm web
