"""What a cutting file is called: aircraft, option, revision, plate, and every choice that differs from the plain one.

The plain file is R2010, in the project's unit, front face up, from the datum, whole, without relief or lead-in points.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from panelcad.editing.ids import slug
from panelcad.model.part import part_text
from panelcad.model.plate import Plate
from panelcad.model.project import Option, Project
from panelcad.model.revision import Stamp
from panelcad.outputs.dxf_options import CornerRelief, DxfOptions, DxfVersion, FaceUp, LeadIns, Origin, SmallHoles


@dataclass(frozen=True)
class FileNames:
    """The names of the cutting files that are written with the same choices from one revision of an option."""

    project: Project
    option: Option
    mark: Stamp
    options: DxfOptions

    def plate(self, plate_id: str) -> str:
        """Such as 'zz-demo-1-glass-A-panel.dxf' for the plain file, '…-panel-r12-mm-back.dxf' for another."""
        return self._name(f"-{plate_id}")

    def stock(self, number: int, part: str = "") -> str:
        """Such as 'zz-demo-1-glass-A-stock-1.dxf'; `part` is `part_suffix` where only some plates are issued."""
        return self._name(f"{part}-stock-{number}")

    def _name(self, what: str) -> str:
        start = issue_name(self.project, self.option, self.mark.revision)
        return f"{start}{what}{kind_suffix(self.project, self.options)}.dxf"


def issue_name(project: Project, option: Option, revision: str) -> str:
    """Such as 'zz-demo-1-glass-A', 'glass-draft': what the name of every paper begins with.

    The registration, where there is one, tells the files of two customers apart.
    """
    registration = project.aircraft.known_registration
    aircraft = f"{slug(registration)}-" if registration else ""
    return f"{aircraft}{option.id}-{revision or 'draft'}"


def part_suffix(option: Option, plates: Iterable[Plate]) -> str:
    """Such as '-part-sub-panel'; empty for all plates that are worked on."""
    shown = tuple(plates)
    return "-part-" + "-".join(plate.id for plate in shown) if part_text(option, shown) else ""


def kind_suffix(project: Project, options: DxfOptions) -> str:
    """Such as '-r12-mm-back'; empty for the plain file."""
    return "".join(f"-{word}" for word in _differing(project, options))


def _differing(project: Project, options: DxfOptions) -> Iterator[str]:
    if options.version is not DxfVersion.R2010:
        yield options.version.value.lower()
    if options.unit not in {None, project.unit}:
        yield str(options.unit)
    if options.face_up is FaceUp.BACK:
        yield "back"
    if options.origin is Origin.LOWER_LEFT:
        yield "corner"
    yield from (f"no-{each.value}" for each in options.left_out)
    if options.small_holes is SmallHoles.CENTRE_MARKS:
        yield "marks"
    if options.corner_relief is CornerRelief.ROUND:
        yield "relief"
    if options.lead_ins is LeadIns.POINTS:
        yield "lead-ins"
    if options.cutter_of(project.profile) != project.profile.cutter_diameter:
        yield f"cutter-{options.cutter_text(project.profile, project.unit).replace(' ', '')}"
    if options.around:
        yield f"trial-piece-{options.around[0]}" + (f"-and-{more}-more" if (more := len(options.around) - 1) else "")
