"""Every plate of every sample option, in every version, unit and face: audited, read by GDAL, and verified."""

import math
from collections.abc import Iterator
from itertools import product
from pathlib import Path

import ezdxf
import pytest
import shapely

from panelcad.geometry.contour import Chain, Rounded, Vertex, closed_chain
from panelcad.geometry.gap import point_edge_gap
from panelcad.geometry.point import Point
from panelcad.geometry.segment import Arc, Segment
from panelcad.library.samples import sample_file
from panelcad.model.layout import layout
from panelcad.outputs.dxf import export_dxf, to_file_axes
from panelcad.outputs.dxf_layers import CUT_THROUGH, IN_THE_METAL
from panelcad.outputs.dxf_options import DxfOptions, DxfVersion, FaceUp, Origin
from panelcad.outputs.verify import verify
from panelcad.outputs.verify_words import sentences
from panelcad.store.project_file import load
from panelcad.units import LengthUnit
from tests.outputs.readers import gdal, needs_parser, raw, raw_corners
from tests.outputs.test_dxf_readers import same_corners

SAMPLES = {name: load(sample_file(name)) for name in ("tourer", "trainer", "twin")}
PLATES = [
    (name, option.id, plate.id)
    for name, sample in SAMPLES.items()
    for option in sample.all_options
    for plate in option.plates
]
WAYS = list(product(DxfVersion, LengthUnit, FaceUp))


EACH_PLATE = pytest.mark.parametrize(
    ("number", "plate"), list(enumerate(PLATES)), ids=["-".join(plate) for plate in PLATES]
)
METAL = frozenset(layer.value for layer in CUT_THROUGH | IN_THE_METAL)


@EACH_PLATE
def test_a_plate_of_a_sample_is_whole_for_strangers(tmp_path: Path, number: int, plate: tuple[str, str, str]) -> None:
    """Each plate in some of the ways, so that all of them together see every way."""
    sample = SAMPLES[plate[0]]
    option = sample.option(plate[1])
    laid = layout(sample, option).plate(plate[2])
    for version, unit, face in WAYS[number % 8 :: 8]:
        options = DxfOptions(version=version, unit=unit, face_up=face)
        file = tmp_path / "plate.dxf"
        export_dxf(sample, option, laid.plate.id, file, options)

        assert not ezdxf.readfile(file).audit().errors
        assert sentences(verify(sample, file)) == ()
        placement = to_file_axes(laid, sample, options)
        contours = [placement.contour(c) for c in (laid.outline, *(feature.contour for feature in laid.features))]
        read = [line for line in gdal(file) if line.layer in METAL]
        assert len(read) == len(contours)
        for line, contour in zip(read, contours, strict=True):
            corners = shapely.get_coordinates(line.shape) * unit.mm
            assert max(abs(point_edge_gap(Point(*corner), contour).distance) for corner in corners[::7]) < 0.001


def in_some_ways(folder: Path, number: int, plate: tuple[str, str, str]) -> list[tuple[DxfOptions, Path]]:
    """The plate's files in two of the sixteen ways, from one origin and the other."""
    sample = SAMPLES[plate[0]]
    written = []
    for origin, (version, unit, face) in zip(Origin, WAYS[number % 8 :: 8], strict=True):
        options = DxfOptions(version=version, unit=unit, face_up=face, origin=origin)
        file = folder / f"{version}-{unit}-{face}.dxf"
        export_dxf(sample, sample.option(plate[1]), plate[2], file, options)
        written.append((options, file))
    return written


@needs_parser
@EACH_PLATE
def test_a_raw_reader_finds_every_centre_radius_and_bulge_of_a_plate(
    tmp_path: Path, number: int, plate: tuple[str, str, str]
) -> None:
    sample = SAMPLES[plate[0]]
    laid = layout(sample, sample.option(plate[1])).plate(plate[2])
    ways = in_some_ways(tmp_path, number, plate)
    for (options, _), drawing in zip(ways, raw(*(file for _, file in ways)), strict=True):
        placement = to_file_axes(laid, sample, options)
        contours = [placement.contour(c) for c in (laid.outline, *(feature.contour for feature in laid.features))]
        entities = [entity for entity in drawing["entities"] if entity["layer"] in METAL]
        assert len(entities) == len(contours)
        for entity, contour in zip(entities, contours, strict=True):
            if entity["type"] == "CIRCLE":
                assert isinstance(contour, Rounded)
                centre = (entity["center"]["x"] * options.unit.mm, entity["center"]["y"] * options.unit.mm)
                assert centre == pytest.approx(contour.centre, abs=0.001)
                assert entity["radius"] * options.unit.mm == pytest.approx(contour.radius, abs=0.001)
            else:
                same_corners(entity, contour, options)


@needs_parser
@EACH_PLATE
def test_a_plates_file_has_nothing_a_machine_stumbles_over(
    tmp_path: Path, number: int, plate: tuple[str, str, str]
) -> None:
    """No piece too short, nothing doubled; every joint is tangent to 10 microradians or a corner of a degree and more.

    Corners are stored in whole nanometres, which turn a fillet of a millimetre by about a microradian.
    """
    shortest = SAMPLES[plate[0]].profile.smallest_segment
    ways = in_some_ways(tmp_path, number, plate)
    for (options, _), drawing in zip(ways, raw(*(file for _, file in ways)), strict=True):
        entities = [entity for entity in drawing["entities"] if entity["layer"] in METAL]
        seen = set()
        for entity in entities:
            if entity["type"] == "CIRCLE":
                seen.add((entity["center"]["x"], entity["center"]["y"], entity["radius"]))
                continue
            chain = closed_chain(tuple(Vertex(*corner) for corner in raw_corners(entity)))
            seen.add(tuple(sorted((round(v.x, 4), round(v.y, 4), round(v.bulge, 4)) for v in chain.vertices)))
            assert min(segment.length for segment in chain.segments) * options.unit.mm >= shortest
            for turn in turns(chain):
                assert abs(turn) < 1e-5 or abs(turn) > math.radians(1.0)
        assert len(seen) == len(entities)


def turns(chain: Chain) -> Iterator[float]:
    """Radians by which the way turns at each corner."""
    for before, after in zip(chain.segments, (*chain.segments[1:], chain.segments[0]), strict=True):
        yield math.remainder(heading(after, 0.0) - heading(before, 1.0), 2 * math.pi)


def heading(segment: Segment, share: float) -> float:
    if isinstance(segment, Arc):
        return segment.start_angle + share * segment.sweep + math.copysign(math.pi / 2, segment.sweep)
    return math.atan2(segment.end.y - segment.start.y, segment.end.x - segment.start.x)
