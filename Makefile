# Firstdrop. Needs Go (see go.mod), make, and Node 20 for what the browser loads;
# everything else is fetched or installed by the targets that need it.
#
#   make demo    build, and plan the sample room
#   make test    all tests, with what they need installed
#   make ui      what the browser loads: planner and screen
#   make ui-test the tests of the screen, in a real browser
#   make screens pictures of every screen, to be looked at
#   make bench   the figures, as a table and build/bench.json
#   make pages   the printed sheets of all examples, to be looked at
#   make types   the types of the screen, from those of the planner
#   make lint    formatting, vet, staticcheck
#   make fuzz    every fuzz target for FUZZTIME
#   make all     lint, test with the race detector, fuzz

export CGO_ENABLED ?= 0
FUZZTIME ?= 20s
RELEASE := $(shell git describe --always --dirty 2>/dev/null)
SAMPLE := examples/door-and-windows.yaml

.PHONY: ui ui-test screens build demo test bench pages types lint fuzz all race oracles clean

build: ui
	go build -trimpath -ldflags="-s -w -X main.release=$(RELEASE)" -o bin/firstdrop ./cmd/firstdrop

# What the browser loads is built only when something that it is made from is newer,
# and is embedded by the next go build. Without npm the program is built without it.
UI := web/ui
PROGRAMS := $(patsubst web/wasm/%/main.go,$(UI)/public/%.filtered,$(wildcard web/wasm/planner/main.go web/wasm/printer/main.go))
HOUSE := $(shell find . -name node_modules -prune -o -name build -prune -o -name '*.go' ! -name '*_test.go' -print -o -path './words/catalogue/*' -print -o -path './draw/text/fonts/*.ttf' -print)

ifeq ($(shell command -v npm),)
ui:
	@echo "npm is not installed: building without what the browser loads"
else
ui: $(UI)/dist/index.html
endif

# The planner is part of a first visit: packages in which no time is spent are compiled
# without inlining, which takes a twentieth off it; web/wasm/slim takes off three tenths. What
# it has filtered must come back to the byte as the screen unfilters it.
LEAN = $(patsubst %,-gcflags=%=-l,$(shell cat web/wasm/$*/without-inlining.txt 2>/dev/null))

$(UI)/public/%.filtered: $(HOUSE) go.mod $(wildcard web/wasm/*/*.txt) web/wasm/unfiltered.mjs $(UI)/src/planner/unfilter.ts | $(UI)/node_modules/.package-lock.json
	GOOS=js GOARCH=wasm go build -trimpath -ldflags="-s -w" $(LEAN) -o build/$*.wasm ./web/wasm/$*
	go run ./web/wasm/slim build/$*.wasm build/$*.filtered
	node web/wasm/unfiltered.mjs build/$*.filtered build/$*.wasm $(UI)
	mv build/$*.filtered $@

# What is large is compressed once, and sent so by the server.
$(UI)/public/%.filtered.br: $(UI)/public/%.filtered $(UI)/compress.mjs
	node $(UI)/compress.mjs $<

$(UI)/public/wasm_exec.js: go.mod
	cp "$$(go env GOROOT)/lib/wasm/wasm_exec.js" $@

$(UI)/node_modules/.package-lock.json: $(UI)/package-lock.json
	cd $(UI) && npm ci --no-audit --no-fund
	@touch $@

$(UI)/dist/index.html: $(UI)/node_modules/.package-lock.json $(PROGRAMS) $(PROGRAMS:=.br) $(if $(PROGRAMS),$(UI)/public/wasm_exec.js) $(UI)/index.html $(UI)/vite.config.ts $(shell find $(UI)/src $(UI)/public -type f)
	cd $(UI) && npm run -s build
	find $(UI)/dist -name '*.js' -o -name '*.css' | xargs node $(UI)/compress.mjs

ui-test: build oracles
	go test -timeout 30m ./web/wasm -rooms=200
	cd $(UI) && npm run -s check && npm run -s unit && npm run -s journeys

# Pictures of every screen and dialog, at every size, in every theme and language, in
# build/screens, to be looked at.
screens: build oracles
	cd $(UI) && FIRSTDROP_SCREENS=all npm run -s journeys -- tests/screens.test.ts

demo: build
	bin/firstdrop plan $(SAMPLE) --folder build/demo --replace

# What tests ask for a second opinion: the solvers that the cutting is held against
# (glpsol and cbc), readers of what is drawn and of workbooks, and another reading of the rules for
# text that runs both ways; a browser for the screen. The fonts are those that our own were made from.
ORACLES := glpsol:glpk-utils cbc:coinor-cbc qpdf:qpdf pdftotext:poppler-utils rsvg-convert:librsvg2-bin fribidi:libfribidi-bin ezdxf:python3-ezdxf chromium:chromium
# Python modules have no command: they are looked for where Debian puts them.
MODULES := openpyxl
FONTS := /usr/share/fonts/truetype/noto/NotoSansArmenian-Regular.ttf

oracles:
	@need=""; for o in $(ORACLES); do command -v "$${o%%:*}" >/dev/null || need="$$need $${o##*:}"; done; \
	for m in $(MODULES); do [ -d /usr/lib/python3/dist-packages/$$m ] || need="$$need python3-$$m"; done; \
	[ -e $(FONTS) ] || need="$$need fonts-noto-core"; [ -z "$$need" ] || \
		{ echo "installing$$need"; $(SUDO) apt-get update -qq && $(SUDO) apt-get install -y -qq --no-install-recommends $$need >/dev/null; }
	@command -v npm >/dev/null || { echo "npm is needed for tests, see the README"; exit 1; }
	@[ -d $(NPM)/node_modules/dxf-parser ] || { cd $(NPM) && npm ci --no-audit --no-fund --silent; }
# Readers in JavaScript.
NPM := internal/oracle/npm
SUDO := $(shell [ "$$(id -u)" = 0 ] || echo sudo)

test: oracles lint
	FIRSTDROP_ORACLE=required go test ./...
	$(MAKE) ui-test

bench: build oracles
	go run ./cmd/bench -out build/bench.json

# The sheets of every example as PDF, and all their pages in one picture each.
pages:
	go run ./cmd/bench -pages build/pages

# The types that the screen shares with the planner, written from the Go types.
types:
	go run ./web/wasm/types

lint:
	@out="$$(go tool gofumpt -l .)"; [ -z "$$out" ] || { echo "gofumpt -w: $$out"; exit 1; }
	go vet ./...
	go tool staticcheck ./...

fuzz:
	@go list ./... | while read -r pkg; do \
		for target in $$(go test -list '^Fuzz' "$$pkg" | grep ^Fuzz); do \
			echo "$$pkg $$target"; \
			go test -run '^$$' -fuzz "^$$target$$" -fuzztime $(FUZZTIME) -fuzzminimizetime 10x "$$pkg" || exit 1; \
		done; \
	done

race: oracles
	CGO_ENABLED=1 go test -race -short ./...

all: lint test race fuzz

clean:
	rm -rf bin build $(UI)/node_modules
	find $(UI)/dist -mindepth 1 ! -name .keep -delete
