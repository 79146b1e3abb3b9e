"""The weight and balance revision of an option, dated, with lines to sign (FAA weight and balance handbook)."""

from panelcad.drawing.charts.envelope import envelope_chart
from panelcad.drawing.charts.frame import ON_PAPER
from panelcad.outputs.papers.document import Blank, Block, Column, Document, Grid, Heading, Line, Tone, Words
from panelcad.outputs.papers.parts import findings_of, mass_cells, mass_columns, paper
from panelcad.planning.balance import Balance
from panelcad.planning.envelope import LoadedCase
from panelcad.planning.figures import format_arm
from panelcad.planning.judge import Judgement, Topic
from panelcad.planning.weight import Loading, WeightLine
from panelcad.units import LengthUnit, format_mass, mass_unit


def weight_revision(judgement: Judgement, on: str) -> Document:
    """The paper, dated `on` (2026-03-01). Without all masses and arms it has no result and says what is missing."""
    figures, unit = judgement.balance, judgement.equipment.project.unit
    chart = envelope_chart(figures, "CG envelope", unit, ON_PAPER, height=78.0)
    blocks: list[Block] = [
        Words(f"Date: {on}. Datum: {figures.sheet.datum if figures.sheet else 'not entered'}. {_old_sheet(figures)}"),
        Grid(
            "revision", (Column("item", 40), Column("", 14), *mass_columns(unit, (15, 13, 18))), _lines(figures, unit)
        ),
        Words(_result(figures, unit), Tone.TOTAL if figures.change.new else Tone.WARNING),
        *([chart] if chart else []),
        Heading("Extremes of loading", 2),
        *_extremes(figures, unit),
        Heading("Findings", 2),
        *findings_of(judgement, Topic.WEIGHT),
        Blank(
            ("Serial number", "Date", "Name", "Signature", "Certificate number"),
            "Earlier weight and balance computations are superseded once this one is signed.",
        ),
    ]
    return paper(judgement, "weight-and-balance-revision", "Weight and balance revision", blocks)


def _old_sheet(figures: Balance) -> str:
    sheet = figures.sheet
    return f"Last sheet: {sheet.on}." if sheet and sheet.on else "Date of the last sheet: not entered."


def _lines(figures: Balance, unit: LengthUnit) -> tuple[Line, ...]:
    change = figures.change
    lines = [_total("Empty, as last weighed", change.old, unit)] if change.old else []
    lines += [_line(line, unit) for line in change.lines]
    if change.new:
        lines.append(_total("New empty weight", change.new, unit))
    return tuple(lines)


def _line(line: WeightLine, unit: LengthUnit) -> Line:
    cells = (line.name, line.what, *mass_cells(line.kg, line.arm, unit))
    return Line(cells, Tone.PLAIN if line.is_known else Tone.WARNING)


def _total(name: str, loading: Loading, unit: LengthUnit) -> Line:
    return Line((name, "", *mass_cells(loading.kg, loading.arm, unit)), Tone.TOTAL)


def _result(figures: Balance, unit: LengthUnit) -> str:
    change = figures.change
    if change.new is None:
        return "There is no new empty weight: not everything is known."
    parts = [f"New empty weight {format_mass(change.new.kg, mass_unit(unit))}, CG {format_arm(change.new.arm, unit)}"]
    if change.useful_load is not None:
        parts.append(f"useful load {format_mass(change.useful_load, mass_unit(unit))}")
    text = ", ".join(parts) + "."
    return f"{text} The change is negligible (AC 43.13-1B paragraph 10-2c)." if figures.is_negligible else text


def _extremes(figures: Balance, unit: LengthUnit) -> list[Block]:
    if not figures.after:
        return [Words("Not investigated: envelope, stations or empty weight are not entered.", Tone.WARNING)]
    columns = (
        Column("case", 16),
        Column("loaded with", 44),
        Column("weight", 14, is_number=True),
        Column("CG", 12, is_number=True),
        Column("", 14),
    )
    return [Grid("extremes", columns, tuple(_extreme(case, unit) for case in figures.after))]


def _extreme(case: LoadedCase, unit: LengthUnit) -> Line:
    loads = ", ".join(f"{name} {format_mass(kg, mass_unit(unit), places=0)}" for name, kg, _ in case.loads)
    verdict = {True: "inside", False: "outside", None: "not judged"}[case.is_inside]
    weight, arm = format_mass(case.loading.kg, mass_unit(unit), places=0), format_arm(case.loading.arm, unit)
    tone = {True: Tone.PLAIN, False: Tone.ERROR, None: Tone.WARNING}[case.is_inside]
    return Line((case.name, loads, weight, arm, verdict), tone)
