"""Limits of what the pilot sees, reads and reaches. Angles in degrees, lengths in mm, letters in minutes of arc."""

from typing import Annotated, Final

from pydantic import AfterValidator, Field

from panelcad.model.base import NonNegativeLength, Number, PositiveLength, Record
from panelcad.model.limit import limit
from panelcad.model.source import Standing
from panelcad.model.view_zones import FunctionZone, only_changed

Degrees = Annotated[Number, Field(ge=0, le=180)]
Share = Annotated[Number, Field(ge=0, le=1)]
Multiple = Annotated[Number, Field(ge=0, le=20)]
Minutes = Annotated[Number, Field(gt=0, le=120)]

_VIEW: Final = "AC 23.1311-1C paragraphs 15.2 and 15.3, as quoted by an EASA example document"
_TABLE_3: Final = "AC 23.1311-1C table 3, four inches at 30 in; verify"
_TURNED: Final = "NUREG-0700 rev. 3, 11.2.1.1-5, after MIL-STD-1472G"
_BODY: Final = "NUREG-0700 rev. 3, table 11.4, 5th percentile female and 95th percentile male"
_LETTERS: Final = "NUREG-0700 rev. 3, 11.4.1.5-1; reckoned from the angle, not from the rounded factor"
_MIL: Final = "MIL-STD-1472E table VII"
_NUREG: Final = "NUREG-0700 rev. 3, table 11.5"
_SHOP: Final = "shop setting"


class PilotLimits(Record):
    line_of_sight_down: Degrees = limit(15.0, "Normal line of sight below the horizontal", Standing.PUBLISHED, _VIEW)
    primary_sideways: Degrees = limit(15.0, "Primary field of view, each side", Standing.PUBLISHED, _VIEW)
    primary_up: Degrees = limit(15.0, "Primary field of view, above the line of sight", Standing.PUBLISHED, _VIEW)
    primary_down: Degrees = limit(15.0, "Primary field of view, below the line of sight", Standing.PUBLISHED, _VIEW)
    important_sideways: Degrees = limit(
        35.0, "Field of view for what is important, each side", Standing.PUBLISHED, _VIEW
    )
    important_up: Degrees = limit(
        40.0, "Field of view for what is important, above the line of sight", Standing.PUBLISHED, _VIEW
    )
    important_down: Degrees = limit(
        20.0, "Field of view for what is important, below the line of sight", Standing.PUBLISHED, _VIEW
    )
    zones: Annotated[tuple[FunctionZone, ...], AfterValidator(only_changed)] = ()
    """Where functions belong in the pilot's view, other than the defaults (`model.view_zones`)."""
    face_turned: Degrees = limit(45.0, "Face turned from the line of sight, at most", Standing.PUBLISHED, _TURNED)
    group_offset: NonNegativeLength = limit(
        101.6, "Middle of the flight instruments from the pilot's centre line, at most", Standing.MEMORY, _TABLE_3
    )
    t_out_of_line: Share = limit(
        0.5,
        "A neighbour of the attitude instrument out of line, at most, in heights of its face",
        Standing.SHOP_SETTING,
        "shop setting; 14 CFR 23.1321(d) says adjacent and directly beside, without a number",
    )
    t_apart: Multiple = limit(
        1.0,
        "A neighbour of the attitude instrument away from it, at most, in widths of its face",
        Standing.SHOP_SETTING,
        "shop setting; 14 CFR 23.1321(d) says adjacent, without a number",
    )
    hidden_share: Share = limit(0.05, "Share of a face that may be hidden from the eye", Standing.SHOP_SETTING, _SHOP)
    eye_sweep: NonNegativeLength = limit(
        69.85, "Shorter and taller pilot's eye, below and above the eye point", Standing.PUBLISHED, _BODY
    )
    shoulder_below_eye: NonNegativeLength = limit(
        215.9, "Shoulder below the eye", Standing.PUBLISHED, f"{_BODY}: eye height less shoulder height"
    )
    shoulder_behind_eye: NonNegativeLength = limit(
        101.6, "Shoulder behind the eye, harness on", Standing.MEMORY, "seated posture, about four inches"
    )
    reach_small: PositiveLength = limit(678.18, "Functional reach of a small pilot", Standing.PUBLISHED, _BODY)
    reach_large: PositiveLength = limit(886.46, "Functional reach of a large pilot", Standing.PUBLISHED, _BODY)
    letter_least: Minutes = limit(15.0, "Height of letters at the eye, least", Standing.PUBLISHED, _LETTERS)
    letter_preferred: Minutes = limit(20.0, "Height of letters at the eye, preferred", Standing.PUBLISHED, _LETTERS)
    engraving_tool: PositiveLength | None = limit(None, "Width of the engraving tool", Standing.SHOP_SETTING, _SHOP)
    stroke_finest: Share = limit(
        1 / 8, "Stroke of a letter, least, in heights", Standing.PUBLISHED, "DOD-HDBK-791 6-5.3.2.3, light on dark"
    )
    stroke_boldest: Share = limit(
        1 / 6, "Stroke of a letter, most, in heights", Standing.PUBLISHED, "DOD-HDBK-791 6-5.3.2.3, dark on light"
    )
    label_distance: NonNegativeLength = limit(
        25.4,
        "A control's label away from it, at most",
        Standing.SHOP_SETTING,
        "shop setting; MIL-STD-1472E 5.5.2 says on or very near the item",
    )
    compass_placard_distance: NonNegativeLength = limit(
        50.8,
        "Deviation placard away from its compass, at most",
        Standing.SHOP_SETTING,
        "shop setting; 14 CFR 23.1547 says on or near the instrument",
    )
    master_apart: NonNegativeLength = limit(
        19.05,
        "Halves of a split master apart, at most",
        Standing.SHOP_SETTING,
        "shop setting; 14 CFR 23.1361(c) asks for one hand in a single movement",
    )
    carburettor_heat_apart: NonNegativeLength = limit(
        203.2,
        "Carburettor heat or alternate air from the mixture control, unless left of the throttle",
        Standing.STANDARD,
        "14 CFR 23.777(d), eight inches",
    )
    toggle_toggle: NonNegativeLength = limit(19.05, "Toggle to toggle", Standing.PUBLISHED, f"{_NUREG}, 0.75 in")
    toggle_button: NonNegativeLength = limit(13.0, "Toggle to push button", Standing.PUBLISHED, f"{_MIL}, 13 mm")
    toggle_rotary: NonNegativeLength = limit(19.0, "Toggle to rotary control", Standing.PUBLISHED, f"{_MIL}, 19 mm")
    toggle_selector: NonNegativeLength = limit(19.0, "Toggle to rotary selector", Standing.PUBLISHED, f"{_MIL}, 19 mm")
    toggle_key: NonNegativeLength = limit(19.05, "Toggle to key switch", Standing.PUBLISHED, f"{_NUREG}, 0.75 in")
    button_button: NonNegativeLength = limit(
        12.7, "Push button to push button", Standing.PUBLISHED, f"{_NUREG}, 0.5 in"
    )
    button_rotary: NonNegativeLength = limit(
        13.0, "Push button to rotary control", Standing.PUBLISHED, f"{_MIL}, 13 mm"
    )
    button_selector: NonNegativeLength = limit(
        13.0, "Push button to rotary selector", Standing.PUBLISHED, f"{_MIL}, 13 mm"
    )
    rotary_rotary: NonNegativeLength = limit(
        25.0, "Rotary control to rotary control", Standing.MEMORY, "MIL-STD-1472 figure 7, one hand, 25 mm"
    )
    rotary_selector: NonNegativeLength = limit(
        25.0, "Rotary control to rotary selector", Standing.PUBLISHED, f"{_MIL}, 25 mm"
    )
    selector_selector: NonNegativeLength = limit(
        25.0, "Rotary selector to rotary selector", Standing.PUBLISHED, "MIL-STD-1472E figure 4, one hand, 25 mm"
    )
    rocker_rocker: NonNegativeLength = limit(12.7, "Rocker to rocker", Standing.PUBLISHED, f"{_NUREG}, 0.5 in")
    key_key: NonNegativeLength = limit(25.4, "Key switch to key switch", Standing.PUBLISHED, f"{_NUREG}, 1.0 in")
