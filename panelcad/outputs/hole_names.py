"""Holes by the number they bear on the papers, with the name of what they are for beside it."""

from collections.abc import Iterable, Iterator

from panelcad.drawing.number_runs import runs
from panelcad.drawing.numbering import numbering, sort_key
from panelcad.model.layout import Feature, FeatureKind, Layout


class HoleNames:
    """The numbers and names of an option's contours by their ids."""

    def __init__(self, laid: Layout) -> None:
        self._numbers = numbering(laid).features
        self._names = dict(_names(laid))
        self._edges = {plate.plate.id: plate.plate.name for plate in laid.plates}

    def number(self, feature: str) -> str:
        """'11.3', 'S2'; of a plate's id 'the outline'."""
        if feature in self._edges:
            return "the outline" if len(self._edges) == 1 else f"the outline of {self._edges[feature]}"
        return self._numbers.get(feature, feature)

    def named(self, feature: str) -> str:
        """'hole 11.3 (Altimeter: mounting screw)'; of a plate's id 'the outline'; anything else as it is."""
        if feature not in self._names:
            return self.number(feature)
        return f"hole {self._numbers[feature]} ({self._names[feature]})"

    def listed(self, features: Iterable[str]) -> str:
        """The numbers in the schedule's order, runs drawn together: '1, 4.1 to 4.4, S1 to S16'."""
        found = {self.number(feature) for feature in features}
        edges = sorted(number for number in found if number.startswith("the "))
        return ", ".join([*edges, *runs(sorted(found - set(edges), key=sort_key))])


def _names(laid: Layout) -> Iterator[tuple[str, str]]:
    for plate in laid.plates:
        yield from ((feature.id, feature.purpose) for feature in plate.inner)
        yield from ((feature.id, _screw(feature)) for feature in plate.attach)
        for placed in plate.cuts:
            yield from ((feature.id, f"{placed.cut.name}: {feature.purpose}") for feature in placed.features)


def _screw(feature: Feature) -> str:
    return "attach screw's rivet" if feature.kind is FeatureKind.RIVET else "attach screw"
