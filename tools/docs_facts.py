"""Write the page of facts and the schema of the home file: ``python tools/docs_facts.py``."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

from ampwright.survey.accept import expected_of
from ampwright.survey.home import Home
from ampwright.survey.register import (
    Collection,
    Fact,
    Part,
    Standard,
    Thing,
    collections_of,
    facts_of,
    parts_of,
)
from ampwright.survey.schema import home_schema
from ampwright.survey.wording import as_words

REFERENCE = Path(__file__).resolve().parents[1] / "docs" / "reference"
PAGE = REFERENCE / "facts.md"
SCHEMA = REFERENCE / "home.schema.json"
DEEP = 4
FINDERS = {"phone": "by telephone", "photo": "on a photograph", "site": "on site"}
COMMON = tuple(each.name for each in facts_of(Thing))
HEAD = """# Facts

Written by `tools/docs_facts.py` from the register; do not edit.

Everything that may be known about a home. The key of a fact is its path in the home file; `…`
stands for the id of a thing, made of letters, figures and hyphens. A thing that is described is
there unless `present` says no, and `same_as` joins two names for one thing. A collection is whole
only when `all_listed` says yes. A fact that nobody gave has no default: where shares are given,
each answer is possible and weighs so much; where something *stands in*, that is used, counts as
assumed and prints so. How common an answer is comes from memory unless it says otherwise. Some
facts are only kept so far: nothing is worked out from them yet.

## How an answer is written

```toml
[said]                     # for every answer that does not say otherwise
evidence = "told"          # assumed, told, seen or measured
by = "Nell Hartwood"
on = 2026-11-23

[supply]
phases = 1
main_fuse_a = { is = 80, seen = "photo 1", by = "Ro Quince" }
ze_ohm = [                 # several people said something: all of it is kept
  { between = [0.1, 0.3], told = "old certificate" },
  { is = 0.18, measured = "loop tester 2", on = 2026-11-24 },
]
looped = { cannot_say = "the cupboard is locked" }
tails_mm2 = { one_of = [16, 25], seen = "photo 2, no coin beside it" }
```

*Seen* needs the picture or paper and the name of who read it; *measured* needs the instrument. An
answer may also say `job`, `phone`, `moment` (found, planned or left), `id`, and by their ids the
records it `withdraws` as never true or that were true until something changed, `since`.
"""


def render() -> str:
    """Return the whole page as text."""
    return "\n".join([HEAD, *_part(Home, "")])


def schema() -> str:
    """Return the schema as text."""
    return "\n".join(_json(home_schema(), "", DEEP)) + "\n"


def _json(value: object, start: str, deep: int) -> Iterator[str]:
    """Yield the lines of a value: opened out so many levels deep, then one line for each."""
    if not deep or not isinstance(value, dict) or not value:
        yield start + json.dumps(value, ensure_ascii=False)
        return
    yield start + "{"
    indent = " " * (DEEP - deep + 1)
    last = list(value)[-1]
    for name, each in value.items():
        *lines, end = _json(each, f"{indent}{json.dumps(name, ensure_ascii=False)}: ", deep - 1)
        yield from lines
        yield end + ("" if name == last else ",")
    yield indent[1:] + "}"


def _part(part: type[Part], prefix: str) -> Iterator[str]:
    for name, inner in parts_of(part):
        yield _section(inner, f"{prefix}{name}")
        yield from _part(inner, f"{prefix}{name}.")
    for collection in collections_of(part):
        path = f"{prefix}{collection.name}"
        yield _section(collection.item, f"{path}.…", collection)
        yield from _part(collection.item, f"{path}.….")


def _section(part: type[Part], path: str, collection: Collection | None = None) -> str:
    said = (part.__doc__ or "").strip().partition("\n")[0]
    lines = [f"## `{path}`", "", said, ""]
    if collection:
        whole = collection.all_listed
        lines += _fact(f"{path.removesuffix('…')}all_listed", whole)
        lines += _standard_things(collection)
    for each in facts_of(part):
        if each.name not in COMMON:
            lines += _fact(f"{path}.{each.name}", each)
    return "\n".join(lines)


def _standard_things(collection: Collection) -> Iterator[str]:
    if not collection.standard:
        return
    only = ", and no others" if collection.closed else ""
    yield f"Asked after in every home{only}:"
    yield ""
    for thing_id, each in collection.standard.items():
        yield f"- `{thing_id}` {each.trade}, in {_share(each.values[True])} of homes: *{each.ask}*"
        yield f"  {each.look}{_of_any(each)}"
    yield ""


def _of_any(each: Standard) -> str:
    implied = [f"{name} is {as_words(value)}" for name, value in each.implies.items()]
    usual = [f"{name}: {_shares(shares)}" for name, shares in each.priors.items()]
    return "".join(f" {words[0].upper()}{words[1:]}." for words in (*implied, *usual))


def _fact(key: str, fact: Fact) -> Iterator[str]:
    yield f"**`{key}`** {fact.trade}: {expected_of(fact)}  "
    yield f"*{fact.ask}*  "
    yield f"{fact.look} {' '.join(_more(fact))}".rstrip()
    yield ""


def _more(fact: Fact) -> Iterator[str]:
    yield f"Found out {FINDERS[fact.who]}."
    if fact.values:
        yield f"How common: {_shares(fact.values)} ({fact.prior.trust.value})."
    if fact.stand_in:
        yield f"Stands in: {as_words(fact.stand_in.value)} ({fact.stand_in.source})."
    if fact.agree:
        share = f" or {_share(fact.agree.share)}" if fact.agree.share else ""
        yield f"Readings within {fact.agree.within:g}{share} agree; the {fact.agree.worse} stands."
    if fact.needs:
        needs = (f"{level.word} to {gate}" for gate, level in fact.needs.items())
        yield f"Must be {', '.join(needs)}."
    if fact.ages_after:
        yield f"Asked again after {fact.ages_after} days."


def _shares(values: object) -> str:
    assert isinstance(values, dict)
    return ", ".join(f"{as_words(value)} {_share(share)}" for value, share in values.items())


def _share(share: float) -> str:
    return f"{share * 100:g} %"


def main() -> None:
    """Write both files."""
    PAGE.parent.mkdir(parents=True, exist_ok=True)
    PAGE.write_text(render(), encoding="utf-8")
    SCHEMA.write_text(schema(), encoding="utf-8")


if __name__ == "__main__":
    main()
