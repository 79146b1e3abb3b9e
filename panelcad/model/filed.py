"""Openings and holes whose corners no cutter makes: round ones with a key or a flat, which are filed by hand."""

from panelcad.model.hole import HoleKind
from panelcad.model.layout import PlacedCut
from panelcad.model.shape import FlattedCircle, KeyedCircle


def filed(cut: PlacedCut) -> frozenset[str]:
    """The ids of the features of a cut whose key or flat is filed (common practice)."""
    openings = cut.cutout.openings if cut.cutout else cut.cut.openings
    by_shape = {
        feature.id
        for feature, opening in zip(cut.openings, openings, strict=True)
        if isinstance(opening.shape, KeyedCircle | FlattedCircle)
    }
    by_form = {
        feature.id
        for feature in cut.features
        if feature.form is not None and feature.form.kind in {HoleKind.KEYED, HoleKind.FLATTED}
    }
    return frozenset(by_shape | by_form)
