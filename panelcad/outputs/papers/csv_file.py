"""A paper's grids as CSV (RFC 4180): UTF-8 with a byte order mark, so that spreadsheets read umlauts."""

import csv
import io
from collections.abc import Iterable
from pathlib import Path

from panelcad.outputs.papers.document import Document, Grid
from panelcad.store.atomic import write_atomically

_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")


def write_csv(path: Path, document: Document, grid: Grid) -> None:
    """Write one grid: a first line that begins with # and says whose it is, the grid's header, its lines."""
    write_atomically(path, csv_bytes(document, grid))


def csv_bytes(document: Document, grid: Grid) -> bytes:
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\r\n")
    writer.writerow([f"# {' | '.join(part for part in (document.title, document.subtitle, document.marking) if part)}"])
    writer.writerow([column.title for column in grid.columns])
    writer.writerows(_safe(line.cells) for line in grid.lines)
    return b"\xef\xbb\xbf" + stream.getvalue().encode()


def _safe(cells: Iterable[str]) -> list[str]:
    """Cells that a spreadsheet would take for a formula get an apostrophe; numbers stay numbers."""
    return [f"'{cell}" if cell.startswith(_FORMULA_STARTS) and not _is_number(cell) else cell for cell in cells]


def _is_number(cell: str) -> bool:
    return cell.lstrip("+-").replace(",", "").replace(".", "", 1).isdigit()
