"""Accepting a finding with a reason and initials, and when that word lapses."""

from collections.abc import Callable, Iterable, Iterator
from typing import Final

from panelcad.checks.parts_fitted import Around, body_names
from panelcad.checks.report import Accepted
from panelcad.errors import EditRefused
from panelcad.geometry.point import Point
from panelcad.model.finding import Acceptance, Finding
from panelcad.model.fingerprint import feature_fingerprint
from panelcad.model.layout import Feature, FeatureKind, Layout, PlacedItem
from panelcad.model.surroundings import DepthLimit

WORSENED: Final = 0.01
"""An acceptance lapses when the measured value gets worse by more than this, in mm or whatever it is measured in."""
Fingerprinting = Callable[[Finding], str]
"""The fingerprint of what a finding is about, by which a change of it is known."""


def accept(finding: Finding, layout: Layout, *, reason: str, initials: str, on: str) -> Acceptance:
    """The acceptance to add to the option. Raises `EditRefused` where a finding can never be right."""
    return word_on(finding, _geometry(layout), reason=reason, initials=initials, on=on)


def word_on(finding: Finding, of: Fingerprinting, *, reason: str, initials: str, on: str) -> Acceptance:
    """As `accept`, for findings of any kind."""
    if not finding.acceptable:
        raise EditRefused(f"'{finding.problem}' cannot be accepted: it can never be right")
    return Acceptance(
        finding=finding.identity,
        reason=reason,
        initials=initials,
        on=on,
        measured=finding.measured,
        geometry=of(finding),
    )


def sort_out(
    findings: Iterable[Finding], layout: Layout
) -> tuple[list[Finding], tuple[Accepted, ...], tuple[Acceptance, ...]]:
    """Findings that stay open, those that stand accepted, and acceptances whose finding changed or got worse."""
    return sort_by(findings, layout.option.acceptances, _geometry(layout))


def sort_by(
    findings: Iterable[Finding], given: Iterable[Acceptance], of: Fingerprinting
) -> tuple[list[Finding], tuple[Accepted, ...], tuple[Acceptance, ...]]:
    """As `sort_out`, for findings of any kind."""
    words = {word.finding: word for word in given}
    still_open: list[Finding] = []
    accepted: list[Accepted] = []
    lapsed: list[Acceptance] = []
    for finding in findings:
        word = words.get(finding.identity)
        if word is None:
            still_open.append(finding)
        elif _stands(word, finding, of):
            accepted.append(Accepted(finding, word))
        else:
            still_open.append(finding)
            lapsed.append(word)
    return still_open, tuple(accepted), tuple(lapsed)


def named_features(finding: Finding, layout: Layout) -> tuple[Feature, ...]:
    """The contours a finding is about: of each of its items the features it names, or all where it names none."""
    of_items = [f for f in _all_features(layout, set(finding.items)) if f.owner in finding.items]
    has_named = {feature.owner for feature in of_items if feature.id in finding.features}
    about = [f for f in of_items if f.id in finding.features or f.owner not in has_named]
    return tuple(sorted(about, key=lambda feature: feature.id))


def _geometry(layout: Layout) -> Fingerprinting:
    return lambda finding: feature_fingerprint(named_features(finding, layout))


def _stands(word: Acceptance, finding: Finding, of: Fingerprinting) -> bool:
    if not finding.acceptable or _has_worsened(word, finding):
        return False
    return not word.geometry or word.geometry == of(finding)


def _has_worsened(word: Acceptance, finding: Finding) -> bool:
    if word.measured is None or finding.measured is None:
        return (word.measured is None) != (finding.measured is None)
    worse = finding.measured - word.measured if finding.more_is_worse else word.measured - finding.measured
    return worse > WORSENED


def _all_features(layout: Layout, owners: set[str]) -> Iterator[Feature]:
    for plate in layout.plates:
        yield from plate.features
        for item in plate.items:
            if item.item.id in owners:
                yield from _item_features(item)
    for thing in layout.project.surroundings.things:
        if thing.id in owners:
            yield _surrounding_feature(thing)


def _item_features(item: PlacedItem) -> Iterator[Feature]:
    """An item's bezel and bodies as features, so that a change of their size is seen."""
    at = Point(item.placement.x, item.placement.y)
    if item.bezel is not None:
        yield Feature(item.item.id, "bezel", FeatureKind.OPENING, item.bezel, at, "bezel")
    names = body_names(tuple(body.kind for body in item.bodies))
    for name, body in zip(names, item.bodies, strict=True):
        yield Feature(item.item.id, name, FeatureKind.OPENING, body.footprint, at, name)


def _surrounding_feature(thing: Around) -> Feature:
    shape = thing.shape if isinstance(thing, DepthLimit) else thing.volume.shape
    return Feature(thing.id, thing.name, FeatureKind.OPENING, shape.contour(), Point(0.0, 0.0), thing.name)
