"""The load analysis of an option: loads, phases against the alternator, battery after its failure."""

from panelcad.drawing.charts.frame import ON_PAPER
from panelcad.drawing.charts.load import load_chart
from panelcad.model.equipment import Duty, Phase
from panelcad.outputs.papers.document import Block, Column, Document, Grid, Heading, Line, Tone, Words
from panelcad.outputs.papers.parts import findings_of, paper
from panelcad.planning.electrical.capacity import LIMIT, emergency_landing_amperes, least_rating, normal_load
from panelcad.planning.electrical.judge import Electrical
from panelcad.planning.electrical.loads import Load
from panelcad.planning.judge import Judgement, Topic

_METHOD = (
    "Continuous loads of each phase are added and held against 80 % of the alternator's rating (AC 43.13-1B paragraph "
    "11-35a). Loads for moments are shown and left out of that sum. This is a screening check, not an electrical load "
    "analysis; measure the loads with an ammeter that reads to 0.5 A or better."
)


def load_analysis(judgement: Judgement) -> Document:
    """The paper; where no electrical system is entered it says so."""
    figures = judgement.electrical
    blocks: list[Block] = [Words(_METHOD, Tone.FAINT)]
    if figures is not None:
        blocks += [load_chart(figures, "Load in each phase of flight", ON_PAPER), *_phases(figures), *_battery(figures)]
        blocks += [Heading("Loads"), _loads(figures)]
    blocks += [Heading("Findings"), *findings_of(judgement, Topic.ELECTRICAL)]
    return paper(judgement, "load-analysis", "Electrical load", blocks)


def _phases(figures: Electrical) -> list[Block]:
    columns = (
        Column("phase", 26),
        Column("continuous A", 16, is_number=True),
        Column("for moments A", 16, is_number=True),
        Column("of the rating", 16, is_number=True),
        Column("not known", 26),
    )
    names = {load.id: load.name for load in figures.loads}
    lines = []
    for row in figures.phases:
        share = (
            "" if figures.rating is None or row.phase is Phase.EMERGENCY else f"{row.continuous / figures.rating:.0%}"
        )
        over = share and figures.rating and row.continuous > LIMIT * figures.rating
        unknown = ", ".join(names[load] for load in row.unknown)
        cells = (row.phase.value, f"{row.continuous:.2f}", f"{row.intermittent:.2f}", share, unknown)
        lines.append(Line(cells, Tone.ERROR if over else Tone.PLAIN))
    rating = "not known" if figures.rating is None else f"{figures.rating:g} A"
    words = f"Alternator: {rating}. The smallest rating that passes: {least_rating(figures.worst.continuous):.1f} A."
    return [Heading("Phases"), Grid("phases", columns, tuple(lines)), Words(words)]


def _battery(figures: Electrical) -> list[Block]:
    lasts, system = figures.endurance, figures.system
    blocks: list[Block] = [Heading("Battery after failure of the alternator")]
    if lasts is None or system.battery is None or lasts.total_minutes is None:
        return [
            *blocks,
            Words("Not known: the battery's capacity, or which loads are kept, is not entered.", Tone.WARNING),
        ]
    steps = (
        (f"{system.battery.capacity:g} Ah × {system.battery.derate:g} × 60", f"{lasts.available:.0f} A·min"),
        (
            f"{normal_load(figures.loads):.1f} A for {system.recognition:g} min until loads are shed",
            f"− {lasts.until_shed:.1f} A·min",
        ),
        (
            f"{emergency_landing_amperes(figures.loads):.1f} A for {system.landing:g} min of landing",
            f"− {lasts.for_landing:.1f} A·min",
        ),
        ("cruise on what is kept", f"{lasts.cruise_minutes or 0.0:.1f} min"),
    )
    tone = Tone.TOTAL if lasts.is_enough else Tone.ERROR
    total = Line((f"in all; at least {lasts.wanted:g} min are wanted", f"{lasts.total_minutes:.1f} min"), tone)
    columns = (Column("step", 70), Column("", 30, is_number=True))
    return [*blocks, Grid("battery", columns, (*(Line(step) for step in steps), total))]


def _loads(figures: Electrical) -> Grid:
    columns = (
        Column("load", 30),
        Column("bus", 16),
        Column("continuous A", 12, is_number=True),
        Column("peak A", 10, is_number=True),
        Column("duty", 14),
        Column("after failure", 18),
    )
    buses = {bus.id: bus.name for bus in figures.system.buses}
    return Grid("loads", columns, tuple(_load(load, buses) for load in figures.loads))


def _load(load: Load, buses: dict[str, str]) -> Line:
    continuous = (
        "" if load.duty is Duty.INTERMITTENT else "not known" if load.continuous is None else f"{load.continuous:.2f}"
    )
    peak = "not known" if load.peak is None else f"{load.peak:.2f}"
    bus = buses.get(load.circuit.bus or "", "not entered")
    tone = Tone.WARNING if load.continuous is None else Tone.PLAIN
    return Line((load.name, bus, continuous, peak, load.duty.value, load.circuit.after_failure.value), tone)
