"""What a person may choose about a cutting file."""

from dataclasses import dataclass
from enum import StrEnum

from panelcad.model.profile import Profile
from panelcad.model.revision import Stamp
from panelcad.units import LengthUnit, format_exact


class DxfVersion(StrEnum):
    """By the release that introduced it."""

    R12 = "R12"
    R2000 = "R2000"
    R2010 = "R2010"
    R2018 = "R2018"


class Content(StrEnum):
    """What may be left out of a file. The outline always goes with the cuts."""

    CUTS = "cuts"
    DRILLS = "drills"
    ENGRAVING = "engraving"
    REFERENCE = "reference"


class Origin(StrEnum):
    DATUM = "datum"
    LOWER_LEFT = "lower left corner"


class FaceUp(StrEnum):
    """The face the machinist looks at; the back is the front mirrored left to right."""

    FRONT = "front"
    BACK = "back"


class SmallHoles(StrEnum):
    """How holes below the profile's smallest cut are shown."""

    CIRCLES = "circles"
    CENTRE_MARKS = "centre marks"


class CornerRelief(StrEnum):
    """What is done where an inside corner is too tight for the profile's cutter."""

    NONE = "none"
    ROUND = "round"


class LeadIns(StrEnum):
    """Whether a point in the scrap beside each contour says where the cutter may plunge."""

    NONE = "none"
    POINTS = "points"


EVERYTHING = frozenset(Content)


@dataclass(frozen=True)
class DxfOptions:
    """`unit` None is the project's; `stamp` None is what the release log says of the option as it stands."""

    version: DxfVersion = DxfVersion.R2010
    unit: LengthUnit | None = None
    content: frozenset[Content] = EVERYTHING
    origin: Origin = Origin.DATUM
    face_up: FaceUp = FaceUp.FRONT
    small_holes: SmallHoles = SmallHoles.CIRCLES
    corner_relief: CornerRelief = CornerRelief.NONE
    lead_ins: LeadIns = LeadIns.NONE
    cutter: float | None = None
    """The cutter's diameter in mm; None for the profile's."""
    stamp: Stamp | None = None
    around: tuple[str, ...] = ()
    """The ids of the only cuts, for a trial piece in scrap (`outputs.trial_piece`); none for the plate itself."""

    @property
    def written(self) -> frozenset[Content]:
        """The content that is written: lettering is on the front face, so not where the back is up."""
        return self.content - {Content.ENGRAVING} if self.face_up is FaceUp.BACK else self.content

    @property
    def left_out(self) -> tuple[Content, ...]:
        """What is left out by choice."""
        return tuple(each for each in Content if each not in self.content)

    def cutter_of(self, profile: Profile) -> float:
        """Diameter in mm of the cutter that reliefs and lead-ins are made for."""
        return profile.cutter_diameter if self.cutter is None else self.cutter

    def cutter_text(self, profile: Profile, unit: LengthUnit) -> str:
        """The cutter's diameter to the nanometre, so that verifying makes the same relief again.

        Such as '0.125 in'; in the other unit where that is shorter: '1 mm', not '0.03937008 in'.
        """
        diameter = self.cutter_of(profile)
        units = sorted(LengthUnit, key=lambda each: (len(format_exact(diameter, each)), each is not unit))
        return f"{format_exact(diameter, units[0])} {units[0].value}"
