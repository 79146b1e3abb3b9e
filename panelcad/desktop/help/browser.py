"""Shows a page of help in the window's colours. It opens nothing but pages that came with the program."""

from pathlib import Path
from string import Template
from typing import Final

from PySide6.QtCore import QSize, Qt, QUrl, Signal
from PySide6.QtGui import QImage, QImageReader, QResizeEvent, QTextDocument
from PySide6.QtWidgets import QTextBrowser

from panelcad.desktop.help.page_html import page_html
from panelcad.desktop.help.pages import PAGES, Page, root
from panelcad.desktop.theme import Theme

_MARGIN: Final = 24
_SHEET: Final = Template("""
body { color: $ink; }
h1 { font-size: 20pt; font-weight: 600; margin-top: 0px; margin-bottom: 10px; }
h2 { font-size: 14pt; font-weight: 600; margin-top: 24px; margin-bottom: 6px; }
h3 { font-size: 11pt; font-weight: 600; margin-top: 16px; margin-bottom: 4px; }
p { margin-top: 6px; margin-bottom: 8px; line-height: 128%; }
p.picture { line-height: 100%; margin-top: 8px; margin-bottom: 14px; }
li { margin-bottom: 5px; line-height: 124%; }
a { color: $accent; }
table { border-collapse: collapse; margin-top: 8px; margin-bottom: 12px; }
td { border: 1px solid $line; padding: 5px 9px; }
th { border: 1px solid $line; padding: 5px 9px; background-color: $raised; text-align: left; }
code, pre { font-family: monospace; background-color: $raised; }
""")


class PageBrowser(QTextBrowser):
    """`shown` when another page or another place of it is shown; `refused` with a link that leads out of help."""

    shown = Signal(str)
    refused = Signal(str)

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._pages = {(root() / page.file): page for page in (*PAGES, Page("help/README.md"))}
        self._wrapped_at = 0
        self.setAccessibleName("Page of help")
        self.document().setDocumentMargin(_MARGIN)
        self.setOpenExternalLinks(False)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)  # so that the room stays the same
        self.sourceChanged.connect(lambda url: self.shown.emit(self._link_to(url)))
        self._dress()

    # Going

    def go_to(self, link: str) -> None:
        """Show a page, or a section of it, by its link from docs/."""
        file, _, anchor = link.partition("#")
        url = QUrl.fromLocalFile(str(root() / file))
        url.setFragment(anchor)
        self.setSource(url)

    @property
    def link(self) -> str:
        """Where one is, as a link from docs/."""
        return self._link_to(self.source())

    def _link_to(self, url: QUrl) -> str:
        """Qt says that the source changed before `source()` gives the new one."""
        file = self._file(url)
        if file not in self._pages:
            return ""
        anchor = url.fragment()
        return f"{self._pages[file].file}#{anchor}" if anchor else self._pages[file].file

    def doSetSource(
        self,
        url: QUrl | str,
        /,
        type: QTextDocument.ResourceType = QTextDocument.ResourceType.UnknownResource,  # noqa: A002, ARG002 - Qt's
    ) -> None:
        """A page; what leads out of help is told and not opened."""
        target = self.source().resolved(QUrl(url))
        if self._file(target) not in self._pages:
            self.refused.emit(target.toString())
            return
        super().doSetSource(target, QTextDocument.ResourceType.HtmlResource)

    def _file(self, url: QUrl) -> Path:
        return Path(url.toLocalFile())

    # Showing

    def loadResource(self, kind: int, url: QUrl | str) -> object:
        file = self._file(self.source().resolved(QUrl(url)))
        if QTextDocument.ResourceType(kind) is QTextDocument.ResourceType.ImageResource:
            return self._picture(file)
        return page_html(self._pages[file].markdown, file.parent.as_uri()) if file in self._pages else ""

    def _picture(self, file: Path) -> QImage:
        """As wide as there is room, never wider than it is; one named @2x is half as wide as its pixels."""
        reader = QImageReader(str(file))
        picture = reader.read()
        wide = min(picture.deviceIndependentSize().width(), self._room())
        ratio = self.devicePixelRatioF()
        size = picture.size().scaled(QSize(round(wide * ratio), picture.height()), Qt.AspectRatioMode.KeepAspectRatio)
        scaled = picture.scaled(size, Qt.AspectRatioMode.IgnoreAspectRatio, Qt.TransformationMode.SmoothTransformation)
        scaled.setDevicePixelRatio(ratio)
        return scaled

    def _room(self) -> int:
        return max(160, self.viewport().width() - 2 * _MARGIN - 8)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if self._wrapped_at != self._room():
            self._wrapped_at = self._room()
            self.show_again()

    def take_theme(self, theme: Theme) -> None:
        self._theme = theme
        self._dress()
        self.show_again()

    def _dress(self) -> None:
        colours = {name: value for name, value in vars(self._theme).items() if isinstance(value, str)}
        self.document().setDefaultStyleSheet(_SHEET.substitute(colours))

    def show_again(self) -> None:
        """Lay the page out anew, and stay about where one was."""
        if self.source().isEmpty():
            return
        bar = self.verticalScrollBar()
        share = bar.value() / bar.maximum() if bar.maximum() else 0.0
        self.reload()
        bar.setValue(round(share * bar.maximum()))
