"""The page's words: comparison table, what each option does, what each instrument is for."""

from collections.abc import Callable, Iterable
from html import escape
from typing import Final

from panelcad.model.function import Function
from panelcad.model.project import AS_FOUND
from panelcad.outputs.story import Story

Row = tuple[str, Callable[[Story], str]]


def text(value: str) -> str:
    return escape(value, quote=True)


def comparison(stories: tuple[Story, ...]) -> str:
    """One column an option: totals first, then every function with the number of independent sources."""
    heads = "".join(f'<th scope="col">{text(story.option.name)}</th>' for story in stories)
    return (
        '<p class="soft" id="counts">Numbers are independent sources of a function; 0 is none. Arithmetic on what was '
        "entered; unknown is never safe.</p>"
        '<div class="scroll" tabindex="0" role="region" aria-labelledby="compare">'
        '<table aria-labelledby="compare" aria-describedby="counts">'
        f'<thead><tr><th scope="col"><span class="soft">Compared</span></th>{heads}</tr></thead>'
        f"<tbody>{_totals(stories)}{_functions(stories)}</tbody></table></div>"
    )


def _totals(stories: tuple[Story, ...]) -> str:
    return "".join(_row(name, [f'<td class="number">{of(story)}</td>' for story in stories]) for name, of in _TOTALS)


def _row(name: str, cells: Iterable[str]) -> str:
    return f'<tr><th scope="row">{text(name)}</th>{"".join(cells)}</tr>'


def _checks(story: Story) -> str:
    if not story.open_errors:
        return "no error open"
    noun = "error" if story.open_errors == 1 else "errors"
    return f'<span class="open">{story.open_errors} {noun} open: not to be cut as drawn</span>'


_TOTALS: Final[tuple[Row, ...]] = (
    ("Price", lambda story: text(story.price)),
    ("Empty weight", lambda story: text(story.weight)),
    ("Electrical load", lambda story: text(story.load)),
    ("Added", lambda story: str(len(story.adds)) if story.option.id != AS_FOUND else "–"),
    ("Taken out", lambda story: str(len(story.takes_out)) if story.option.id != AS_FOUND else "–"),
    ("Fit", _checks),
)


def _functions(stories: tuple[Story, ...]) -> str:
    named = [function for function in Function if any(function in story.functions for story in stories)]
    return "".join(_row(_capital(function.value), _counts(stories, function)) for function in named)


def _counts(stories: tuple[Story, ...], function: Function) -> list[str]:
    base = next((story.functions.get(function, 0) for story in stories if story.option.id == AS_FOUND), 0)
    return [_count(story.functions.get(function, 0), base) for story in stories]


def _count(now: int, base: int) -> str:
    if now == base:
        return f'<td class="number">{now}</td>'
    kind, sign = ("more", "▲ more") if now > base else ("less", "▼ less")
    return f'<td class="number"><span class="{kind}">{now} {sign}</span></td>'


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def articles(stories: tuple[Story, ...]) -> str:
    """What each option adds and takes out, and its price in lines."""
    return f'<div class="options">{"".join(_article(s) for s in stories if s.option.id != AS_FOUND)}</div>'


def _article(story: Story) -> str:
    return (
        f"<article><h3>{text(story.option.name)}</h3>"
        f"<p>{text(story.option.summary)}</p>"
        f"{_list('Adds', story.adds)}{_small(story)}{_list('Takes out', story.takes_out)}{_prices(story)}"
        f"<p>{_checks(story)}</p>"
        f'<p class="soft">Fingerprint <code>{story.fingerprint}</code></p></article>'
    )


def _list(title: str, names: tuple[str, ...]) -> str:
    if not names:
        return ""
    return f"<h4>{title}</h4><ul>{''.join(f'<li>{text(name)}</li>' for name in names)}</ul>"


def _small(story: Story) -> str:
    if not story.small_added:
        return ""
    return f"<p>and {story.small_added} switches, breakers, lamps, jacks or blanks.</p>"


def _prices(story: Story) -> str:
    if not story.price_lines:
        return f"<p>Price: {text(story.price)}.</p>"
    rows = "".join(f'<tr><th scope="row">{text(n)}</th><td>{text(amount)}</td></tr>' for n, amount in story.price_lines)
    more = "" if story.price.startswith(story.price_lines[-1][1]) else f"<p>Price: {text(story.price)}.</p>"
    return f"<table><tbody>{rows}</tbody></table>{more}"


def instruments(stories: tuple[Story, ...]) -> str:
    """A list of every option's instruments, for those who read rather than look."""
    return "".join(_details(story) for story in stories)


def _details(story: Story) -> str:
    pairs = "".join(f"<dt>{text(r.name)}</dt><dd>{text(r.text)}</dd>" for r in story.instruments)
    return f"<details><summary>{text(story.option.name)}</summary><dl>{pairs}</dl></details>"
