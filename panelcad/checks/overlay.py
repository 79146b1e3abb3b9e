"""Overlays: each cut that is used in the sheet below lies in a cut of the overlay that covers it."""

from collections.abc import Iterator

from panelcad.checks.finding import is_short
from panelcad.checks.registry import TheWhole, rule
from panelcad.checks.report import Unknown
from panelcad.geometry.contour import Contour
from panelcad.geometry.gap import Gap, edge_gap, gap
from panelcad.geometry.placement import Placement
from panelcad.geometry.point import Point
from panelcad.geometry.space import PlateFrame, Spot
from panelcad.model.finding import Finding, Severity
from panelcad.model.layout import Feature, Layout, PlateLayout
from panelcad.model.plate import CutState, Plate

_WHY = "an overlay's cut holds or matches the cut below it; common practice"


@rule(
    "overlay-cut",
    title="Overlay against the sheet below",
    measures="how far a cut in use below reaches under the overlay's metal; an unused old cut may be covered",
    looks_at=TheWhole(guards_moves=True),
    severities=(Severity.ERROR,),
    source=_WHY,
)
def overlay_cut(laid: Layout) -> Iterator[Finding | Unknown]:
    for upper in laid.plates:
        if upper.plate.over is None:
            continue
        lower = laid.plate(upper.plate.over)
        shift = _shift(lower.plate, upper.plate)
        if shift is None:
            yield Unknown("overlay-cut", (upper.plate.id,), "how an overlay that is not parallel lies on its sheet")
        else:
            yield from _covered(lower, upper, shift)


@rule(
    "overlay-alone",
    title="Overlay cut without a cut below",
    measures="whether the sheet below is cut where the overlay is",
    looks_at=TheWhole(guards_moves=True),
    severities=(Severity.ERROR,),
    source=_WHY,
)
def overlay_alone(laid: Layout) -> Iterator[Finding]:
    for upper in laid.plates:
        shift = _shift(laid.plate(upper.plate.over).plate, upper.plate) if upper.plate.over else None
        if upper.plate.over is None or shift is None:
            continue
        below = [shift.contour(feature.contour) for feature in laid.plate(upper.plate.over).features]
        for cut in upper.cuts:
            for feature in cut.features:
                if not any(gap(feature.contour, each).distance < 0.0 for each in below):
                    yield _finding("overlay-alone", "Overlay is cut where the sheet below is not", (feature,), upper)


def _covered(lower: PlateLayout, upper: PlateLayout, shift: Placement) -> Iterator[Finding]:
    """Cuts in use below, in the overlay's axes, that no cut of the overlay holds."""
    windows = [feature.contour for feature in upper.features]
    for feature in _in_use(lower):
        seen = shift.contour(feature.contour)
        if gap(seen, upper.outline).distance >= 0.0:
            continue
        left = max((_left(seen, window) for window in windows), key=_distance, default=_not_cut(seen))
        if is_short(left.distance, 0.0):
            numbers = {"measured": left.distance, "required": 0.0, "where": (left.a, left.b)}
            yield _finding("overlay-cut", "Overlay covers a cut below", (feature,), upper, **numbers)


def _in_use(lower: PlateLayout) -> Iterator[Feature]:
    used = {item.item.cut for item in lower.items}
    for cut in lower.cuts:
        if cut.cut.state is not CutState.EXISTING or cut.cut.id in used:
            yield from cut.features


def _left(seen: Contour, window: Contour) -> Gap:
    """Room around a cut in a window; where they are apart, all of it is covered."""
    return edge_gap(seen, window) if gap(seen, window).distance < 0.0 else _not_cut(seen)


def _not_cut(seen: Contour) -> Gap:
    x1, y1, x2, y2 = seen.bounds
    middle = Point((x1 + x2) / 2, (y1 + y2) / 2)
    return Gap(-min(x2 - x1, y2 - y1), middle, middle)


def _distance(left: Gap) -> float:
    return left.distance


def _finding(
    rule_id: str, problem: str, features: tuple[Feature, ...], upper: PlateLayout, **numbers: object
) -> Finding:
    (feature,) = features
    fields = {"where": (feature.centre,)} | numbers
    return Finding(
        rule=rule_id,
        severity=Severity.ERROR,
        problem=problem,
        items=tuple(sorted({feature.owner, upper.plate.id})),
        features=(feature.id,),
        plate=upper.plate.id,
        source=_WHY,
        **fields,
    )


def _shift(lower: Plate, upper: Plate) -> Placement | None:
    """From the lower plate's axes to the overlay's, which lies parallel on it; None where it does not."""
    if (lower.frame.tilt, lower.frame.cant) != (upper.frame.tilt, upper.frame.cant):
        return None
    a, b = lower.frame, upper.frame
    origin = PlateFrame(Spot(b.x, b.y, b.z), b.tilt, b.cant).to_plate(Spot(a.x, a.y, a.z))
    return Placement(origin.x, origin.y)
