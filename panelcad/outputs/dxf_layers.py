"""The layers of a cutting file: what is cut through, what is drilled, what is engraved, what is only for reference."""

from enum import StrEnum
from typing import Final

from panelcad.geometry.contour import Contour, Rounded
from panelcad.model.hole import Face, HoleKind
from panelcad.model.layout import Feature, FeatureKind


class Layer(StrEnum):
    """Names of at most 31 capitals, digits and underlines, which every DXF version takes."""

    OUTLINE = "OUTLINE"
    CUTOUT = "CUTOUT"
    DRILL = "DRILL"
    DRILL_COUNTERSUNK_FRONT = "DRILL_COUNTERSUNK_FRONT"
    DRILL_COUNTERSUNK_BACK = "DRILL_COUNTERSUNK_BACK"
    DRILL_TAPPED = "DRILL_TAPPED"
    DRILL_NUTPLATE = "DRILL_NUTPLATE"
    DRILL_RIVET = "DRILL_RIVET"
    DRILL_INSERT = "DRILL_INSERT"
    CENTRE_MARK = "CENTRE_MARK"
    LEAD_IN = "LEAD_IN"
    ENGRAVE = "ENGRAVE"
    BEND = "BEND"
    OUTLINE_EXISTING = "OUTLINE_EXISTING"
    EXISTING = "EXISTING"
    HARDWARE = "HARDWARE"
    REFERENCE = "REFERENCE"


MEANING: Final = {
    Layer.OUTLINE: "the sheet's edge: cut through",
    Layer.CUTOUT: "openings, large, keyed and flatted holes: cut through",
    Layer.DRILL: "plain round holes, openings too, up to half an inch: drill or cut through",
    Layer.DRILL_COUNTERSUNK_FRONT: "holes countersunk in the front face: drill through, then countersink",
    Layer.DRILL_COUNTERSUNK_BACK: "holes countersunk in the back face: drill through, then countersink",
    Layer.DRILL_TAPPED: "holes to be tapped: the drilled size",
    Layer.DRILL_NUTPLATE: "screw holes of nutplates: drill or cut through",
    Layer.DRILL_RIVET: "rivet holes of nutplates: drill or cut through",
    Layer.DRILL_INSERT: "holes for inserts: drill or cut through",
    Layer.CENTRE_MARK: "centres of holes too small to cut: mark, then drill",
    Layer.LEAD_IN: "points in the scrap where the cutter may plunge",
    Layer.ENGRAVE: "lettering as single strokes: engrave, do not cut through",
    Layer.BEND: "bend lines: do not cut",
    Layer.OUTLINE_EXISTING: "the edge of a sheet that is there already: do not cut",
    Layer.EXISTING: "cuts that are in the metal already: do not cut",
    Layer.HARDWARE: "countersinks, nutplate flanges: do not cut",
    Layer.REFERENCE: "for reference only: do not cut",
}

COLOUR: Final = {
    Layer.OUTLINE: 7,
    Layer.CUTOUT: 1,
    Layer.DRILL: 5,
    Layer.DRILL_COUNTERSUNK_FRONT: 6,
    Layer.DRILL_COUNTERSUNK_BACK: 6,
    Layer.DRILL_TAPPED: 30,
    Layer.DRILL_NUTPLATE: 140,
    Layer.DRILL_RIVET: 140,
    Layer.DRILL_INSERT: 200,
    Layer.CENTRE_MARK: 5,
    Layer.LEAD_IN: 2,
    Layer.ENGRAVE: 3,
    Layer.BEND: 4,
    Layer.OUTLINE_EXISTING: 9,
    Layer.EXISTING: 9,
    Layer.HARDWARE: 8,
    Layer.REFERENCE: 8,
}
"""The colour index of DXF (group 62), picked so that neighbours differ on black and on white."""

CUT_THROUGH: Final = frozenset(
    layer for layer in Layer if layer in {Layer.OUTLINE, Layer.CUTOUT} or layer.startswith("DRILL")
)
IN_THE_METAL: Final = frozenset({Layer.OUTLINE_EXISTING, Layer.EXISTING})
OUTLINES: Final = frozenset({Layer.OUTLINE, Layer.OUTLINE_EXISTING})

_OF_KIND: Final = {
    HoleKind.TAPPED: Layer.DRILL_TAPPED,
    HoleKind.NUTPLATE: Layer.DRILL_NUTPLATE,
    HoleKind.INSERT: Layer.DRILL_INSERT,
    HoleKind.KEYED: Layer.CUTOUT,
    HoleKind.FLATTED: Layer.CUTOUT,
}
_COUNTERSUNK: Final = {Face.FRONT: Layer.DRILL_COUNTERSUNK_FRONT, Face.BACK: Layer.DRILL_COUNTERSUNK_BACK}


LARGEST_DRILL: Final = 12.7
"""mm: plain round holes up to this size are for the drill, larger ones for the cutter, whatever they are for.

Half an inch, where the fractional sets of jobber drills end (common practice).
"""


def layer_of(feature: Feature) -> Layer:
    """The layer on which a feature's contour is cut; a plain round hole's is by its size alone."""
    form = feature.form
    if feature.kind is FeatureKind.RIVET:
        return Layer.DRILL_RIVET
    if form is None or form.kind is HoleKind.PLAIN:
        return Layer.DRILL if _is_round_up_to(feature.contour, LARGEST_DRILL) else Layer.CUTOUT
    if form.countersink is not None:
        return _COUNTERSUNK[form.countersink.face]
    return _OF_KIND[form.kind]


def _is_round_up_to(contour: Contour, diameter: float) -> bool:
    return isinstance(contour, Rounded) and contour.is_circle and 2 * contour.radius <= diameter + 1e-9
