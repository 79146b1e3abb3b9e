"""An item in its cut: the sheet it grips, the opening its case goes through and its bezel covers."""

from collections.abc import Iterator
from typing import Final

from panelcad.checks.finding import Bound, is_short, of_items, short_of
from panelcad.checks.parts import Fitting, Kind
from panelcad.checks.registry import EachPart, rule
from panelcad.checks.setting import Setting
from panelcad.geometry.contour import Contour
from panelcad.geometry.gap import TIE, Gap, edge_gap
from panelcad.geometry.placement import Placement
from panelcad.model.cutout import Body, BodyKind, Cutout, Mounting, Opening
from panelcad.model.finding import Cure, Finding, Severity
from panelcad.model.layout import PlacedItem

_THROUGH: Final = "what is fitted from the front goes through its opening"
_COVERS: Final = "a bezel covers its opening"


@rule(
    "grip",
    title="Sheet that a bushing or clamp grips",
    measures="thickness of the sheet against the range that the item takes",
    looks_at=EachPart((Kind.ITEM,)),
    severities=(Severity.ERROR,),
    source="the item's own range of sheet thicknesses",
)
def grip(item: PlacedItem, setting: Setting) -> Iterator[Finding]:
    taken = item.cutout.grip
    if taken is None:
        return
    thickness = setting.thickness
    for required, is_thick in ((taken.least, False), (taken.most, True)):
        if is_short(required, thickness) if is_thick else is_short(thickness, required):
            yield Finding(
                rule="grip",
                severity=Severity.ERROR,
                problem="Sheet is too thick for the item" if is_thick else "Sheet is too thin for the item",
                measured=thickness,
                required=required,
                more_is_worse=is_thick,
                source=str(taken.source),
                **of_items(setting, item),
            )


@rule(
    "case-through",
    title="Case through its opening",
    measures="room between the case of an item fitted from the front and the opening it goes through",
    looks_at=EachPart((Kind.FITTING,)),
    severities=(Severity.ERROR,),
    source=_THROUGH,
)
def case_through(fitting: Fitting, setting: Setting) -> Iterator[Finding]:
    openings = [feature.contour for feature in fitting.cut.openings]
    for item in fitting.items:
        if item.mounting is not Mounting.FRONT or not openings:
            continue
        for body in item.bodies:
            if body.kind is BodyKind.CASE and body.near < setting.thickness:
                left = max((edge_gap(body.footprint, each) for each in openings), key=_distance)
                if is_short(left.distance, 0.0):
                    yield _tight("case-through", "Case does not go through its opening", item, left, setting)


def case_beyond_opening(cutout: Cutout) -> float:
    """By how much, in mm, the case of what is fitted from the front reaches beyond the opening of its own cutout.

    0 where it goes through, and where nothing goes through from the front.
    """
    openings = [_placed(opening) for opening in cutout.openings]
    if cutout.mounting is not Mounting.FRONT or not openings:
        return 0.0
    cases = [body for body in cutout.bodies if body.kind is BodyKind.CASE and body.near <= 0.0 < body.far]
    left = (max(edge_gap(_placed(case), each).distance for each in openings) for case in cases)
    return max((-distance for distance in left if is_short(distance, 0.0)), default=0.0)


def _placed(part: Opening | Body) -> Contour:
    turned = part.rotation if isinstance(part, Opening) else 0.0
    return Placement(part.x, part.y, turned).contour(part.shape.contour())


@rule(
    "opening-shows",
    title="Opening beside its bezel",
    measures="how far the largest opening of a cut reaches beyond the bezel that should cover it",
    looks_at=EachPart((Kind.FITTING,)),
    severities=(Severity.WARNING,),
    limits=("opening_shows",),
    source=_COVERS,
)
def opening_shows(fitting: Fitting, setting: Setting) -> Iterator[Finding]:
    if len(fitting.items) != 1:
        return
    item = fitting.items[0]
    if item.bezel is None or not item.shows_bezel or item.mounting is Mounting.TRAY:
        return  # a rack unit's faceplate is narrower than the distance between its rails
    opening = max(fitting.cut.openings, key=lambda each: each.contour.area, default=None)
    if opening is None:
        return
    left = edge_gap(opening.contour, item.bezel)
    if is_short(left.distance, -setting.profile.opening_shows):
        yield _tight("opening-shows", "Opening shows beside its bezel", item, left, setting)


@rule(
    "no-cut",
    title="Item without a cut",
    measures="whether an item whose case goes through the sheet has a cut to go through",
    looks_at=EachPart((Kind.ITEM,)),
    severities=(Severity.ERROR,),
    source=_THROUGH,
)
def no_cut(item: PlacedItem, setting: Setting) -> Iterator[Finding]:
    needs_one = item.mounting is not Mounting.REAR and any(body.near < setting.thickness for body in item.behind)
    if item.item.cut is None and needs_one:
        yield Finding(
            rule="no-cut",
            severity=Severity.ERROR,
            problem="Item has no cut to go through",
            source=_THROUGH,
            cure=Cure(item=item.item.id, advice="give it a cut, or say which one it uses"),
            **of_items(setting, item),
        )


def _distance(gap: Gap) -> float:
    return gap.distance


_RULES: Final = {"case-through": (Severity.ERROR, _THROUGH), "opening-shows": (Severity.WARNING, _COVERS)}


def _tight(rule_id: str, problem: str, item: PlacedItem, left: Gap, setting: Setting) -> Finding:
    severity, why = _RULES[rule_id]
    fields = of_items(setting, item) | short_of(left.distance, Bound(0.0, severity, why))
    fields |= {"where": (left.a, left.b)}
    if item.item.cut is not None:
        fields |= {"items": tuple(sorted((item.item.id, item.item.cut)))}
    return Finding(
        rule=rule_id, problem=problem, acceptable=left.distance > -TIE or rule_id != "case-through", **fields
    )
