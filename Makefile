# Every target first installs what it needs and finds missing; `make` alone lists the targets.
# Versions are pinned where each tool reads them: Cargo.toml, Trunk.toml, tests/browser/package-lock.json.

SHELL := bash
.SHELLFLAGS := -euo pipefail -c
.DEFAULT_GOAL := help
.DELETE_ON_ERROR:
.PHONY: help serve build test validate opening schema licences soak fuzz bench instructions bench-page screenshot icons clean rust system engines tools

pinned = $(shell sed -n 's/^$(1) *= *"=\{0,1\}\([^"]*\)"/\1/p' $(2))
RUST_VERSION := $(call pinned,rust-version,Cargo.toml)
TRUNK_VERSION := $(call pinned,trunk-version,Trunk.toml)
WASM_BINDGEN_VERSION := $(call pinned,wasm_bindgen,Trunk.toml)
NODE_MAJOR_LEAST := 20

BROWSER_TESTS := tests/browser
NODE_MODULES := $(BROWSER_TESTS)/node_modules
STAMPS := .tools/stamps
TRUNK_STAMP := $(STAMPS)/trunk-$(TRUNK_VERSION)
WASM_BINDGEN_STAMP := $(STAMPS)/wasm-bindgen-cli-$(WASM_BINDGEN_VERSION)
# npm writes this file last, so it is newer than the lock file exactly when the installation is complete.
NPM_STAMP := $(NODE_MODULES)/.package-lock.json
CARGO_FUZZ_VERSION := 0.13.2
FUZZ := tests/fuzz
FUZZ_STAMP := $(STAMPS)/cargo-fuzz-$(CARGO_FUZZ_VERSION)
FUZZ_TARGETS := link packed file weather log
ONE_RUN := $(or $(CARGO_TARGET_DIR),target)/release/one_run
BENCH_CPU := $(if $(filter x86_64,$(shell uname -m)),x86-64-v3,native)
LIGHTHOUSE := $(BROWSER_TESTS)/lighthouse
LIGHTHOUSE_STAMP := $(LIGHTHOUSE)/node_modules/.package-lock.json

SCREENSHOT ?= public/screenshot.png

export PATH := $(CURDIR)/.tools/bin:$(CURDIR)/$(NODE_MODULES)/.bin:$(HOME)/.cargo/bin:$(PATH)
export CHROMIUM ?= $(or $(shell command -v chromium),/usr/bin/chromium)

# Places on the building machine are nobody's business: panics name files from the workspace or the registry down.
# Registers of two numbers, which browsers have had since 2021 to 2023, run the engine a quarter faster. To replace the addresses in a
# loop by running sums, as LLVM does, costs another eighth: WebAssembly adds a constant to an address for nothing.
export CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS := --cfg=erase_components \
	-Ctarget-feature=+simd128 -Cllvm-args=-disable-lsr \
	--remap-path-prefix=$(CURDIR)= --remap-path-prefix=$(HOME)/.cargo/registry/src=registry

# The pinned compiler often is there under another name, such as stable: use it rather than fetch it again.
ifeq ($(origin RUSTUP_TOOLCHAIN),undefined)
TOOLCHAIN_FOUND := $(shell for name in $$(rustup toolchain list --quiet 2>/dev/null); do \
	if rustup run $$name rustc --version 2>/dev/null | grep -q '^rustc $(RUST_VERSION) '; then echo $$name; break; fi; done)
export RUSTUP_TOOLCHAIN := $(or $(TOOLCHAIN_FOUND),$(RUST_VERSION))
endif

# Trunk reads NO_COLOR as true or false and stops at the customary 1.
TRUNK := env -u NO_COLOR trunk
# Link-time optimisation would double the wait for the tools and gain them nothing.
CARGO_INSTALL := CARGO_PROFILE_RELEASE_LTO=off CARGO_PROFILE_RELEASE_CODEGEN_UNITS=16 \
	cargo install --root .tools --locked --no-default-features
AS_ROOT := $(if $(filter-out 0,$(shell id -u)),sudo)

help: ## List the targets
	@awk -F ':.*## ' '/^[a-z-]+:.*## / { printf "make %-11s %s\n", $$1, $$2 }' Makefile

serve: tools ## Serve the page on this machine, rebuild at each change, open the browser if there is one
	@port=8080; while (exec 3<>/dev/tcp/127.0.0.1/$$port) 2>/dev/null; do port=$$((port + 1)); done; \
	open=false; \
	if [ -n "$${DISPLAY:-}$${WAYLAND_DISPLAY:-}" ] && command -v xdg-open >/dev/null || [ "$$(uname)" = Darwin ]; then open=true; fi; \
	echo "Noonday will be at http://127.0.0.1:$$port/"; \
	exec $(TRUNK) serve --port $$port --open $$open --dist .tools/serve

build: tools ## Build dist/: static files that work from any folder of any web server
	rm -rf dist
	$(TRUNK) build --release
	@node $(BROWSER_TESTS)/sizes.mjs dist

test: tools engines ## Check format and lints, run all tests, build, and try the page in a real browser
	cargo fmt --all --check
	cargo clippy --locked --workspace --all-targets -- -D warnings
	cargo clippy --locked --package noonday --target wasm32-unknown-unknown -- -D warnings
	cargo test --locked --workspace
	node tests/licences.mjs
	$(MAKE) --no-print-directory instructions
	$(MAKE) --no-print-directory build
	node --test --test-reporter=spec $(BROWSER_TESTS)/*.test.mjs

validate: rust ## Run the engine against its references; write and print the scoreboard
	cargo run --locked --quiet --package noonday-tests --bin scoreboard

opening: rust ## Work out anew what the page shows until it has calculated
	WRITE_OPENING=1 cargo test --locked --quiet --package noonday the_opening

schema: rust ## Write anew the schema of files of scenarios
	WRITE_SCHEMA=1 cargo test --locked --quiet --package noonday the_schema

licences: rust ## List the libraries in the page anew, with their licences
	node tests/licences.mjs --write

soak: rust ## Run 100,000 random scenarios to their end (another number: SOAK=)
	SOAK=$(or $(SOAK),100000) cargo test --locked --profile bench --package noonday-tests --test soak -- --nocapture

fuzz: rust $(FUZZ_STAMP) ## Give each reader of strangers' texts inputs that go where none has gone yet (RUNS= of each)
	@for reader in $(FUZZ_TARGETS); do \
		mkdir -p target/fuzz/$$reader; cp -n $(FUZZ)/seeds/$$reader/* target/fuzz/$$reader/; \
		echo "== $$reader"; \
		cargo fuzz run --fuzz-dir $(FUZZ) --sanitizer none $$reader target/fuzz/$$reader -- -runs=$(or $(RUNS),2000000) \
			-max_len=8192 -timeout=5 -rss_limit_mb=1024 -print_final_stats=1; \
	done

bench: instructions ## Measure the engine's speed, with registers of four numbers, as processors have them
	RUSTFLAGS="-C target-cpu=$(BENCH_CPU)" cargo bench --locked --workspace --exclude noonday --target-dir target/$(BENCH_CPU)

instructions: system rust ## Count the instructions of a run and hold them against those kept (KEEP=--write keeps them)
	cargo build --locked --profile bench --package noonday-tests --bin one_run
	node tests/instructions.mjs $(ONE_RUN) $(KEEP)

bench-page: build instructions $(LIGHTHOUSE_STAMP) ## Measure the page: first chart, drag, engine, Lighthouse, sizes
	node $(BROWSER_TESTS)/bench-engine.mjs $(ONE_RUN)
	node $(BROWSER_TESTS)/bench.mjs

screenshot: build ## Take the picture of the page for the README
	node $(BROWSER_TESTS)/screenshot.mjs $(SCREENSHOT)

icons: system $(NPM_STAMP) ## Draw the icons of the installed page anew from public/icon.svg
	node $(BROWSER_TESTS)/icons.mjs

clean: ## Remove everything built; installed tools stay
	cargo clean
	rm -rf dist .tools/serve $(BROWSER_TESTS)/output

tools: system rust $(TRUNK_STAMP) $(WASM_BINDGEN_STAMP) $(NPM_STAMP)
	@cargo fetch --locked --quiet

rust: system
	@command -v rustup >/dev/null || { echo "rustup is missing. Install it, Rust's own toolchain manager, then run make again." >&2; exit 1; }
	@rustup run $$RUSTUP_TOOLCHAIN rustc --version >/dev/null 2>&1 || rustup toolchain install $(RUST_VERSION) --profile minimal
	@toolchain=$$RUSTUP_TOOLCHAIN; \
	installed=$$(rustup target list --installed --toolchain $$toolchain; rustup component list --installed --toolchain $$toolchain); \
	grep -q '^wasm32-unknown-unknown$$' <<<"$$installed" || rustup target add wasm32-unknown-unknown --toolchain $$toolchain; \
	for component in rustfmt clippy; do grep -q "^$$component" <<<"$$installed" || rustup component add $$component --toolchain $$toolchain; done

system:
	@missing=(); \
	command -v cc >/dev/null || missing+=(gcc libc6-dev); \
	command -v node >/dev/null || missing+=(nodejs npm); \
	command -v "$$CHROMIUM" >/dev/null || missing+=(chromium); \
	command -v valgrind >/dev/null || missing+=(valgrind); \
	command -v pdftotext >/dev/null || missing+=(poppler-utils); \
	if [ $${#missing[@]} -gt 0 ]; then \
		command -v apt-get >/dev/null || { echo "Please install: $${missing[*]} (a Chromium elsewhere: set CHROMIUM to its path)" >&2; exit 1; }; \
		$(AS_ROOT) apt-get update </dev/null; \
		$(AS_ROOT) env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends "$${missing[@]}" </dev/null; \
	fi
	@node -e 'process.exit(process.versions.node.split(".")[0] < $(NODE_MAJOR_LEAST) ? 1 : 0)' || \
		{ echo "Node.js $(NODE_MAJOR_LEAST) or later is needed; this is $$(node --version)." >&2; exit 1; }

# Browsers of other makes, where the system has them to give: the tests skip what is missing.
engines: system
	@missing=(); \
	command -v firefox-esr >/dev/null || command -v firefox >/dev/null || missing+=(firefox-esr); \
	command -v WebKitWebDriver >/dev/null || missing+=(webkit2gtk-driver); \
	command -v Xvfb >/dev/null || missing+=(xvfb); \
	if [ $${#missing[@]} -gt 0 ] && command -v apt-get >/dev/null; then \
		{ $(AS_ROOT) apt-get update && \
		$(AS_ROOT) env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends "$${missing[@]}"; } </dev/null || \
			echo "Not installed: $${missing[*]}. The tests skip the browsers that need them."; \
	fi

$(TRUNK_STAMP): | rust
	$(CARGO_INSTALL) trunk --version $(TRUNK_VERSION)
	@mkdir -p $(@D) && touch $@

$(WASM_BINDGEN_STAMP): | rust
	$(CARGO_INSTALL) wasm-bindgen-cli --version $(WASM_BINDGEN_VERSION)
	@mkdir -p $(@D) && touch $@

$(FUZZ_STAMP): | rust
	$(CARGO_INSTALL) cargo-fuzz --version $(CARGO_FUZZ_VERSION)
	@mkdir -p $(@D) && touch $@

$(NPM_STAMP) $(LIGHTHOUSE_STAMP): %/node_modules/.package-lock.json: %/package-lock.json | system
	cd $* && npm ci --no-audit --no-fund --ignore-scripts
	@touch $@
