"""Stacks: units one above the other in one opening, between one pair of rails."""

from collections.abc import Iterator
from typing import Final

from panelcad.checks.finding import Bound, is_short, missed, of_items
from panelcad.checks.parts import Fitting, Kind
from panelcad.checks.registry import EachPart, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.placement import Placement
from panelcad.model.cutout import Opening, RackUnit
from panelcad.model.finding import Cure, Finding, Severity
from panelcad.model.layout import PlacedItem
from panelcad.model.profile import limit_source

_RAILS: Final = "units of 6.25 in width stand between rails 6.30 in apart, as published in builders' articles"


@rule(
    "stack-height",
    title="Height of a stack",
    measures="sum of the units' heights, an allowance for each joint and the clearance, against the opening",
    looks_at=EachPart((Kind.FITTING,)),
    severities=(Severity.ERROR,),
    limits=("stack_joint", "stack_clearance"),
)
def stack_height(fitting: Fitting, setting: Setting) -> Iterator[Finding]:
    stack = _stack(fitting)
    opening = opening_size(fitting)
    if not stack or opening is None:
        return
    needed = height_needed([rack for _, rack in stack], setting)
    if not is_short(opening[1], needed):
        return
    yield Finding(
        rule="stack-height",
        problem="Stack is too tall for its opening" if len(stack) > 1 else "Unit is too tall for its opening",
        severity=Severity.ERROR,
        measured=needed,
        required=opening[1],
        more_is_worse=True,
        source=str(limit_source("stack_joint")),
        cure=Cure(item=fitting.cut.cut.id, advice="make the opening {value} high", value=needed),
        **_of_stack(fitting, setting),
    )


@rule(
    "rail-width",
    title="Rails of a stack",
    measures="width of the opening against the width of the units and the distance of their rails",
    looks_at=EachPart((Kind.FITTING,)),
    severities=(Severity.ERROR, Severity.WARNING),
    source=_RAILS,
)
def rail_width(fitting: Fitting, setting: Setting) -> Iterator[Finding]:
    stack = _stack(fitting)
    opening = opening_size(fitting)
    if not stack or opening is None:
        return
    bounds = (
        Bound(max(rack.width for _, rack in stack), Severity.ERROR, _RAILS),
        Bound(max(rack.rail_distance for _, rack in stack), Severity.WARNING, _RAILS),
    )
    bound = missed(opening[0], *bounds)
    if bound is not None:
        yield Finding(
            rule="rail-width",
            problem="Opening is too narrow for its units",
            severity=bound.severity,
            measured=opening[0],
            required=bound.required,
            source=str(max(stack, key=lambda row: row[1].rail_distance)[1].source),
            cure=Cure(item=fitting.cut.cut.id, advice="make the opening {value} wide", value=bound.required),
            **_of_stack(fitting, setting),
        )


def height_needed(stack: list[RackUnit], setting: Setting) -> float:
    """The height in mm that an opening needs for these units, one above the other."""
    joints = (len(stack) - 1) * setting.profile.stack_joint
    return sum(unit.height for unit in stack) + joints + setting.profile.stack_clearance


def opening_size(fitting: Fitting) -> tuple[float, float] | None:
    """Width and height of a cut's largest opening as its units see it, in mm."""
    cut = fitting.cut
    openings: tuple[Opening, ...] = cut.cutout.openings if cut.cutout else cut.cut.openings
    if not openings:
        return None
    largest = max(openings, key=lambda opening: opening.shape.contour().area)
    turned = fitting.items[0].placement.rotation - cut.placement.rotation if fitting.items else 0.0
    x1, y1, x2, y2 = Placement(rotation=largest.rotation - turned).contour(largest.shape.contour()).bounds
    return x2 - x1, y2 - y1


def _stack(fitting: Fitting) -> list[tuple[PlacedItem, RackUnit]]:
    return [(item, item.cutout.rack) for item in fitting.items if item.cutout.rack is not None]


def _of_stack(fitting: Fitting, setting: Setting) -> dict[str, object]:
    fields = of_items(setting, *(item for item, _ in _stack(fitting)))
    return fields | {"items": tuple(sorted((*fields["items"], fitting.cut.cut.id)))}
