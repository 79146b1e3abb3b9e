"""A photograph of a panel is rectified: four points whose places on the plate are known set it straight and to scale.

The map from the plate to the photograph is a homography (R. Hartley, A. Zisserman: Multiple View Geometry in
Computer Vision, 2nd edition, section 4.1): exact for a flat panel and a lens without distortion. More than four points
are fitted by least squares. What stands before or behind the sheet, such as a bezel, is displaced a little.
"""

import base64
from collections.abc import Sequence
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from typing import Any, Final

import numpy as np

from panelcad.errors import UnusableInput
from panelcad.geometry.contour import Contour
from panelcad.geometry.point import Point
from panelcad.model.photograph import Photograph

PIXELS_PER_MM: Final = 2.0
WIDEST_PX: Final = 2400
_QUALITY: Final = 85
_MARGIN: Final = 5.0
_FLATTEST: Final = 1e-4
"""Smallest area of three points, as a share of the spread squared, at which they do not count as on one line."""


@dataclass(frozen=True)
class KnownPoint:
    """A pixel of the photograph, from its upper left corner, and its place on the plate in mm."""

    pixel: Point
    place: Point


def rectified(file: Path, plate_id: str, outline: Contour, points: Sequence[KnownPoint]) -> Photograph:
    """The photograph of a plate in the plate's own mm. Raises `UnusableInput`."""
    source = str(file)
    image = _opened(file)
    to_pixel = homography(points, source)
    x1, y1, x2, y2 = (
        edge + by for edge, by in zip(outline.bounds, (-_MARGIN, -_MARGIN, _MARGIN, _MARGIN), strict=True)
    )
    scale = min(PIXELS_PER_MM, WIDEST_PX / (x2 - x1))
    size = (max(1, round((x2 - x1) * scale)), max(1, round((y2 - y1) * scale)))
    straight = _transformed(image, to_pixel @ _from_output(x1, y2, scale), size)
    content = base64.b64encode(_jpeg(straight)).decode()
    return Photograph(plate=plate_id, name=file.name, content=content, x=x1, y=y1, width=x2 - x1, height=y2 - y1)


def homography(points: Sequence[KnownPoint], source: str = "") -> "np.ndarray[Any, np.dtype[np.float64]]":
    """The 3 × 3 matrix that takes a place in mm to a pixel. Raises `UnusableInput` for points that do not settle it."""
    if len(points) < 4:
        raise UnusableInput(source, "known points", f"{len(points)} are given", "at least four")
    places = np.array([p.place for p in points])
    pixels = np.array([p.pixel for p in points])
    if _nearly_on_a_line(places) or _nearly_on_a_line(pixels):
        raise UnusableInput(
            source, "known points", "three of them lie on one line", "four corners of a large rectangle"
        )
    to_places, to_pixels = _normalising(places), _normalising(pixels)
    rows = [
        row for a, b in zip(_mapped(to_places, places), _mapped(to_pixels, pixels), strict=True) for row in _rows(a, b)
    ]
    solution = np.linalg.svd(np.array(rows))[2][-1].reshape(3, 3)
    matrix = np.linalg.inv(to_pixels) @ solution @ to_places
    return np.asarray(matrix / matrix[2, 2])


def pixel_of(matrix: "np.ndarray[Any, np.dtype[np.float64]]", place: Point) -> Point:
    """The pixel at which a place of the plate is seen."""
    x, y, w = matrix @ np.array([place.x, place.y, 1.0])
    return Point(float(x / w), float(y / w))


def _rows(place: Any, pixel: Any) -> tuple[list[float], list[float]]:
    """The two equations of one pair of points (direct linear transformation)."""
    (x, y), (u, v) = place, pixel
    return [-x, -y, -1, 0, 0, 0, u * x, u * y, u], [0, 0, 0, -x, -y, -1, v * x, v * y, v]


def _normalising(points: Any) -> Any:
    """Moves points about the origin and to a mean distance of √2, so that the equations are well conditioned."""
    centre = points.mean(axis=0)
    scale = np.sqrt(2.0) / np.linalg.norm(points - centre, axis=1).mean()
    return np.array([[scale, 0.0, -scale * centre[0]], [0.0, scale, -scale * centre[1]], [0.0, 0.0, 1.0]])


def _mapped(matrix: Any, points: Any) -> Any:
    return points @ matrix[:2, :2].T + matrix[:2, 2]


def _nearly_on_a_line(points: Any) -> bool:
    """Whether any three of the first four points lie on a line, or two of them coincide."""
    spread = float(np.ptp(points, axis=0).max()) or 1.0
    first = points[:4]
    for skipped in range(4):
        a, b, c = (first[i] for i in range(4) if i != skipped)
        area = abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2
        if area < _FLATTEST * spread**2:
            return True
    return False


def _from_output(left: float, top: float, scale: float) -> Any:
    """Takes an output pixel's centre to its place in mm."""
    return np.array([[1 / scale, 0.0, left], [0.0, -1 / scale, top], [0.0, 0.0, 1.0]])


def _opened(file: Path) -> Any:
    from PIL import Image, ImageOps, UnidentifiedImageError  # noqa: PLC0415 - only where a photograph comes in

    try:
        with Image.open(file) as image:
            return ImageOps.exif_transpose(image).convert("RGB")
    except (OSError, UnidentifiedImageError, Image.DecompressionBombError) as error:
        raise UnusableInput(str(file), "", "it cannot be read as a picture", "a PNG or JPEG photograph") from error


def _transformed(image: Any, to_pixel: Any, size: tuple[int, int]) -> Any:
    from PIL import Image  # noqa: PLC0415

    coefficients = (to_pixel / to_pixel[2, 2]).ravel()[:8]
    return image.transform(size, Image.Transform.PERSPECTIVE, tuple(coefficients), Image.Resampling.BICUBIC)


def _jpeg(image: Any) -> bytes:
    stream = BytesIO()
    image.save(stream, "JPEG", quality=_QUALITY, optimize=True)
    return stream.getvalue()
