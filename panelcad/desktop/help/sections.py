"""Every section of every page of help, to be found by words."""

from dataclasses import dataclass
from functools import cache

from panelcad.desktop.help.page_html import headings
from panelcad.desktop.help.pages import PAGES, Page


@dataclass(frozen=True)
class Section:
    """`link` is written from docs/; `title` is the page's own where the section is the whole page."""

    link: str
    title: str
    page: str

    @property
    def words(self) -> str:
        """Such as 'After a crash (Files and preferences)'."""
        return self.title if self.title == self.page else f"{self.title} ({self.page})"


@cache
def sections() -> tuple[Section, ...]:
    """In reading order. Raises `UnusableInput` where the installation lacks docs/, OSError where it lacks a page."""
    return tuple(section for page in PAGES for section in _of_page(page))


def _of_page(page: Page) -> list[Section]:
    found = headings(page.markdown)
    title = found[0][1]
    return [Section(page.file, title, title), *(Section(f"{page.file}#{a}", words, title) for a, words in found[1:])]
