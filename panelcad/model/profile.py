"""The limits a shop works to. Each has a default with its source; a project carries the profile it was judged by."""

from typing import Annotated, Any, Final

from pydantic import Field

from panelcad.model.base import Name, NonNegativeLength, Number, PositiveLength, Record
from panelcad.model.source import Source, Standing


def _limit(mm: float, title: str, standing: Standing, source: str) -> Any:
    return Field(default=mm, title=title, json_schema_extra={"standing": standing.value, "source": source})


_AC_RIVET: Final = "AC 43.13-1B paragraph 4-57, rivet edge distance, applied to screws by common practice"
_INSTALLATION: Final = "installation practice for panel displays: a quarter inch between holes and to the edge"
Multiple = Annotated[Number, Field(ge=0, le=20)]


class Profile(Record):
    """Lengths in mm; multiples of the sheet thickness t or of the fastener diameter D are plain numbers."""

    name: Name = "defaults"
    web_advised: NonNegativeLength = _limit(
        6.35, "Web between neighbouring cuts, advised", Standing.PUBLISHED, _INSTALLATION
    )
    web_least_thicknesses: Multiple = _limit(
        2.0,
        "Web between neighbouring cuts, least, in sheet thicknesses",
        Standing.SHOP_SETTING,
        "shop setting",
    )
    outline_advised: NonNegativeLength = _limit(
        6.35, "Cut to the panel's edge, advised", Standing.PUBLISHED, _INSTALLATION
    )
    outline_least_thicknesses: Multiple = _limit(
        2.0, "Cut to the panel's edge, least, in sheet thicknesses", Standing.SHOP_SETTING, "shop setting"
    )
    edge_distance_plain: Multiple = _limit(
        2.0, "Edge distance of a plain hole, in D", Standing.COMMON_PRACTICE, _AC_RIVET
    )
    edge_distance_countersunk: Multiple = _limit(
        2.5, "Edge distance of a countersunk hole, in D", Standing.COMMON_PRACTICE, _AC_RIVET
    )
    bezel_gap: NonNegativeLength = _limit(
        0.0, "Gap between bezels", Standing.COMMON_PRACTICE, "bezels must not touch under landing shock"
    )
    body_clearance: NonNegativeLength = _limit(
        3.175, "Clearance between cases, trays and connectors", Standing.SHOP_SETTING, "shop setting"
    )
    obstacle_clearance: NonNegativeLength = _limit(
        6.35, "Clearance to ribs, tubes and ducts", Standing.SHOP_SETTING, "shop setting"
    )
    moving_clearance: NonNegativeLength = _limit(
        12.7, "Clearance to moving parts", Standing.MEMORY, "AC 43.13-1B paragraph 11-125, half an inch"
    )
    depth_clearance: NonNegativeLength = _limit(
        6.35, "Clearance to the firewall", Standing.SHOP_SETTING, "shop setting"
    )
    front_clearance: NonNegativeLength = _limit(
        6.35, "Clearance in front to what moves or hangs over", Standing.SHOP_SETTING, "shop setting"
    )
    stack_joint: NonNegativeLength = _limit(
        0.5,
        "Allowance for each joint of a stack",
        Standing.SHOP_SETTING,
        "trays measure taller than drawn; shop setting",
    )
    stack_clearance: NonNegativeLength = _limit(
        0.5, "Clearance of a stack in its opening", Standing.SHOP_SETTING, "shop setting"
    )
    smallest_cut: PositiveLength = _limit(1.0, "Smallest cut", Standing.SHOP_SETTING, "shop setting")
    smallest_segment: PositiveLength = _limit(
        0.05, "Shortest piece of a contour", Standing.SHOP_SETTING, "shop setting"
    )
    finish_thickness: NonNegativeLength = _limit(
        0.0,
        "Thickness of the finish on each coated surface; cuts are made so much larger, the outline so much smaller",
        Standing.SHOP_SETTING,
        "shop setting; sizes on papers are finished sizes",
    )
    cutter_diameter: PositiveLength = _limit(
        3.175, "Diameter of the cutter", Standing.SHOP_SETTING, "shop setting, an eighth of an inch"
    )
    bend_neutral: Multiple = _limit(
        0.33,
        "Neutral axis of a bend, from its inside, in sheet thicknesses",
        Standing.SHOP_SETTING,
        "shop setting; try it on a strip of the same sheet",
    )
    sheet_tolerance: NonNegativeLength = _limit(
        0.127, "Tolerance of a cut on the drawing", Standing.SHOP_SETTING, "shop setting, 0.005 in"
    )


def limit_source(name: str) -> Source:
    """Where a profile's default comes from."""
    extra = Profile.model_fields[name].json_schema_extra
    if not isinstance(extra, dict):
        raise KeyError(name)
    return Source(standing=Standing(str(extra["standing"])), text=str(extra["source"]))
