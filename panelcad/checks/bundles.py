"""Room in which wire bundles and hoses bend."""

from collections.abc import Iterator
from typing import Final

from panelcad.checks.finding import Bound, is_short, of_items, short_of
from panelcad.checks.parts import Kind
from panelcad.checks.parts_fitted import body_names
from panelcad.checks.registry import EachPart, rule
from panelcad.checks.report import Unknown
from panelcad.checks.setting import Setting
from panelcad.model.cutout import BodyKind
from panelcad.model.finding import Finding, Severity
from panelcad.model.layout import PlacedItem

_BENDS: Final = {
    BodyKind.HARNESS: ("bundle-bend", "bundle_bend", "Wire bundle has no room to bend"),
    BodyKind.HOSE: ("hose-bend", "hose_bend", "Hose has no room to bend"),
}


@rule(
    "bundle-bend",
    title="Room for a wire bundle to bend",
    measures="depth of a harness bend against ten outside diameters of its bundle",
    looks_at=EachPart((Kind.ITEM,)),
    severities=(Severity.WARNING,),
    limits=("bundle_bend",),
)
def bundle_bend(item: PlacedItem, setting: Setting) -> Iterator[Finding | Unknown]:
    yield from _bend(item, setting, BodyKind.HARNESS)


@rule(
    "hose-bend",
    title="Room for a pitot or static hose to bend",
    measures="depth of a hose's room against its least bend radius, in outside diameters",
    looks_at=EachPart((Kind.ITEM,)),
    severities=(Severity.WARNING,),
    limits=("hose_bend",),
)
def hose_bend(item: PlacedItem, setting: Setting) -> Iterator[Finding | Unknown]:
    yield from _bend(item, setting, BodyKind.HOSE)


def _bend(item: PlacedItem, setting: Setting, kind: BodyKind) -> Iterator[Finding | Unknown]:
    rule_id, limit, problem = _BENDS[kind]
    names = body_names(tuple(body.kind for body in item.cutout.bodies))
    for name, body in zip(names, item.cutout.bodies, strict=True):
        if body.kind is not kind:
            continue
        if body.bundle_diameter is None:
            yield Unknown(rule_id, (item.item.id,), f"the outside diameter at its {name}")
            continue
        room = body.far - body.near
        bound = Bound(getattr(setting.profile, limit) * body.bundle_diameter, Severity.WARNING, limit)
        if is_short(room, bound.required):
            fields = of_items(setting, item) | short_of(room, bound)
            yield Finding(rule=rule_id, problem=problem, features=(f"{item.item.id}/{name}",), **fields)
