"""What a check reports. A finding holds quantities; `panelcad.checks.wording` makes text of it in the reader's unit."""

from enum import StrEnum
from typing import Annotated

from pydantic import Field

from panelcad.geometry.point import Point
from panelcad.model.base import Id, Length, Name, Record, Text


class Severity(StrEnum):
    """An error means: do not cut."""

    ERROR = "error"
    WARNING = "warning"
    ADVICE = "advice"


class Measure(StrEnum):
    """What kind of number a finding compares."""

    LENGTH = "length"
    COUNT = "count"
    ANGLE = "angle"
    RATIO = "ratio"
    AMPERES = "amperes"
    VOLTS = "volts"
    MINUTES = "minutes"
    MASS = "mass"
    ARM = "arm"


class Cure(Record):
    """What would cure a finding: the smallest straight move of one thing, a row's pitch, or something in words."""

    item: str
    """The id of the cut, item or screw to move or change."""
    dx: Length = 0.0
    dy: Length = 0.0
    row: tuple[str, ...] = ()
    """The ids of the items of a row, in order, that are spread about its middle; `item` is then its first."""
    pitch: Length | None = None
    """The pitch in mm that the row is spread to."""
    advice: Text = ""
    """What to do instead of moving; '{value}' stands for `value` in the reader's unit."""
    value: float | None = None
    measure: Measure = Measure.LENGTH


class Finding(Record):
    """One thing that a rule found. Its identity is rule, items and features, without coordinates."""

    rule: Id
    severity: Severity
    items: tuple[str, ...]
    """Ids of the cuts, items, plates and surroundings that are to blame, in sorted order."""
    features: tuple[str, ...] = ()
    """Which of their parts, after the owner's id: 'altimeter/hole 2', 'radio/case', 'radio/connector'."""
    plate: str
    problem: Name
    """What is wrong, without numbers: 'Web between two cuts'."""
    measure: Measure = Measure.LENGTH
    measured: float | None = None
    """mm for a length; None where there is nothing to measure."""
    required: float | None = None
    where: tuple[Point, ...] = ()
    """One or two points on the plate, in mm: a spot, or the line that was measured."""
    source: Name
    acceptable: bool = True
    """False for what can never be right, which nobody may accept."""
    more_is_worse: bool = False
    """True where the measured value must stay below the required one."""
    cure: Cure | None = None
    """None where nothing simple would do."""

    @property
    def identity(self) -> str:
        return "|".join((self.rule, *self.items, *self.features))


class Acceptance(Record):
    """Somebody's word that a finding may stand, and the measured value they accepted."""

    finding: Name
    """The finding's identity."""
    reason: Annotated[str, Field(min_length=1, max_length=1000)]
    initials: Annotated[str, Field(min_length=1, max_length=10)]
    on: Annotated[str, Field(pattern=r"^\d{4}-\d{2}-\d{2}$")]
    measured: Length | None = None
    geometry: Annotated[str, Field(max_length=64)] = ""
    """Fingerprint of the features or the equipment that the finding names; an acceptance lapses when it changes."""

    @property
    def told(self) -> str:
        """'AB: measured on the aircraft', the person's word as papers tell it."""
        return f"{self.initials}: {self.reason}"
