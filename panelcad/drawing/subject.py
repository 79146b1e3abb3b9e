"""One option of a project as its papers show it: laid out, numbered, checked and stamped once for all of them."""

from dataclasses import dataclass
from typing import Final

from panelcad.checks.report import CheckReport
from panelcad.drawing.datum_words import datum_of
from panelcad.drawing.inks import INKS, Ink, Inks
from panelcad.drawing.numbering import Numbering, numbering
from panelcad.drawing.paper import Paper, Series, papers_up_to, usual_series
from panelcad.drawing.views.section import SectionLine
from panelcad.model.layout import Layout, layout
from panelcad.model.part import part_text
from panelcad.model.plate import Plate
from panelcad.model.project import Option, Project
from panelcad.model.revision import Stamp
from panelcad.units import LengthUnit, format_length, format_number, format_tolerance

UNIT_WORDS: Final = {LengthUnit.MM: "mm", LengthUnit.INCH: "inches"}


@dataclass(frozen=True)
class PlateSection:
    """A section that was asked for: its line, in the axes of the plate of this id."""

    plate: str
    line: SectionLine


@dataclass(frozen=True)
class Look:
    """Which sheets: those usual with the project's unit unless told; none larger than `largest`.

    `plates` are the ids of the only plates they are of; none for all that are worked on.
    """

    series: Series | None = None
    largest: Paper | None = None
    plates: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    """Sentences about the files that are issued with them."""
    sections: tuple[PlateSection, ...] = ()


_USUAL: Final = Look()


@dataclass(frozen=True)
class Subject:
    laid: Layout
    numbers: Numbering
    report: CheckReport
    stamp: Stamp
    ink: Ink
    series: Series
    largest: Paper | None = None
    """No sheet is larger than this one, where it is given."""
    plates: tuple[str, ...] = ()
    """The ids of the only plates the papers are of; none for all that are worked on."""
    notes: tuple[str, ...] = ()
    """Sentences about the files that are issued with the papers."""
    sections: tuple[PlateSection, ...] = ()
    """Those that were asked for beside or instead of the usual ones."""

    @property
    def papers(self) -> tuple[Paper, ...]:
        """The sheets a drawing may take, the usual one first."""
        return papers_up_to(self.series, self.largest)

    @property
    def project(self) -> Project:
        return self.laid.project

    @property
    def option(self) -> Option:
        return self.laid.option

    @property
    def unit(self) -> LengthUnit:
        return self.project.unit

    @property
    def unit_word(self) -> str:
        return UNIT_WORDS[self.unit]

    @property
    def inks(self) -> Inks:
        return INKS[self.ink]

    @property
    def drawing_number(self) -> str:
        """The identification number of ISO 7200: registration, option, and the plates where they are not all."""
        part = f" / {', '.join(self.plates)} only" if self.part else ""
        return f"{self.project.aircraft.registration} / {self.option.id}{part}"

    @property
    def part(self) -> str:
        """Of which plates the papers are, and of which not; empty where they are of the whole option."""
        return part_text(self.option, map(self.option.plate, self.plates)) if self.plates else ""

    @property
    def tolerance(self) -> str:
        """'±0.005 in' of the profile."""
        return f"{self.tolerance_number} {self.unit.value}"

    @property
    def tolerance_number(self) -> str:
        """'±0.005', exact."""
        return f"±{format_tolerance(self.project.profile.sheet_tolerance, self.unit)}"

    def datum_of(self, plate: Plate) -> str:
        """Where a plate's axes begin, in words; one that stands elsewhere in the aircraft has an origin of its own."""
        return datum_of(self.project, plate)

    def length(self, mm: float) -> str:
        return format_length(mm, self.unit)

    def number(self, mm: float) -> str:
        return format_number(mm, self.unit)


def subject(report: CheckReport, stamp: Stamp, ink: Ink = Ink.COLOUR, look: Look = _USUAL) -> Subject:
    """The checked option made ready for its papers."""
    laid = layout(report.project, report.option)
    series = look.largest.series if look.largest else look.series or usual_series(report.project.unit)
    return Subject(
        laid, numbering(laid), report, stamp, ink, series, look.largest, look.plates, look.notes, look.sections
    )
