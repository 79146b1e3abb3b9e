"""What the metal holds fast: cuts that are already made cannot move, and a kept plate is not touched."""

from collections.abc import Collection
from operator import attrgetter

from panelcad.editing.seats import seats
from panelcad.errors import EditRefused
from panelcad.model.plate import AttachScrew, Cut, CutState, Plate, PlateState
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
    known = seats(project, option)
    for seat in sorted((known[one] for one in ids if one in known), key=attrgetter("number")):
        if seat.plate is not None and isinstance(seat.thing, Cut):
            _refuse_made(option, seat.plate, seat.thing)
        elif seat.plate is not None and isinstance(seat.thing, AttachScrew):
            _refuse_old_screw(project, option, seat.plate, seat.thing)


def _refuse_made(option: Option, plate: Plate, cut: Cut) -> None:
    if is_made(option, plate, cut):
        raise EditRefused(
            f"The cut '{cut.name}' is already in the metal of plate '{plate.name}' and cannot move; "
            f"make the plate new, or place another cut."
        )


def refuse_locked(option: Option, ids: Collection[str]) -> None:
    """Raises `EditRefused` where one of these is locked."""
    for one in option.locked:
        if one in ids:
            raise EditRefused(f"'{_called(option, one)}' is locked; unlock it first.")


def _called(option: Option, part_id: str) -> str:
    """What people call an item or a cut; the id of what has no name of its own."""
    cuts = {cut.id: cut.name for plate in option.plates for cut in plate.cuts}
    items = {item.id: item.name for item in option.items}
    return (cuts | items).get(part_id, part_id)


def refuse_kept(option: Option, plate: Plate) -> None:
    """Raises `EditRefused` where the plate is kept as it is."""
    if option.id != AS_FOUND and plate.state is PlateState.KEPT:
        raise EditRefused(f"Plate '{plate.name}' is kept as it is; call it reworked or new before changing its metal.")


def _refuse_old_screw(project: Project, option: Option, plate: Plate, screw: AttachScrew) -> None:
    if option.id == AS_FOUND or plate.state is PlateState.NEW:
        return
    found = {old for before in project.as_found.plates if before.id == plate.id for old in before.attach_screws}
    if plate.state is PlateState.KEPT or screw in found:
        raise EditRefused(
            f"The attach screw '{screw.id}' is already in the metal of plate '{plate.name}' and cannot move; "
            f"make the plate new first."
        )
