.DEFAULT_GOAL := help
.PHONY: help demo test check format lint types rooms quick bench docs
BIN := .venv/bin

help:    ## list these targets
	@sed -n 's/^\([a-z]*\):[^#]*## /\1\t/p' $(MAKEFILE_LIST) | expand -t 10
demo:    ## design the example home, from nothing
	@python3 dev.py demo
test:    ## everything a change must pass, from nothing
	@python3 dev.py test
check: test  ## the same as test
lint:    ## format and lint, changing nothing
	@python3 dev.py test format lint
types:   ## units and shapes
	@python3 dev.py test types
rooms:   ## who may import whom
	@python3 dev.py test rooms
format: $(BIN)  ## rewrite to the house format
	@$(BIN)/ruff format . && $(BIN)/ruff check --fix .
quick: $(BIN)   ## tests that failed last time, else all, stopping at the first failure
	@$(BIN)/pytest --quiet --last-failed --exitfirst
bench: $(BIN)   ## timings, printed
	@for file in $(wildcard benchmarks/bench_*.py); do $(BIN)/python "$$file" || exit 1; done
docs:    ## where to read
	@ls README.md CONTRIBUTING.md CHANGELOG.md docs/*.md docs/decisions/*.md
$(BIN):
	@python3 dev.py setup
