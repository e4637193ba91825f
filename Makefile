# Firstdrop. Needs Go (see go.mod) and make; everything else is fetched or
# installed by the targets that need it.
#
#   make demo    build, and plan the sample room
#   make test    all tests, with what they need installed
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

.PHONY: build demo test bench pages types lint fuzz all race oracles clean

build:
	go build -trimpath -ldflags="-s -w -X main.release=$(RELEASE)" -o bin/firstdrop ./cmd/firstdrop

demo: build
	bin/firstdrop plan $(SAMPLE) --folder build/demo --replace

# What tests ask for a second opinion: the solvers that the cutting is held against
# (glpsol and cbc), readers of what is drawn and of workbooks, and another reading of the rules for
# text that runs both ways. The fonts are those that our own were made from.
ORACLES := glpsol:glpk-utils cbc:coinor-cbc qpdf:qpdf pdftotext:poppler-utils rsvg-convert:librsvg2-bin fribidi:libfribidi-bin ezdxf:python3-ezdxf
# Python modules have no command: they are looked for where Debian puts them.
MODULES := openpyxl
FONTS := /usr/share/fonts/truetype/noto/NotoSansArmenian-Regular.ttf

oracles:
	@need=""; for o in $(ORACLES); do command -v "$${o%%:*}" >/dev/null || need="$$need $${o##*:}"; done; \
	for m in $(MODULES); do [ -d /usr/lib/python3/dist-packages/$$m ] || need="$$need python3-$$m"; done; \
	[ -e $(FONTS) ] || need="$$need fonts-noto-core"; [ -z "$$need" ] || \
		{ echo "installing$$need"; $(SUDO) apt-get update -qq && $(SUDO) apt-get install -y -qq --no-install-recommends $$need >/dev/null; }
SUDO := $(shell [ "$$(id -u)" = 0 ] || echo sudo)

test: oracles lint
	FIRSTDROP_ORACLE=required go test ./...

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
	rm -rf bin build
