"""The sheet itself: thin sheet, and plates that fit neither the machine's bed nor the stock."""

from collections.abc import Iterator

from panelcad.checks.finding import Bound, is_short, short_of
from panelcad.checks.parts import Kind
from panelcad.checks.registry import EachPart, rule
from panelcad.checks.report import Unknown
from panelcad.checks.setting import Setting
from panelcad.geometry.contour import Contour
from panelcad.geometry.point import Point
from panelcad.model.finding import Cure, Finding, Severity
from panelcad.model.plate import PlateRole, PlateState
from panelcad.model.profile import limit_source


@rule(
    "thin-sheet",
    title="Thickness of the sheet",
    measures="thickness of a sheet that carries instruments; a new panel needs more",
    looks_at=EachPart((Kind.SHEET,)),
    severities=(Severity.WARNING,),
    limits=("sheet_least", "new_sheet_least"),
)
def thin_sheet(_: Contour, setting: Setting) -> Iterator[Finding]:
    plate, profile = setting.plate, setting.profile
    if plate.role is PlateRole.OVERLAY or plate.state is PlateState.KEPT:
        return
    limit = "new_sheet_least" if plate.state is PlateState.NEW else "sheet_least"
    bound = Bound(getattr(profile, limit), Severity.WARNING, limit)
    if is_short(plate.thickness, bound.required):
        cure = Cure(item=plate.id, advice="use a sheet of {value}", value=bound.required)
        fields = _of_sheet(setting) | short_of(plate.thickness, bound)
        yield Finding(rule="thin-sheet", problem="Sheet is thin", cure=cure, **fields)


@rule(
    "machine-bed",
    title="Plate on the machine's bed",
    measures="size of a plate, laid either way, against the bed of the machine that cuts it; unknown without one",
    looks_at=EachPart((Kind.SHEET,)),
    severities=(Severity.ERROR,),
    limits=("bed_width", "bed_height"),
)
def machine_bed(outline: Contour, setting: Setting) -> Iterator[Finding | Unknown]:
    profile = setting.profile
    if setting.plate.state is PlateState.KEPT:
        return
    if profile.bed_width and profile.bed_height:
        place = (profile.bed_width, profile.bed_height)
        yield from _does_not_fit("machine-bed", "bed_width", outline, place, setting)
    else:
        yield Unknown("machine-bed", (setting.plate.id,), "the machine's bed, whose size the profile does not state")


@rule(
    "stock",
    title="Plate on its stock",
    measures="size of a new plate with its margin, laid either way, against its stock; unknown without one",
    looks_at=EachPart((Kind.SHEET,)),
    severities=(Severity.ERROR,),
    limits=("stock_width", "stock_height", "stock_margin"),
)
def stock(outline: Contour, setting: Setting) -> Iterator[Finding | Unknown]:
    profile = setting.profile
    if setting.plate.state is not PlateState.NEW:
        return
    if profile.stock_width and profile.stock_height:
        margin = 2 * profile.stock_margin
        place = (profile.stock_width - margin, profile.stock_height - margin)
        yield from _does_not_fit("stock", "stock_width", outline, place, setting)
    else:
        yield Unknown("stock", (setting.plate.id,), "its stock, whose size the profile does not state")


def _does_not_fit(
    rule_id: str, limit: str, outline: Contour, place: tuple[float, float], setting: Setting
) -> Iterator[Finding]:
    """A finding about the side that is too long, laid the better way round."""
    over, size, room = min(_laid(outline, place), _laid(outline, (place[1], place[0])))
    if is_short(0.0, over):
        yield Finding(
            rule=rule_id,
            severity=Severity.ERROR,
            problem="Plate does not fit the machine's bed"
            if rule_id == "machine-bed"
            else "Plate does not fit its stock",
            measured=size,
            required=room,
            more_is_worse=True,
            source=str(limit_source(limit)),
            **_of_sheet(setting),
        )


def _laid(outline: Contour, place: tuple[float, float]) -> tuple[float, float, float]:
    """How far the worse side sticks out, that side, and the room it has."""
    x1, y1, x2, y2 = outline.bounds
    sides = ((x2 - x1, place[0]), (y2 - y1, place[1]))
    return max((size - room, size, room) for size, room in sides)


def _of_sheet(setting: Setting) -> dict[str, object]:
    x1, y1, x2, y2 = setting.outline.bounds
    plate = setting.plate.id
    return {"items": (plate,), "plate": plate, "where": (Point((x1 + x2) / 2, (y1 + y2) / 2),)}
