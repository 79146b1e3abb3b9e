import re
from pathlib import Path

from panelcad.library.catalogue import read_catalogue
from panelcad.model.cutout import Cutout
from panelcad.model.shape import (
    ChamferedRectangle,
    Circle,
    FlattedCircle,
    KeyedCircle,
    Outline,
    Rectangle,
    Slot,
    Trapezoid,
)
from panelcad.model.source import Standing

DOCS = (Path(__file__).parents[2] / "docs" / "cutouts.md").read_text(encoding="utf-8")
SHAPES = (Circle, Rectangle, Slot, KeyedCircle, FlattedCircle, ChamferedRectangle, Trapezoid, Outline)


def test_the_example_of_the_docs_can_be_read(tmp_path: Path) -> None:
    example = re.search(r"```toml\n(.*?)```", DOCS, re.DOTALL)
    assert example is not None
    (tmp_path / "example.toml").write_text(example[1], encoding="utf-8")
    assert read_catalogue(tmp_path).cutout("stick-timer").own_web == 2.54


def test_the_docs_name_every_key_of_a_cutout() -> None:
    assert [key for key in Cutout.model_fields if f"`{key}`" not in DOCS and key not in {"family", "unit"}] == []


def test_the_docs_name_every_shape_and_standing() -> None:
    assert [shape for shape in SHAPES if f"`{shape.model_fields['kind'].default}`" not in DOCS] == []
    assert [standing for standing in Standing if f"`{standing}`" not in DOCS] == []
