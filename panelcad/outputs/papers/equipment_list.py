"""The equipment list of an option: what is aboard with weight, arm and moment, and what came out."""

from panelcad.model.function import Function
from panelcad.outputs.papers.document import Block, Column, Document, Grid, Heading, Line, Tone, Words
from panelcad.outputs.papers.parts import mass_cells, mass_columns, paper
from panelcad.planning.equipment import Fitted
from panelcad.planning.judge import Judgement
from panelcad.planning.required import State
from panelcad.planning.tso import standard_of
from panelcad.planning.weight import arm_of

_FIRST = (Column("item", 27), Column("does", 31), Column("", 13), Column("where", 14))


def equipment_list(judgement: Judgement) -> Document:
    """Every unit; 'required' where a line of the lists for the kind of flight is met by it, else 'optional'."""
    required = {item for r in judgement.required if r.state is State.MET for item in r.met_by}
    installed = {fitted.id for fitted in judgement.change.installed}
    fitted_lines = tuple(_line(f, judgement, _class(f, required, installed)) for f in judgement.equipment.units)
    removed = tuple(_line(f, judgement, "removed") for f in judgement.change.removed)
    columns = (*_FIRST, *mass_columns(judgement.equipment.project.unit, (12, 10, 17)))
    blocks: list[Block] = [
        Words("New items are marked. Required means: a line of the required-equipment lists is met by it."),
        Grid("equipment", columns, fitted_lines),
        Heading("Removed"),
        Grid("removed", columns, removed) if removed else Words("Nothing is removed.", Tone.FAINT),
        Heading("Standards"),
        Words(
            "The technical standard order for each function; what a unit meets stands on its data plate.", Tone.FAINT
        ),
        _standards(judgement),
    ]
    return paper(judgement, "equipment-list", "Equipment list", blocks)


def _class(fitted: Fitted, required: set[str], installed: set[str]) -> str:
    kind = "required" if fitted.id in required else "optional"
    return f"{kind}, new" if fitted.id in installed else kind


def _line(fitted: Fitted, judgement: Judgement, kind: str) -> Line:
    project = judgement.equipment.project
    arm, kg = arm_of(fitted, project.planning.weight), fitted.unit.mass
    does = ", ".join(fitted.unit.provides) or ", ".join(fitted.unit.supplies)
    cells = (fitted.name, does, kind, fitted.place_words, *mass_cells(kg, arm, project.unit))
    return Line(cells, Tone.WARNING if kg is None or arm is None else Tone.PLAIN)


def _standards(judgement: Judgement) -> Grid:
    provided = {function for fitted in judgement.equipment.units for function in fitted.unit.provides}
    lines = []
    for function in Function:
        stated = {s.tso for f in judgement.equipment.units for s in f.unit.standards if s.function is function}
        standard = standard_of(function)
        if function in provided and (stated or standard):
            text = ", ".join(sorted(stated)) or (standard.text if standard else "")
            lines.append(
                Line((function.value, text, "stated by the maker" if stated else standard.source if standard else ""))
            )
    columns = (Column("function", 34), Column("TSO", 26), Column("source", 40))
    return Grid("standards", columns, tuple(lines))
