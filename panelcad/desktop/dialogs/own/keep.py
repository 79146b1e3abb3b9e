"""Write a cutout into the user's own library, or take one out of it; the file is replaced whole."""

from panelcad.errors import UnusableInput
from panelcad.library.own import own_file, with_own, without_own
from panelcad.model.cutout import Cutout
from panelcad.store.atomic import write_atomically


def keep_cutout(cutout: Cutout) -> None:
    """Add it, or put it in the place of the one of its name. Raises `UnusableInput`."""
    file = own_file(cutout.unit)
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        write_atomically(file, with_own(cutout, file))
    except OSError as error:
        raise UnusableInput(
            str(file), "", f"it cannot be written ({error.strerror})", "a folder one may write in"
        ) from error


def forget_cutout(cutout: Cutout) -> None:
    """Take it out of the user's library. Raises `UnknownName`, `UnusableInput`."""
    file = own_file(cutout.unit)
    content = without_own(cutout.name, file)
    try:
        if content is None:
            file.unlink(missing_ok=True)
        else:
            write_atomically(file, content)
    except OSError as error:
        raise UnusableInput(
            str(file), "", f"it cannot be written ({error.strerror})", "a folder one may write in"
        ) from error
