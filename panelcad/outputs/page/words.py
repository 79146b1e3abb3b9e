"""The page's words: comparison table, what each option does, what each instrument is for."""

from collections.abc import Callable
from html import escape
from typing import Final

from panelcad.model.function import Function
from panelcad.outputs.story import Story

_NOT_KNOWN: Final = "Single failures are not known: the kind of flight is not stated."


def text(value: str) -> str:
    return escape(value, quote=True)


def comparison(stories: tuple[Story, ...]) -> str:
    """One column an option: totals first, then every function with the number of independent sources."""
    heads = "".join(f'<th scope="col">{text(story.option.name)}</th>' for story in stories)
    return (
        '<p class="soft" id="counts">A number beside a function says how many sources of it work; those that one '
        "failure takes away together count as one, 0 is none. "
        "Arithmetic on what was entered; unknown is never safe.</p>"
        '<div class="controls"><label class="tick"><input type="checkbox" id="differs" autocomplete="off">'
        'Only what differs</label><span class="swipe">◀ Swipe the table sideways for all options ▶</span></div>'
        '<div class="scroll" tabindex="0" role="region" aria-labelledby="compare">'
        '<table class="compared" aria-labelledby="compare" aria-describedby="counts">'
        f'<thead><tr><th scope="col"><span class="soft">Compared</span></th>{heads}</tr></thead>'
        f"<tbody>{_totals(stories)}{_functions(stories)}</tbody></table></div>"
    )


def _totals(stories: tuple[Story, ...]) -> str:
    rows = [_row(name, [f'<td class="number">{of(story)}</td>' for story in stories]) for name, of in _FIRST]
    for i, (title, _) in enumerate(stories[0].figures):
        rows.append(_row(title, [f'<td class="number">{text(story.figures[i][1])}</td>' for story in stories]))
    return "".join(rows)


def _row(name: str, cells: list[str]) -> str:
    """A row; one in which the options are alike says so, for those who look only for what differs."""
    same = ' class="same"' if len(set(cells)) == 1 else ""
    return f'<tr{same}><th scope="row">{text(name)}</th>{"".join(cells)}</tr>'


def _errors(story: Story) -> str:
    if not story.open_errors:
        return "none open"
    return f'<a class="open" href="#about-{story.option.id}">{text(story.open_errors)}</a>'


_FIRST: Final[tuple[tuple[str, Callable[[Story], str]], ...]] = (
    ("Price", lambda story: text(story.price)),
    ("Added", lambda story: "–" if story.is_as_found else str(len(story.adds))),
    ("Taken out", lambda story: "–" if story.is_as_found else str(len(story.takes_out))),
    ("Errors", _errors),
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
    """What each option adds and takes out, its price in lines, and all that stands against it, sentence by sentence."""
    return f'<div class="options">{"".join(_article(s) for s in stories)}</div>'


def _article(story: Story) -> str:
    says = "".join(f"<p>{text(sentence)}</p>" for sentence in story.says)
    return (
        f'<article id="about-{story.option.id}"><h3>{text(story.option.name)}</h3>'
        f"<p>{text(story.option.summary)}</p>{_against(story)}{says}"
        f"{_list('Adds', story.adds)}{_small(story)}{_list('Takes out', story.takes_out)}{_prices(story)}"
        f'<p class="soft">Mark of this layout: <code>{story.fingerprint}</code>. It changes with every change of the '
        "geometry, and proves that what is cut is what was chosen.</p></article>"
    )


def _against(story: Story) -> str:
    """Every open error and every single failure that leaves too little."""
    errors = _list(story.open_errors, (*story.fit_errors, *story.plan_errors), "open")
    if story.failures:
        return errors + _list("Single failures that leave too little", story.failures)
    known = "No single failure leaves less than the flight needs." if story.failures_known else _NOT_KNOWN
    return f"{errors}<p>{known}</p>"


def _list(title: str, names: tuple[str, ...], kind: str = "plain") -> str:
    if not names:
        return ""
    return f"<h4 class='{kind}'>{text(title)}</h4><ul>{''.join(f'<li>{text(name)}</li>' for name in names)}</ul>"


def _small(story: Story) -> str:
    if not story.small_added:
        return ""
    return f"<p>And small parts: {text('; '.join(story.small_added))}.</p>"


def _prices(story: Story) -> str:
    if story.is_as_found:
        return ""
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
