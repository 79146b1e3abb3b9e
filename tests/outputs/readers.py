"""Two readers of DXF that share no code with ezdxf or with each other: dxf-parser (Node) and GDAL (pyogrio)."""

import json
import os
import shutil
import subprocess
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pyogrio
import pyogrio.raw
import pytest
import shapely

ROOT = Path(__file__).parents[2]
PARSER = ROOT / ".readers" / "node_modules"
needs_parser = pytest.mark.skipif(
    shutil.which("node") is None or not (PARSER / "dxf-parser").is_dir(),
    reason="the raw DXF reader is missing: install nodejs and npm, then run .setup/test, which fetches dxf-parser",
)


def raw(*files: Path) -> list[dict[str, Any]]:
    """Header, layers and entities of each file, numbers untouched."""
    command = ["node", str(Path(__file__).with_name("read_dxf.js")), *map(str, files)]
    environment = os.environ | {"NODE_PATH": str(PARSER)}
    done = subprocess.run(command, env=environment, capture_output=True, text=True, check=True, timeout=60)
    drawings: list[dict[str, Any]] = json.loads(done.stdout)
    return drawings


def raw_corners(entity: dict[str, Any]) -> list[tuple[float, float, float]]:
    """Corners with bulges of a polyline of either kind."""
    return [(vertex["x"], vertex["y"], vertex.get("bulge", 0.0)) for vertex in entity["vertices"]]


@dataclass(frozen=True)
class Line:
    layer: str
    shape: Any
    text: str


def gdal(file: Path, step: float = 4.0) -> list[Line]:
    """What GDAL draws, arcs as chords that span at most `step` degrees."""
    pyogrio.set_gdal_config_options({"OGR_ARC_STEPSIZE": str(step)})
    meta, _, shapes, columns = pyogrio.raw.read(file)
    rows = dict(zip(meta["fields"], columns, strict=True))
    return [
        Line(layer, shapely.from_wkb(shape), text)
        for layer, shape, text in zip(rows["Layer"], shapes, rows["Text"], strict=True)
    ]
