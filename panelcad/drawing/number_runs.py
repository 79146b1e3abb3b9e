"""Numbers of a series drawn together: 4.1, 4.2, 4.3 as '4.1 to 4.3'."""

from collections.abc import Iterator

from panelcad.drawing.numbering import sort_key


def runs(numbers: list[str]) -> Iterator[str]:
    """Three or more in a row as 'first to last'."""
    run: list[str] = []
    for number in numbers:
        if run and not _follows(run[-1], number):
            yield from _run(run)
            run = []
        run.append(number)
    yield from _run(run)


def _run(run: list[str]) -> list[str]:
    return [f"{run[0]} to {run[-1]}"] if len(run) > 2 else run


def _follows(one: str, other: str) -> bool:
    (letter, parts), (other_letter, other_parts) = sort_key(one), sort_key(other)
    same_series = (letter, parts[:-1], len(parts)) == (other_letter, other_parts[:-1], len(other_parts))
    return same_series and other_parts[-1] == parts[-1] + 1
