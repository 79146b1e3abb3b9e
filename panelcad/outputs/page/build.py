"""The owner's page: one HTML file without any network: every option's picture, a slider between two, totals."""

import json
from pathlib import Path

from panelcad.drawing.cautions import BEFORE_CUTTING, BEFORE_FLIGHT
from panelcad.model.project import AS_FOUND, Project
from panelcad.outputs.page.fonts import font_style
from panelcad.outputs.page.pictures import Pictures, pictures, svg_of
from panelcad.outputs.page.words import articles, comparison, instruments, text
from panelcad.outputs.story import Story, stories
from panelcad.store.atomic import write_atomically

_HERE = Path(__file__).parent
_POLICY = "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; img-src data:; font-src data:"
_ALWAYS = "▲▼◀▶–…%\u00a0"


def owner_page(project: Project) -> str:
    """The whole page for a project: the panel as found and every option."""
    options = project.all_options
    told = stories(project)
    shown = pictures(project, options)
    body = _body(project, told, shown)
    letters = "".join(sorted({*body, *_script(), *_ALWAYS} - {"\n"}))
    style = font_style(letters) + shown.style + (_HERE / "page.css").read_text(encoding="utf-8")
    head = (
        f'<!doctype html><html lang="en"><head><meta charset="utf-8"><title>{_title(project)}</title>'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f'<meta http-equiv="Content-Security-Policy" content="{_POLICY}">'
        f'<link rel="icon" href="data:,"><style>{style}</style></head>'
    )
    return f"{head}<body>{body}<script>{_script()}</script></body></html>\n"


def write_owner_page(project: Project, path: Path) -> None:
    """Write the page; the old file stays whole until the new one is complete."""
    write_atomically(path, owner_page(project).encode())


def _script() -> str:
    return (_HERE / "page.js").read_text(encoding="utf-8")


def _title(project: Project) -> str:
    return text(f"A new panel for {project.aircraft.registration}")


def _body(project: Project, told: tuple[Story, ...], shown: Pictures) -> str:
    return (
        '<a class="skip" href="#compare">Skip the picture</a>'
        f"{_header(project)}<main>{_see(told, shown)}"
        f'<section><h2 id="compare">Compare</h2>{comparison(told)}</section>'
        f"<section><h2>What each option does</h2>{articles(told)}</section>"
        f'<section class="handout"><h2>Every instrument in words</h2>{instruments(told)}</section></main>'
        f"{_footer()}{_readings(told)}"
    )


def _header(project: Project) -> str:
    by = f" · prepared by {project.shop}" if project.shop else ""
    return (
        f'<header><h1>{_title(project)}</h1><p class="soft">{text(project.aircraft.type_name + by)}</p>'
        '<p class="caution" role="note"><strong>A planning aid; it approves nothing.</strong> '
        "The pictures show generic instruments. Weights, currents and prices of built-in equipment are invented for "
        "demonstration. Alterations need approved data and the sign-off of a licensed person.</p></header>"
    )


def _see(told: tuple[Story, ...], shown: Pictures) -> str:
    panels = "".join(_panel(shown, each) for each in told)
    first = told[1].option.id if len(told) > 1 else AS_FOUND
    x1, y1, x2, y2 = shown.bounds
    return (
        '<section aria-labelledby="see"><h2 id="see">See it</h2>'
        f"{_controls(told, first)}"
        '<div class="scroll" id="view" tabindex="0" role="region" '
        'aria-label="The panel; when it is larger than the screen, scroll sideways">'
        f'<svg id="shared" width="0" height="0" style="position:absolute" aria-hidden="true">'
        f"<defs>{shown.defs}</defs></svg>"
        f'<div class="stage" id="stage" style="--wipe:50%;aspect-ratio:{(x2 - x1):.1f}/{(y2 - y1):.1f}">'
        f'{panels}<div class="edge" id="edge" aria-hidden="true"></div></div><div id="by-night"></div></div>'
        '<div class="names"><output id="left-name" for="left"></output>'
        '<output id="right-name" for="right"></output></div>'
        '<div class="names flaws"><span class="open" id="left-flaw"></span>'
        '<span class="open" id="right-flaw"></span></div>'
        '<input class="wipe" id="wipe" type="range" min="0" max="100" value="50" '
        'aria-label="Slide between the left and the right panel">'
        '<div id="about" role="status" aria-live="polite"><h3>What is this?</h3>'
        "<p>Tap an instrument, or reach it with the tab key and press Enter, to read what it does.</p></div></section>"
    )


def _controls(told: tuple[Story, ...], first: str) -> str:
    return (
        f'<div class="controls">{_select("left", "Left", told, AS_FOUND)}{_select("right", "Right", told, first)}'
        '<button type="button" id="swap">Swap sides</button>'
        "<fieldset><legend>Light</legend>"
        '<label><input type="radio" name="light" id="day" value="day" checked>Day</label>'
        '<label><input type="radio" name="light" id="night" value="night">Night</label></fieldset>'
        '<button type="button" id="size" aria-pressed="false">Larger</button>'
        '<button type="button" id="print">Print</button></div>'
    )


def _select(name: str, label: str, told: tuple[Story, ...], chosen: str) -> str:
    choices = "".join(
        f'<option value="{s.option.id}"{" selected" if s.option.id == chosen else ""}>{text(s.option.name)}</option>'
        for s in told
    )
    return f'<label for="{name}">{label}<select id="{name}" autocomplete="off">{choices}</select></label>'


def _panel(shown: Pictures, told: Story) -> str:
    """An option's picture; one with open errors says so on the picture itself."""
    flaw = f'<p class="flaw">{text(told.open_errors)}</p>' if told.open_errors and not told.is_as_found else ""
    return (
        f'<figure class="panel" data-option="{told.option.id}">{svg_of(shown, told.option)}{flaw}'
        f"<figcaption>{text(told.option.name)}</figcaption></figure>"
    )


def _footer() -> str:
    cautions = "".join(f"<li>{text(line)}</li>" for line in (*BEFORE_CUTTING[1:], *BEFORE_FLIGHT))
    return f"<footer><h2>Before anything is cut, and before the first flight</h2><ul>{cautions}</ul></footer>"


def _readings(told: tuple[Story, ...]) -> str:
    table = {each.option.id: {r.item: r.text for r in each.instruments} for each in told}
    data = json.dumps(table, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
    return f'<script type="application/json" id="readings">{data}</script>'
