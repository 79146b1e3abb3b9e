"""Words on what was left out of a copy, and why."""

from collections.abc import Collection

from panelcad.model.project import Option


def left_out_words(option: Option, behind: Collection[str]) -> str:
    """', left out: …' for the ids that a copy does not hold; '' where it holds all."""
    measures = sum(dimension.id in behind for dimension in option.dimensions)
    around = len(behind) - measures
    reasons = []
    if measures:
        reasons.append(f"{_counted(measures, 'dimension')} to what is not copied too")
    if around:
        reasons.append(f"{_counted(around, 'thing')} that {'stands' if around == 1 else 'stand'} around the panel")
    return f", left out: {' and '.join(reasons)}" if reasons else ""


def _counted(count: int, name: str) -> str:
    return f"{count} {name}{'' if count == 1 else 's'}"
