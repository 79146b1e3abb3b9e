"""What a rule about one part or one pair may know besides them: nothing that moves with an item."""

from dataclasses import dataclass

from panelcad.geometry.contour import Contour
from panelcad.model.plate import Plate
from panelcad.model.profile import Profile
from panelcad.model.surroundings import Surroundings


@dataclass(frozen=True, eq=False)
class Setting:
    """The sheet without its cuts and items, the limits, and what stands around it.

    Rules about parts and pairs read no cuts or screws of `plate`: a live check would not see them change.
    """

    plate: Plate
    outline: Contour
    profile: Profile
    surroundings: Surroundings

    @property
    def thickness(self) -> float:
        return self.plate.thickness

    @property
    def web_least(self) -> float:
        return self.profile.web_least_thicknesses * self.thickness

    @property
    def outline_least(self) -> float:
        return self.profile.outline_least_thicknesses * self.thickness

    def is_same(self, other: "Setting") -> bool:
        """Whether nothing but cuts, screws, items and lettering changed."""
        if self.profile != other.profile or self.surroundings != other.surroundings:
            return False
        fields = set(Plate.model_fields) - _APART
        return all(getattr(self.plate, name) == getattr(other.plate, name) for name in fields)


_APART = {"cuts", "attach_screws", "inner_openings", "engravings", "notes"}
