# Firstdrop. Needs Go (see go.mod) and make; everything else is fetched or
# installed by the targets that need it.
#
#   make demo    build, and plan the sample room
#   make test    all tests, with what they need installed
#   make bench   the figures, as a table and build/bench.json
#   make lint    formatting, vet, staticcheck
#   make fuzz    every fuzz target for FUZZTIME
#   make all     lint, test with the race detector, fuzz

export CGO_ENABLED ?= 0
FUZZTIME ?= 20s
RELEASE := $(shell git describe --always --dirty 2>/dev/null)
SAMPLE := examples/door-and-windows.yaml

.PHONY: build demo test bench lint fuzz all race oracles clean

build:
	go build -trimpath -ldflags="-s -w -X main.release=$(RELEASE)" -o bin/firstdrop ./cmd/firstdrop

demo: build
	bin/firstdrop plan $(SAMPLE) --folder build/demo --replace

# The solvers that the cutting is held against: glpsol and cbc.
oracles:
	@command -v glpsol >/dev/null && command -v cbc >/dev/null || \
		{ echo 'installing glpsol and cbc'; $(SUDO) apt-get update -qq && $(SUDO) apt-get install -y -qq --no-install-recommends glpk-utils coinor-cbc >/dev/null; }
SUDO := $(shell [ "$$(id -u)" = 0 ] || echo sudo)

test: oracles lint
	FIRSTDROP_ORACLE=required go test ./...

bench: build oracles
	go run ./cmd/bench -out build/bench.json

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
