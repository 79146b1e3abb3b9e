"""Every error panelcad raises on purpose.

PanelcadError
├── UnusableInput (ValueError)      a file or a typed value cannot be used
│   └── UnreadableQuantity          typed text is not a quantity
├── UnknownName (LookupError)       nothing bears that name
├── EditRefused (ValueError)        an edit would break the project
├── ReleaseRefused                  the option may not leave the shop yet
└── ChangedOnDisk                   the file holds something else by now
"""

from collections.abc import Iterable


class PanelcadError(Exception):
    """One clear sentence for the person at the bench; `str(error)` is that sentence."""


class UnusableInput(PanelcadError, ValueError):
    """Say which file, where in it, what is wrong and what is expected."""

    def __init__(self, source: str, place: str, problem: str, expected: str = "") -> None:
        self.source = source
        self.place = place
        self.problem = problem
        self.expected = expected
        super().__init__(self._sentence())

    def _sentence(self) -> str:
        where = ", ".join(part for part in (self.source, self.place) if part)
        tail = f"; expected {self.expected}" if self.expected else ""
        return f"{where}: {self.problem}{tail}." if where else f"{self.problem}{tail}."


class UnreadableQuantity(UnusableInput):
    """Typed text that is no length, angle or other quantity."""

    def __init__(self, text: str, expected: str, field: str = "") -> None:
        self.text = text
        super().__init__("", field, f"'{text}' cannot be read", expected)

    def of(self, field: str) -> "UnreadableQuantity":
        """The same, naming the field it was typed into."""
        return UnreadableQuantity(self.text, self.expected, field)


class UnknownName(PanelcadError, LookupError):
    """Nothing of that kind bears that name; the nearest names are offered, or `all_told` of them."""

    def __init__(self, kind: str, name: str, known: tuple[str, ...] = (), *, all_told: bool = False) -> None:
        self.kind = kind
        self.name = name
        self.known = known
        offered = _listed(known) if all_told else _nearest(name, known)
        super().__init__(f"There is no {kind} '{name}'{offered}.")


class EditRefused(PanelcadError, ValueError):
    """The edit would leave a project that cannot be."""


class ReleaseRefused(PanelcadError):
    """The option may not leave the shop yet; says why."""


class ChangedOnDisk(PanelcadError):
    """Saving would overwrite what another program or another window has written since."""

    def __init__(self, source: str) -> None:
        self.source = source
        super().__init__(f"{source}: it was changed by another program or window since it was opened here.")


def _nearest(name: str, known: tuple[str, ...]) -> str:
    from difflib import get_close_matches  # noqa: PLC0415 - only needed when something went wrong

    close = get_close_matches(name, known, n=3, cutoff=0.4) or known[:8]
    return _listed(close)


def _listed(names: Iterable[str]) -> str:
    listed = ", ".join(map(repr, names))
    return f"; there is {listed}" if listed else ""
