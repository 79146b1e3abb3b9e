"""What the metal holds fast: cuts that are already made cannot move, and a kept plate is not touched."""

from collections.abc import Collection

from panelcad.errors import EditRefused
from panelcad.model.plate import Cut, CutState, Plate, PlateState
from panelcad.model.project import AS_FOUND, Option, Project


def is_made(option: Option, plate: Plate, cut: Cut) -> bool:
    """Whether the cut is already in the metal. The panel as found is a record of measurements and may be corrected."""
    if option.id == AS_FOUND or plate.state is PlateState.NEW:
        return False
    return plate.state is PlateState.KEPT or cut.state is not CutState.NEW


def new_cut_state(option: Option) -> CutState:
    """What is entered into the panel as found is metal already cut."""
    return CutState.EXISTING if option.id == AS_FOUND else CutState.NEW


def refuse_fixed(project: Project, option: Option, ids: Collection[str]) -> None:
    """Raises `EditRefused` where one of these is locked, or held fast by metal that is already cut."""
    refuse_locked(option, ids)
    for plate in option.plates:
        for cut in plate.cuts:
            if cut.id in ids and is_made(option, plate, cut):
                raise EditRefused(
                    f"The cut '{cut.name}' is already in the metal of plate '{plate.name}' and cannot move; "
                    f"make the plate new, or place another cut."
                )
        _refuse_old_screws(project, option, plate, ids)


def refuse_locked(option: Option, ids: Collection[str]) -> None:
    """Raises `EditRefused` where one of these is locked."""
    for one in option.locked:
        if one in ids:
            raise EditRefused(f"'{one}' is locked; unlock it first.")


def refuse_kept(option: Option, plate: Plate) -> None:
    """Raises `EditRefused` where the plate is kept as it is."""
    if option.id != AS_FOUND and plate.state is PlateState.KEPT:
        raise EditRefused(f"Plate '{plate.name}' is kept as it is; call it reworked or new before changing its metal.")


def _refuse_old_screws(project: Project, option: Option, plate: Plate, ids: Collection[str]) -> None:
    if option.id == AS_FOUND or plate.state is PlateState.NEW:
        return
    found = {screw for old in project.as_found.plates if old.id == plate.id for screw in old.attach_screws}
    for screw in plate.attach_screws:
        if screw.id in ids and (plate.state is PlateState.KEPT or screw in found):
            raise EditRefused(
                f"The attach screw '{screw.id}' is already in the metal of plate '{plate.name}' and cannot move; "
                f"make the plate new first."
            )
