"""Draws the pictures of docs/appearance.md from the samples: `python docs/look_pictures.py`."""

import os
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from panelcad.drawing.appearance_light import LIGHTS
from panelcad.library.samples import sample_file
from panelcad.outputs.png import write_png
from panelcad.outputs.preview import picture_of
from panelcad.store.project_file import load

HERE = Path(__file__).parent / "pictures"
WIDTH = 900
SHOWN = (
    ("tourer", "as-found", "day"),
    ("tourer", "classic", "day"),
    ("tourer", "glass", "day"),
    ("tourer", "glass", "night"),
    ("trainer", "day-night", "night-red"),
    ("twin", "refit", "dusk"),
)

for name, option_id, light in SHOWN:
    project = load(sample_file(name))
    nodes, bounds = picture_of(project, project.option(option_id), LIGHTS[light])
    write_png(nodes, bounds, WIDTH, HERE / f"look-{name}-{option_id}-{light}.png")
