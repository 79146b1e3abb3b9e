"""The plates of an option that are worked on, some of them chosen, and how a paper says that it is of some only."""

from collections.abc import Iterable

from panelcad.errors import UnknownName, UnusableInput
from panelcad.model.plate import Plate, PlateState
from panelcad.model.project import Option


def worked_plates(option: Option) -> tuple[Plate, ...]:
    """The plates that are made or reworked: those that get a cutting file."""
    return tuple(plate for plate in option.plates if plate.state is not PlateState.KEPT)


def chosen_plates(option: Option, names: Iterable[str]) -> tuple[Plate, ...]:
    """The worked plates with these ids or names, in the option's order; all of them where none is named.

    Raises `UnknownName`, and `UnusableInput` for a plate on which nothing is cut.
    """
    worked = worked_plates(option)
    wanted = {_plate(option, name).id for name in names}
    return tuple(plate for plate in worked if plate.id in wanted) if wanted else worked


def part_text(option: Option, shown: Iterable[Plate]) -> str:
    """'plate sub-panel only, without panel'; empty where all plates of the option that are worked on are shown."""
    there = [plate.id for plate in shown]
    absent = [plate.id for plate in worked_plates(option) if plate.id not in there]
    if not absent:
        return ""
    plates = "plate" if len(there) == 1 else "plates"
    return f"{plates} {', '.join(there)} only, without {', '.join(absent)}"


def _plate(option: Option, name: str) -> Plate:
    worked = worked_plates(option)
    for plate in option.plates:
        if name.lower() in {plate.id.lower(), plate.name.lower()}:
            if plate in worked:
                return plate
            expected = f"one of the plates that are cut: {', '.join(each.id for each in worked)}"
            raise UnusableInput("", f"plate '{plate.name}'", "it is kept, so nothing is cut in it", expected)
    raise UnknownName(
        f"plate of option '{option.name}' that is cut", name, tuple(each.id for each in worked), all_told=True
    )
