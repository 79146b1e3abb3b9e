"""The charts of the options pane, in the window's colours."""

from panelcad.desktop.theme import Theme
from panelcad.drawing.charts.bars import bars_chart, named_bars
from panelcad.drawing.charts.envelope import envelope_chart
from panelcad.drawing.charts.frame import ON_DARK, ON_LIGHT, Chart
from panelcad.drawing.charts.load import load_chart
from panelcad.planning import figures
from panelcad.planning.compare import Comparison
from panelcad.planning.judge import Judgement
from panelcad.units import mass_unit


def option_charts(comparison: Comparison, current: Judgement, theme: Theme) -> dict[str, Chart]:
    """Load and CG of the option on the canvas, weight and cost of all; a chart that cannot be drawn is left out."""
    look = ON_DARK if theme.is_dark else ON_LIGHT
    unit = comparison.project.unit
    found: dict[str, Chart] = {}
    if current.electrical is not None:
        found["load"] = load_chart(current.electrical, f"{current.option.name}: load by phase", look)
    envelope = envelope_chart(current.balance, f"{current.option.name}: CG envelope", unit, look)
    if envelope is not None:
        found["envelope"] = envelope
    offered = [j for j in comparison.judgements if not figures.is_as_found(j)]
    if offered:
        names = tuple(judgement.option.name for judgement in offered)
        mass = mass_unit(unit)
        changes = tuple(None if (kg := figures.mass_change(j)) is None else kg / mass.kg for j in offered)
        bars = named_bars(names, changes, lambda value: f"{value:+.1f} {mass}")
        found["weight"] = bars_chart("Change of empty weight", bars, look)
        texts = {float(j.cost.total): figures.total(j) for j in offered}
        totals = tuple(float(judgement.cost.total) for judgement in offered)
        found["cost"] = bars_chart("Total cost", named_bars(names, totals, lambda value: texts[value]), look)
    return found
