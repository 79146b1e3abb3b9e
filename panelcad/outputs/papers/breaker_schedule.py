"""The breaker panel and wire schedule of an option."""

from panelcad.outputs.papers.document import Block, Column, Document, Grid, Heading, Line, Tone, Words
from panelcad.outputs.papers.parts import findings_grid, paper
from panelcad.planning.electrical.circuits import CircuitLine
from panelcad.planning.judge import Judgement, Topic
from panelcad.units import LengthUnit, format_number

_METHOD = (
    "Load, breaker and wire, each at most the next (AC 43.13-1B paragraph 11-48, table 11-3). The breaker a maker "
    "states comes first; one marked * is only the next size above the load. Drop at 20 °C after table 11-9, allowed "
    "after table 11-6. Lengths include the ground wire. Wires in hot or large bundles carry less."
)


def _columns(unit: LengthUnit) -> tuple[Column, ...]:
    return (
        Column("bus", 15),
        Column("load", 26),
        Column("A", 8, is_number=True),
        Column("breaker A", 10, is_number=True),
        Column("wire", 8, is_number=True),
        Column("advised", 9, is_number=True),
        Column(f"length {unit.value}", 11, is_number=True),
        Column("drop V", 9, is_number=True),
        Column("allowed V", 11, is_number=True),
    )


def breaker_schedule(judgement: Judgement) -> Document:
    """The paper; where no electrical system is entered its grid is empty."""
    figures = judgement.electrical
    unit = judgement.equipment.project.unit
    lines = tuple(_line(line, unit) for line in figures.schedule) if figures else ()
    circuits = {line.load.id for line in figures.schedule} if figures else set()
    found = [f for f in judgement.findings[Topic.ELECTRICAL] if circuits.intersection(f.items)]
    accepted = [a for a in judgement.accepted[Topic.ELECTRICAL] if circuits.intersection(a.finding.items)]
    blocks: list[Block] = [
        Words(_METHOD, Tone.FAINT),
        Grid("schedule", _columns(unit), lines),
        Heading("Findings"),
        *findings_grid(judgement, found, accepted),
    ]
    return paper(judgement, "breaker-and-wire-schedule", "Breaker and wire schedule", blocks)


def _line(line: CircuitLine, unit: LengthUnit) -> Line:
    peak = line.load.peak
    breaker = "" if line.breaker is None else f"{line.breaker:g}{'' if line.breaker_is_stated else '*'}"
    too_much = line.drop is not None and line.drop > line.allowed_drop * 1.01
    cells = (
        line.bus or "not entered",
        line.load.name,
        "?" if peak is None else f"{peak:g}",
        breaker or "?",
        line.gauge or "?",
        line.advised_gauge or "",
        "?" if line.length is None else format_number(line.length, unit, places=0),
        "" if line.drop is None else f"{line.drop:.2f}",
        f"{line.allowed_drop:g}",
    )
    return Line(cells, Tone.ERROR if too_much else Tone.PLAIN)
