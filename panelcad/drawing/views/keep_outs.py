"""Keep-outs in front of a plate, in outline over the front view: what must stay free toward the pilot."""

from panelcad.drawing.display import Group, Path
from panelcad.drawing.layers import Layer
from panelcad.drawing.style import Line, ViewStyle
from panelcad.drawing.views.around import keep_outs
from panelcad.model.layout import Layout


def keep_out_view(layout: Layout, plate_id: str, style: ViewStyle) -> tuple[Group, ...]:
    """One group for each keep-out, with its id as owner."""
    pen = style.narrow_pen(style.palette.moving_edge, Line.PHANTOM)
    return tuple(
        Group((Path((space.footprint,), pen=pen),), space.owner, Layer.KEEP_OUTS, title=space.name)
        for space in keep_outs(layout, plate_id)
    )
