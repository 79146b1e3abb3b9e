"""The page's words: comparison table, what each option does, what each instrument is for."""

from collections.abc import Callable, Iterable
from html import escape
from typing import Final

from panelcad.model.function import Function
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
    rows = [_row(name, [f'<td class="number">{of(story)}</td>' for story in stories]) for name, of in _FIRST]
    for i, (title, _) in enumerate(stories[0].figures):
        rows.append(_row(title, [f'<td class="number">{text(story.figures[i][1])}</td>' for story in stories]))
    return "".join(rows)


def _row(name: str, cells: Iterable[str]) -> str:
    return f'<tr><th scope="row">{text(name)}</th>{"".join(cells)}</tr>'


def _fit(story: Story) -> str:
    if story.is_as_found:
        return "as it is"
    return _open(story.cut_errors, "not to be cut as drawn")


def _plan(story: Story) -> str:
    return _open(story.plan_errors, "see figures below" if story.is_as_found else "not ready")


def _open(count: int, meaning: str) -> str:
    if not count:
        return "no error open"
    noun = "error" if count == 1 else "errors"
    return f'<span class="open">{count} {noun} open: {meaning}</span>'


_FIRST: Final[tuple[Row, ...]] = (
    ("Price", lambda story: text(story.price)),
    ("Added", lambda story: "–" if story.is_as_found else str(len(story.adds))),
    ("Taken out", lambda story: "–" if story.is_as_found else str(len(story.takes_out))),
    ("Fit", _fit),
    ("Plan", _plan),
)


def _functions(stories: tuple[Story, ...]) -> str:
    named = [function for function in Function if any(function in story.functions for story in stories)]
    return "".join(_row(_capital(function.value), _counts(stories, function)) for function in named)


def _counts(stories: tuple[Story, ...], function: Function) -> list[str]:
    base = next((story.functions.get(function, 0) for story in stories if story.is_as_found), 0)
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
    return f'<div class="options">{"".join(_article(s) for s in stories if not s.is_as_found)}</div>'


def _article(story: Story) -> str:
    says = "".join(f"<p>{text(sentence)}</p>" for sentence in story.says)
    return (
        f"<article><h3>{text(story.option.name)}</h3>"
        f"<p>{text(story.option.summary)}</p>{says}"
        f"{_list('Adds', story.adds)}{_small(story)}{_list('Takes out', story.takes_out)}{_prices(story)}"
        f"<p>Fit: {_fit(story)}. Plan: {_plan(story)}.</p>"
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
    return f"<table><tbody>{rows}</tbody></table>"


def instruments(stories: tuple[Story, ...]) -> str:
    """A list of every option's instruments, for those who read rather than look."""
    return "".join(_details(story) for story in stories)


def _details(story: Story) -> str:
    pairs = "".join(f"<dt>{text(r.name)}</dt><dd>{text(r.text)}</dd>" for r in story.instruments)
    return f"<details><summary>{text(story.option.name)}</summary><dl>{pairs}</dl></details>"
