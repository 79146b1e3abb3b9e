"""Every plate of every sample option, in every version, unit and face: audited, read by GDAL, and verified."""

from itertools import product
from pathlib import Path

import ezdxf
import pytest
import shapely

from panelcad.geometry.gap import point_edge_gap
from panelcad.geometry.point import Point
from panelcad.library.samples import sample_file
from panelcad.model.layout import layout
from panelcad.outputs.dxf import export_dxf, to_file_axes
from panelcad.outputs.dxf_layers import CUT_THROUGH, IN_THE_METAL
from panelcad.outputs.dxf_options import DxfOptions, DxfVersion, FaceUp
from panelcad.outputs.verify import verify
from panelcad.outputs.verify_words import sentences
from panelcad.store.project_file import load
from panelcad.units import LengthUnit
from tests.outputs.readers import gdal

SAMPLES = {name: load(sample_file(name)) for name in ("tourer", "trainer", "twin")}
PLATES = [
    (name, option.id, plate.id)
    for name, sample in SAMPLES.items()
    for option in sample.all_options
    for plate in option.plates
]
WAYS = list(product(DxfVersion, LengthUnit, FaceUp))


@pytest.mark.parametrize(("number", "plate"), list(enumerate(PLATES)), ids=["-".join(plate) for plate in PLATES])
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
        read = [line for line in gdal(file) if line.layer in {layer.value for layer in CUT_THROUGH | IN_THE_METAL}]
        assert len(read) == len(contours)
        for line, contour in zip(read, contours, strict=True):
            corners = shapely.get_coordinates(line.shape) * unit.mm
            assert max(abs(point_edge_gap(Point(*corner), contour).distance) for corner in corners[::7]) < 0.001
