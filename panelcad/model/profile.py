"""The limits a shop works to. Each has a default with its source; a project carries the profile it was judged by."""

from typing import Annotated, Final

from pydantic import Field, PlainSerializer

from panelcad.model.base import Name, NonNegativeLength, Number, PositiveLength
from panelcad.model.limit import limit as _limit
from panelcad.model.pilot_limits import PilotLimits
from panelcad.model.source import Source, Standing

_AC_RIVET: Final = "AC 43.13-1B paragraph 4-57, rivet edge distance, applied to screws by common practice"
_INSTALLATION: Final = "installation practice for panel displays: a quarter inch between holes and to the edge"
Multiple = Annotated[Number, Field(ge=0, le=20)]


class Profile(PilotLimits):
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
        1.0,
        "Diameter of the cutter or jet",
        Standing.SHOP_SETTING,
        "shop setting; job shops give 0.03 to 0.04 in for a jet",
    )
    bend_neutral: Multiple = _limit(
        0.4475,
        "Neutral axis of a bend, from its inside, in sheet thicknesses",
        Standing.PUBLISHED,
        "FAA-H-8083-31 bend allowance, 0.0078 / 0.01743; try it on a strip of the same sheet",
    )
    rivet_pitch: Multiple = _limit(
        3.0, "Pitch of rivets, in D", Standing.PUBLISHED, "AC 43.13-1B paragraph 4-57, rivet spacing"
    )
    sheet_least: NonNegativeLength = _limit(
        1.016, "Thinnest sheet", Standing.PUBLISHED, "approved installation manuals of panel displays, 0.040 in"
    )
    new_sheet_least: NonNegativeLength = _limit(
        1.5748,
        "Thinnest sheet of a new panel",
        Standing.PUBLISHED,
        "approved installation manuals of panel displays, 0.062 in for a replacement panel",
    )
    countersink_land: Annotated[Number, Field(ge=0, le=1)] = _limit(
        1 / 3,
        "Straight wall left below a countersink, as a share of the sheet",
        Standing.SHOP_SETTING,
        "shop setting; a countersink through the whole sheet leaves a knife edge",
    )
    sliver_angle: Annotated[Number, Field(ge=0, le=180)] = _limit(
        45.0,
        "Sharpest tongue of metal left between cuts, in degrees",
        Standing.SHOP_SETTING,
        "shop setting; AC 43.13-1B paragraph 4-58 asks to avoid notches and rapid changes of section",
    )
    bend_hole_thicknesses: Multiple = _limit(
        2.0,
        "Hole to bend, in sheet thicknesses beside the bend's radius",
        Standing.PUBLISHED,
        "general sheet metal design rule: 2 t and the bend radius",
    )
    opening_shows: NonNegativeLength = _limit(
        0.25,
        "Opening beside its bezel, at most",
        Standing.SHOP_SETTING,
        "shop setting; the published opening of a front connector is 0.24 mm taller than its flange",
    )
    net_section_least: Annotated[Number, Field(ge=0, le=1)] = _limit(
        0.2,
        "Sheet left along the weakest line, as a share of the uncut sheet",
        Standing.SHOP_SETTING,
        "shop setting; no judgement of strength",
    )
    bed_width: PositiveLength | None = _limit(None, "Width of the machine's bed", Standing.SHOP_SETTING, "shop setting")
    bed_height: PositiveLength | None = _limit(
        None, "Height of the machine's bed", Standing.SHOP_SETTING, "shop setting"
    )
    stock_width: PositiveLength | None = _limit(None, "Width of the stock", Standing.SHOP_SETTING, "shop setting")
    stock_height: PositiveLength | None = _limit(None, "Height of the stock", Standing.SHOP_SETTING, "shop setting")
    stock_margin: NonNegativeLength = _limit(
        6.35, "Margin around a plate on its stock", Standing.SHOP_SETTING, "shop setting"
    )
    knob_gap: NonNegativeLength = _limit(
        3.175, "Clearance between knobs, levers, plugs and neighbouring bezels", Standing.SHOP_SETTING, "shop setting"
    )
    tool_diameter: NonNegativeLength = _limit(
        9.525, "Room for a screwdriver over a front screw, across", Standing.SHOP_SETTING, "shop setting, 3/8 in"
    )
    hand_space: NonNegativeLength = _limit(
        63.5, "Room for a hand beside a connector", Standing.SHOP_SETTING, "shop setting, 2 1/2 in"
    )
    tray_unsupported: NonNegativeLength = _limit(
        152.4, "Deepest tray that is held at the panel alone", Standing.SHOP_SETTING, "shop setting, six inches"
    )
    slide_clearance: NonNegativeLength = _limit(
        0.0, "Clearance beside a unit pulled out of its tray", Standing.SHOP_SETTING, "shop setting"
    )
    cable_advised: NonNegativeLength = _limit(
        76.2,
        "Wires to control cables, advised",
        Standing.MEMORY,
        "AC 43.13-1B chapter 11, three inches or a mechanical guard",
    )
    fluid_line_advised: NonNegativeLength = _limit(
        152.4, "Wires to fluid and oxygen lines, advised", Standing.PUBLISHED, "AC 43.13-1B paragraph 11-96, six inches"
    )
    fluid_line_least: NonNegativeLength = _limit(
        50.8,
        "Wires to fluid and oxygen lines, least, then rigidly clamped",
        Standing.PUBLISHED,
        "AC 43.13-1B paragraph 11-96, never less than two inches",
    )
    bundle_bend: Multiple = _limit(
        10.0,
        "Bend radius of a wire bundle, in its outside diameters",
        Standing.PUBLISHED,
        "TM 1-1500-204-23-4; AC 43.13-1B chapter 11 says the same, from memory",
    )
    hose_bend: Multiple = _limit(
        6.0,
        "Bend radius of a pitot or static hose, in its outside diameters",
        Standing.SHOP_SETTING,
        "shop setting; take it from the hose's maker",
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


def is_length(name: str) -> bool:
    """Whether a limit is a length in mm, and no multiple, angle or count."""
    return any(isinstance(part, PlainSerializer) for part in Profile.model_fields[name].metadata)
