"""`panelcad preview` writes it all for every option, or nothing."""

import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pytest
from typer.testing import CliRunner

from panelcad.cli import app
from panelcad.errors import UnusableInput
from panelcad.outputs.preview import PictureKind, PreviewOptions, write_preview
from panelcad.store.project_file import save
from tests.drawing.panels import small_panel


def test_everything_is_written(tmp_path):
    project = small_panel()
    written = write_preview(project, tmp_path / "for the öwner", PreviewOptions(width_px=300))

    names = {path.name for path in written}
    for option in project.all_options:
        for light in ("day", "night"):
            assert {f"{option.id}-{light}.png", f"{option.id}-{light}.svg"} <= names
    assert {"proposal.pdf", "panel.html"} <= names
    assert all(path.stat().st_size > 500 for path in written)


def test_a_picture_in_the_dark_stands_on_a_dark_ground(tmp_path):
    from PIL import Image

    project = small_panel()
    write_preview(project, tmp_path, PreviewOptions(width_px=300, lights=("day", "dusk", "night")))
    corner = {
        light: Image.open(tmp_path / f"as-found-{light}.png").convert("RGBA").getpixel((1, 1))
        for light in ("day", "dusk", "night")
    }

    assert corner["day"][3] == 0
    assert corner["dusk"][3] == corner["night"][3] == 255
    assert max(corner["night"][:3]) < max(corner["dusk"][:3]) < 80


def test_pictures_of_one_kind_and_light(tmp_path):
    options = PreviewOptions(width_px=200, lights=("night-red",), kinds=(PictureKind.SVG,))
    written = write_preview(small_panel(), tmp_path, options)

    assert {p.name for p in written if p.suffix in {".png", ".svg"}} == {"as-found-night-red.svg", "new-night-red.svg"}


def test_an_impossible_width_leaves_no_folder(tmp_path):
    with pytest.raises(UnusableInput):
        write_preview(small_panel(), tmp_path / "x", PreviewOptions(width_px=0))

    assert not (tmp_path / "x").exists()


def test_a_folder_that_cannot_be_made(tmp_path):
    (tmp_path / "file").write_text("in the way")
    with pytest.raises(UnusableInput, match="cannot be made"):
        write_preview(small_panel(), tmp_path / "file" / "x", PreviewOptions(width_px=200))


def test_command(tmp_path):
    file = tmp_path / "small.panel.json"
    save(small_panel(), file)
    result = CliRunner().invoke(app, ["preview", str(file), "--to", str(tmp_path / "out"), "--width", "200"])

    assert result.exit_code == 0, result.output
    assert "approves nothing" in result.output
    assert (tmp_path / "out" / "panel.html").exists()
