# make run    the window on the demonstration record; without a display, its templates in out/demo
# make test   every test
# make bench  our times against libraries of other makes, in turn (testdata/reference); memory; the benchmarks
# make start  how long the window takes to open, against a bare one
# make fuzz   half a minute of hostile input for every decoder
# make kills  500 processes killed while they save, 500 while they export
# make lint   gofmt, go vet, staticcheck
# make pictures     the drawings in the README
# make screenshots  the pictures of the window in the README
# make licences   the terms of everything the program is built with, gathered anew
# make longuse    an hour of restless use of the real window: no growth, nothing left behind
# make package    the program for Linux, as an archive and a Debian package, in out
# make race       the race detector on everything that runs at the same time
# make tools  install what a bare Debian or Ubuntu lacks (the targets above do it by themselves)

DEMO := assets/demo-1872-bodice.json
OUT  := out/demo

# For the window: a C compiler and the headers of X and OpenGL.
WINDOW := gcc libc6-dev pkg-config libgl-dev libx11-dev libxcursor-dev libxrandr-dev libxinerama-dev libxi-dev libxxf86vm-dev
# For the tests: programs that read what we write, and were not written by us.
JUDGES := poppler-utils mupdf-tools ghostscript qpdf librsvg2-bin python3-ezdxf admesh

.PHONY: run test bench references start fuzz kills lint tools pictures screenshots licences package race longuse
.DEFAULT_GOAL := run

run:
ifeq ($(DISPLAY)$(WAYLAND_DISPLAY),)
	@CGO_ENABLED=0 go build -o understructure ./cmd/understructure
	@./understructure templates $(DEMO) --to $(OUT)
	@echo "There is no display for the window. The demonstration's templates are in $(CURDIR)/$(OUT)"
else
	@sh .ci/install $(WINDOW)
	CGO_ENABLED=1 go build -o understructure ./cmd/understructure
	./understructure $(DEMO)
endif

test: tools
	go test ./...

bench: references
	CGO_ENABLED=0 go run ./cmd/bench out/reference
	BATCH=1000 CGO_ENABLED=0 go test -count 1 -v -timeout 1h -run BatchMemory ./app/batch
	go test -run '^$$' -bench . -benchmem ./geometry/... ./patterns/... ./app/...

start:
	@sh .ci/install $(WINDOW) xvfb xdotool
	CGO_ENABLED=1 go build -o understructure ./cmd/understructure
	CGO_ENABLED=1 go build -o out/bare ./app/ui/bare
	.ci/start ./understructure out/bare

# A reference that cannot be built is left out of the table, which says so.
references:
	@sh .ci/install gcc g++ libc6-dev pkg-config libgeos-dev libcgal-dev libeigen3-dev libcairo2-dev
	@mkdir -p out/reference
	@$(MAKE) --no-print-directory -k out/reference/geos out/reference/cairo out/reference/cgal || true

out/reference/geos: testdata/reference/geos.cpp
	g++ -O2 -Wall -o $@ $< -lgeos_c

out/reference/cairo: testdata/reference/cairo.c
	gcc -O2 -Wall -o $@ $< $$(pkg-config --cflags --libs cairo)

out/reference/cgal: testdata/reference/cgal.cpp
	nice g++ -O2 -DCGAL_EIGEN3_ENABLED -I/usr/include/eigen3 -o $@ $< -lgmp -lmpfr

# go test fuzzes one target at a time. What earlier runs found of interest is where they begin, and is kept.
FUZZTIME ?= 30s
CORPUS := testdata/fuzz/corpus.tar.xz

fuzz:
	@mkdir -p "$$(go env GOCACHE)/fuzz" && tar -xJf $(CORPUS) -C "$$(go env GOCACHE)/fuzz"
	@grep -rhoE --include='*_test.go' '^func Fuzz[A-Za-z0-9_]+' . | sed 's/func //' | sort -u | while read -r target; do \
		for folder in $$(grep -rlE --include='*_test.go' "^func $$target\(" . | xargs -n1 dirname | sort -u); do \
			echo "$$folder $$target"; go test -run '^$$' -fuzz "^$$target$$" -fuzztime $(FUZZTIME) "$$folder" || exit 1; \
		done; done
	@tar --sort=name --owner=0 --group=0 --numeric-owner --mtime=@0 -cJf $(CORPUS) -C "$$(go env GOCACHE)/fuzz" understructure

# The usual tests do the same a few times.
kills:
	KILLS=500 go test -count 1 -run Killed ./app/keep ./app/folder

lint: tools
	@test -z "$$(gofmt -l .)" || { echo "not gofmt'd:"; gofmt -l .; exit 1; }
	go vet ./...
	go run honnef.co/go/tools/cmd/staticcheck@v0.8.2 ./...

pictures:
	CGO_ENABLED=0 go run ./cmd/pictures assets/pictures

tools:
	@sh .ci/install $(WINDOW) $(JUDGES)

screenshots:
	@sh .ci/install $(WINDOW) xvfb xauth xdotool imagemagick
	CGO_ENABLED=1 go build -o understructure ./cmd/understructure
	.ci/screenshots ./understructure assets/pictures

licences:
	go run ./cmd/licences assets/licences.txt

package:
	@sh .ci/install $(WINDOW)
	.ci/package out

longuse:
	@sh .ci/install $(WINDOW) xvfb xdotool
	CGO_ENABLED=1 go build -o understructure ./cmd/understructure
	.ci/longuse ./understructure 60

# What runs at the same time: saving, safety copies, many records, exports, laying pages, all processors at one mount, and the window's own
# work beside its main thread. With RACE=all every test of the window as well, in some minutes.
race:
	@sh .ci/install $(WINDOW)
	CGO_ENABLED=1 go test -race ./app/document ./app/batch ./app/folder ./app/keep ./app/store ./app/ui/control ./geometry/parallel ./geometry/padding
ifeq ($(RACE),all)
	CGO_ENABLED=1 go test -race -timeout 60m ./app/ui ./app/pipeline
else
	CGO_ENABLED=1 go test -race -run 'Sheet|Page|Export|Picture|Stop|Late' ./app/ui
endif
