"""What the pointer is told of a cutout of the library before it is placed."""

from html import escape

from panelcad.desktop.panes.facts import facts
from panelcad.model.cutout import Cutout
from panelcad.units import LengthUnit


def cutout_tip(cutout: Cutout, unit: LengthUnit) -> str:
    """Its whole title, what is to be known of it, and each dimension with its source, as rich text."""
    notes = f"<p>{escape(cutout.notes)}</p>" if cutout.notes else ""
    known = "".join(
        f"<p>{escape(fact.what)}: {escape(fact.figure)}<br><small>{escape(fact.source)}</small></p>"
        for fact in facts(cutout, unit)
    )
    return f"<b>{escape(cutout.title)}</b>{notes}{known}"
