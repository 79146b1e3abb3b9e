"""The page of docs/ that lists every rule, made from the rules themselves: `python -m panelcad.checks.rule_page`."""

from collections.abc import Iterator
from pathlib import Path
from typing import Final

from panelcad.checks.profile_file import limit_text, title_of
from panelcad.checks.registry import Rule, all_rules
from panelcad.model.function import Function
from panelcad.model.profile import Profile, limit_source
from panelcad.model.view_zones import DEFAULT_ZONES, ViewZone, zone_source
from panelcad.units import LengthUnit

PAGE: Final = Path("docs") / "rules.md"

_HEAD: Final = """\
# Rules

What `panelcad check`, the window and the papers judge. This page is made from the rules themselves
(`python -m panelcad.checks.rule_page` writes it); `panelcad rules [--json]` prints the same.

A rule measures; it never approves. Check every dimension against the equipment maker's installation manual and the
aircraft. A panel may be primary structure, and nothing here judges its strength. What is not known is reported as
unknown, and unknown is never safe. A rule that broke is reported as not judged, never as passed.

An **error** means: do not cut. A **warning** is a thing that an inspector would ask about. **Advice** may stand. An
exact tie passes. A finding may be accepted with a reason and initials; the acceptance lapses when a part it names
changes or the measured value gets worse by more than 0.01 mm. What can never be right cannot be accepted.

A shop's own limits are a TOML file; a value marked *from memory* or *shop setting* is one to look at first. How to
write it, and how another package adds rules: [own-rules.md](own-rules.md). How the window shows findings, and how one
accepts them: [help/findings.md](help/findings.md).
"""


def rules_page() -> str:
    """The whole page as Markdown."""
    sections = (line for rule in all_rules() for line in _section(rule))
    return "\n".join((_HEAD, *_index(), *sections, *_zones()))


def _index() -> Iterator[str]:
    yield "| id | rule | looks at | severity |"
    yield "| --- | --- | --- | --- |"
    for rule in all_rules():
        yield f"| [{rule.id}](#{rule.id}) | {rule.title} | {rule.scope.value} | {severities_text(rule)} |"
    yield ""


def _section(rule: Rule) -> Iterator[str]:
    yield f"## {rule.id}"
    yield ""
    yield f"**{rule.title}.** Measures {rule.measures}."
    yield ""
    yield f"- Looks at {rule.scope.value}; severity: {severities_text(rule)}."
    for name in rule.limits:
        yield f"- `{name}`: {title_of(name)}: {default_text(name)}. {limit_source(name)}."
    if not rule.limits or rule.source not in {str(limit_source(name)) for name in rule.limits}:
        yield f"- Source: {rule.source}."
    yield ""


def _zones() -> Iterator[str]:
    yield from ("## Zones of the pilot's view", "")
    yield "What [view-primary](#view-primary) and [view-important](#view-important) look at; how a shop states its own:"
    yield "[own-rules.md](own-rules.md#zones-of-the-pilots-view)."
    yield from ("", "| function | zone | source |", "| --- | --- | --- |")
    for function, (zone, source) in DEFAULT_ZONES.items():
        yield f"| {function.value} | {zone.value} | {source} |"
    yield f"| every other | {ViewZone.ANYWHERE.value} | {zone_source(Function.COM)} |"
    yield ""


def severities_text(rule: Rule) -> str:
    """'error, warning'; in words for a rule that only says what is not known."""
    return ", ".join(severity.value for severity in rule.severities) or "says what is unknown"


def default_text(name: str) -> str:
    """A limit's default in both units where it is a length: '0.250 in (6.35 mm)'."""
    value = getattr(Profile(), name)
    in_mm, in_inches = (limit_text(name, value, unit) for unit in (LengthUnit.MM, LengthUnit.INCH))
    return in_mm if in_mm == in_inches else f"{in_inches} ({in_mm})"


if __name__ == "__main__":
    PAGE.write_text(rules_page(), encoding="utf-8")
