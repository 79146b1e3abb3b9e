"""The owner's page in a real browser: every control, no network, no error, readable small and large."""

import re

import pytest

from panelcad.library.samples import sample_file
from panelcad.model.project import Project
from panelcad.outputs.page.build import owner_page, write_owner_page
from panelcad.store.project_file import load
from tests.drawing.panels import small_panel
from tests.outputs.browser import CONTRASTS, chromium, requests, resize

LARGEST_BYTES = 1_500_000


@pytest.fixture(scope="module")
def project() -> Project:
    return load(sample_file("tourer"))


@pytest.fixture(scope="module")
def file(project, tmp_path_factory):
    path = tmp_path_factory.mktemp("page with blanks and ümlauts") / "owner.html"
    write_owner_page(project, path)
    return path


@pytest.fixture(scope="module")
def browser(file):
    folder = file.parent
    with chromium(folder / "profile") as driver:
        driver.get((folder / "owner.html").as_uri())
        yield driver


@pytest.fixture
def page(browser):
    browser.refresh()
    resize(browser, 1280, 900)
    return browser


def _value(page, script):
    return page.execute_script(f"return {script}")


def _shown(page, side):
    return _value(page, f"document.querySelector('.panel.{side}').dataset.option")


def _press(page, selector, key):
    page.find_element("css selector", selector).send_keys(key)


def test_nothing_leaves_the_page_and_nothing_fails(page):
    page.find_element("id", "night").click()
    page.find_element("id", "swap").click()

    assert requests(page) == []
    assert page.get_log("browser") == []


def test_it_starts_with_as_found_beside_the_first_option(page, project):
    assert (_shown(page, "left"), _shown(page, "right")) == ("as-found", project.options[0].id)


@pytest.mark.parametrize("side", ["left", "right"])
def test_each_side_shows_every_option(page, project, side):
    for option in project.all_options:
        page.execute_script(
            "const s = document.getElementById(arguments[0]); s.value = arguments[1];"
            "s.dispatchEvent(new Event('change'))",
            side,
            option.id,
        )
        assert _shown(page, side) == option.id
        assert option.name in page.find_element("id", f"{side}-name").text


def test_slider_moves_by_keyboard(page):
    from selenium.webdriver.common.keys import Keys

    _press(page, "#wipe", Keys.HOME)
    assert _value(page, "document.getElementById('stage').style.getPropertyValue('--wipe')") == "0%"
    _press(page, "#wipe", Keys.ARROW_RIGHT)
    assert _value(page, "document.getElementById('stage').style.getPropertyValue('--wipe')") == "1%"
    assert "As found" in page.find_element("id", "wipe").get_attribute("aria-valuetext")


def test_slider_moves_by_pointer(page):
    from selenium.webdriver import ActionChains

    edge = page.find_element("id", "edge")
    ActionChains(page).click_and_hold(edge).move_by_offset(200, 0).release().perform()

    assert 60 <= int(page.find_element("id", "wipe").get_attribute("value")) <= 72


def test_the_slider_hides_one_side(page):
    """At the left end the as found panel takes no clicks: the option's instruments answer everywhere."""
    from selenium.webdriver.common.keys import Keys

    _press(page, "#wipe", Keys.HOME)
    hit = (
        "(() => { const b = document.getElementById('stage').getBoundingClientRect();"
        "const e = document.elementFromPoint(b.left + 0.17 * b.width, b.top + 0.4 * b.height);"
        "return e.closest('.panel').dataset.option })()"
    )

    assert _value(page, hit) == _shown(page, "right")


def test_swap_sides(page):
    before = (_shown(page, "left"), _shown(page, "right"))
    page.find_element("id", "swap").click()

    assert (_shown(page, "right"), _shown(page, "left")) == before


def test_night_darkens_the_picture_and_day_brings_it_back(page):
    sheet = "getComputedStyle(document.documentElement).getPropertyValue('--0')"
    day = _value(page, sheet)
    page.find_element("id", "night").click()
    night = _value(page, sheet)
    page.find_element("id", "day").click()

    assert night != day
    assert _value(page, sheet) == day


def test_tap_tells_what_an_instrument_does(page):
    item = page.find_element("css selector", ".panel.left [data-item='airspeed']")
    page.execute_script("arguments[0].dispatchEvent(new MouseEvent('click', {bubbles: true}))", item)

    about = page.find_element("id", "about").text
    assert "Airspeed indicator" in about
    assert "never exceeded" in about


def test_enter_tells_what_an_instrument_does(page):
    from selenium.webdriver.common.keys import Keys

    page.execute_script("document.querySelector(\".panel.left [data-item='altimeter']\").focus()")
    page.switch_to.active_element.send_keys(Keys.ENTER)

    assert "Height above sea level" in page.find_element("id", "about").text


def test_every_instrument_is_named_and_has_words(page):
    silent = _value(
        page,
        "(() => { const words = JSON.parse(document.getElementById('readings').textContent);"
        "return [...document.querySelectorAll('.item')].filter(i => !i.getAttribute('aria-label')"
        " || !words[i.closest('.panel').dataset.option][i.dataset.item]).length })()",
    )

    assert silent == 0
    assert _value(page, "document.querySelectorAll('.item').length") > 150


def test_picture_fits_a_phone_and_grows(page):
    resize(page, 360, 800)
    wide = "document.getElementById('stage').getBoundingClientRect().width"
    fits = _value(page, wide)
    page.find_element("id", "size").click()

    assert fits < 360
    assert _value(page, wide) > 900
    assert page.find_element("id", "size").get_attribute("aria-pressed") == "true"
    assert _value(page, "document.documentElement.scrollWidth") <= 360


def test_larger_keeps_the_line_in_sight(page):
    page.find_element("id", "size").click()
    where = _value(
        page,
        "(() => { const v = document.getElementById('view').getBoundingClientRect();"
        "const e = document.getElementById('edge').getBoundingClientRect();"
        "return (e.left + e.width / 2 - v.left) / v.width })()",
    )

    assert 0.4 < where < 0.6


def _tap(page, item):
    chosen = page.find_element("css selector", f".panel.left [data-item='{item}']")
    page.execute_script("arguments[0].dispatchEvent(new MouseEvent('click', {bubbles: true}))", chosen)


def test_frame_lies_on_the_chosen_instrument_above_all_else(page):
    _tap(page, "airspeed")
    _tap(page, "altimeter")
    frames = _value(page, "document.querySelectorAll('.frame').length")
    last = _value(page, "document.querySelector('.panel.left svg').lastElementChild.classList.contains('frame')")
    under, width = _value(
        page,
        "(() => { const f = document.querySelector('.frame');"
        "f.scrollIntoView({block: 'center'}); const c = f.getBoundingClientRect();"
        "const e = document.elementFromPoint(c.left + c.width / 2, c.top + c.height / 2);"
        "return [e.closest('.item').dataset.item, f.getBBox().width] })()",
    )

    assert (frames, last, under) == (1, True, "altimeter")
    assert width == pytest.approx(83.3, abs=2.0), "a face of a 3 1/8 in instrument, in mm"


@pytest.mark.parametrize(("width", "height"), [(360, 700), (1366, 768)])
def test_answer_to_a_tap_is_in_sight(page, width, height):
    resize(page, width, height)
    page.execute_script("document.getElementById('see').scrollIntoView()")
    _tap(page, "airspeed")
    box = _value(page, "document.getElementById('about').getBoundingClientRect().toJSON()")

    assert box["top"] >= 0
    assert box["bottom"] <= height + 1


def test_names_and_arrows_stay_together(page):
    names = [_value(page, f"document.getElementById('{side}-name').textContent") for side in ("left", "right")]

    assert names[0].startswith("◀\u00a0As")
    assert names[1].endswith("\u00a0▶")


def test_table_shows_only_what_differs_on_a_phone_and_keeps_its_first_column(page):
    shown = "[...document.querySelectorAll('.compared .same')].some(row => row.getClientRects().length)"
    assert _value(page, shown) is True
    page.find_element("id", "differs").click()
    assert _value(page, shown) is False
    resize(page, 360, 800)
    page.refresh()
    assert _value(page, "document.getElementById('differs').checked") is True
    moved = _value(
        page,
        "(() => { const t = document.querySelector('.compared'); t.parentElement.scrollLeft = 80;"
        "return t.querySelector('tbody th').getBoundingClientRect().left"
        " - t.parentElement.getBoundingClientRect().left })()",
    )

    assert moved == pytest.approx(0, abs=1)
    assert _value(page, "getComputedStyle(document.querySelector('.swipe')).display") == "block"


def test_an_option_with_open_errors_says_so_on_its_picture(page, project):
    flaws = _value(
        page, "[...document.querySelectorAll('.panel')].map(p => p.querySelector('.flaw')?.textContent ?? '')"
    )

    assert len(flaws) == len(project.all_options)
    assert flaws[-1] == "13 errors open: not to be cut as drawn"
    assert not any(flaws[:-1])


def test_every_error_is_a_line_that_the_table_leads_to(page):
    link = page.find_element("css selector", ".compared a.open:last-of-type")
    target = link.get_attribute("href").rpartition("#")[2]

    assert page.find_elements("css selector", f"#{target} h4.open + ul li")


def test_paper_has_night_pictures_and_every_instrument_in_words(page, project):
    page.execute_script("window.dispatchEvent(new Event('beforeprint'))")
    nights = _value(page, "document.querySelectorAll('#by-night .panel').length")
    opened = _value(page, "[...document.querySelectorAll('details')].every(d => d.open)")
    twice = _value(
        page,
        "(() => { const ids = [...document.querySelectorAll('[id]')].map(e => e.id);"
        "return ids.length - new Set(ids).size })()",
    )
    page.execute_script("window.dispatchEvent(new Event('afterprint'))")

    assert nights == len(project.all_options)
    assert opened
    assert twice == 0
    assert _value(page, "document.querySelectorAll('#by-night *, details[open]').length") == 0


def test_print_button_prints(page):
    page.execute_script("window.print = () => { window.printed = true }")
    page.find_element("id", "print").click()

    assert _value(page, "window.printed") is True


def test_print_shows_every_panel(page, project):
    page.execute_cdp_cmd("Emulation.setEmulatedMedia", {"media": "print"})
    seen = _value(
        page,
        "[...document.querySelectorAll('.panel')].filter(p => getComputedStyle(p).visibility === 'visible').length",
    )
    hidden = _value(page, "getComputedStyle(document.querySelector('.controls')).display")
    page.execute_cdp_cmd("Emulation.setEmulatedMedia", {"media": ""})

    assert seen == len(project.all_options)
    assert hidden == "none"


@pytest.mark.parametrize("width", [360, 768, 1920])
def test_readable_at_every_width(page, width):
    """Nothing sticks out sideways, letters are at least 12 px, controls at least 44 px high to a finger."""
    resize(page, width, 900)

    assert _value(page, "document.documentElement.scrollWidth") <= width
    words = "[...document.querySelectorAll('p, td, th, li, label, summary')]"
    sizes = _value(page, f"{words}.map(e => parseFloat(getComputedStyle(e).fontSize))")
    assert min(sizes) >= 12
    heights = _value(
        page, "[...document.querySelectorAll('select, button, #wipe')].map(e => e.getBoundingClientRect().height)"
    )
    assert min(heights) >= 44


def test_contrast_is_enough(page):
    """WCAG 2.2 AA asks 4.5 : 1 of all text."""
    page.execute_script("for (const d of document.querySelectorAll('details')) d.open = true")
    contrasts = page.execute_script(CONTRASTS)

    assert len(contrasts) > 200
    assert [pair for pair in contrasts if pair[1] < 4.5] == []


def test_table_compares_prices_and_functions(page, project):
    text = page.find_element("css selector", "main table").text

    for option in project.all_options:
        assert option.name in text
    assert "Price" in text
    assert "Attitude" in text
    assert "not to be cut as drawn" in text


def test_without_scripts_all_panels_stand_below_each_other(project, file):
    """What a script hides, it hides with a class that it sets itself."""
    html = file.read_text(encoding="utf-8")

    assert "default-src 'none'" in html
    assert html.count("<figcaption>") == len(project.all_options)
    assert re.search(r'(src|href)="(?!#|data:)', html) is None


def test_five_options_stay_small(project):
    """As found and five options, two of them like others, below 1.5 MB."""
    others = tuple(
        option.revised(id=f"more-{i}", name=f"More {i}")
        for i, option in enumerate((project.options[0], project.options[1]))
    )
    five = project.revised(options=(*project.options, *others))

    assert len(five.all_options) == 6
    assert len(owner_page(five).encode()) < LARGEST_BYTES


def test_names_cannot_break_out_of_the_page():
    evil = "<script>alert(1)</script>\" onload='x' & co"
    project = small_panel(title=evil)
    option = project.options[0]
    item = option.items[0].revised(name=evil)
    changed = project.revised(options=(option.revised(name=evil, items=(item, *option.items[1:])),))
    html = owner_page(changed)

    assert "<script>alert" not in html
    assert html.count("<script") == 2
