"""Checks, papers and DXF work on a server without a screen library; the public names are those the docs list."""

import ast
import inspect
import os
import re
import subprocess
import sys
from pathlib import Path

import panelcad

PACKAGE = Path(panelcad.__file__).parent
DOCS = PACKAGE.parent / "docs"

NO_SCREEN = """
import sys
class Refuse:
    def find_spec(self, name, path=None, target=None):
        if name.split(".")[0] == "PySide6":
            raise ImportError("there is no PySide6 on this machine")
sys.meta_path.insert(0, Refuse())
import importlib
for name in sys.argv[1:]:
    importlib.import_module(name)
"""


def modules_without_qt() -> list[str]:
    names = []
    for file in sorted(PACKAGE.rglob("*.py")):
        dotted = ".".join(file.relative_to(PACKAGE.parent).with_suffix("").parts).removesuffix(".__init__")
        if not dotted.startswith(("panelcad.desktop", "panelcad.outputs.qt_", "panelcad.__main__")):
            names.append(dotted)
    return names


def test_everything_but_the_window_loads_without_a_screen_library() -> None:
    modules = modules_without_qt()
    assert len(modules) > 30
    done = subprocess.run([sys.executable, "-c", NO_SCREEN, *modules], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_importing_panelcad_loads_no_heavy_library() -> None:
    heavy = {"ezdxf", "reportlab", "PySide6", "fontTools", "rich"}
    code = f"import sys, panelcad; print(*({heavy!r} & set(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.split() == []


def test_the_window_is_there_before_any_library_of_geometry_or_papers() -> None:
    heavy = {"ezdxf", "reportlab", "fontTools", "rich", "typer", "numpy", "shapely"}
    code = f"import sys, panelcad.desktop.main_window; print(*({heavy!r} & set(sys.modules)))"
    environment = dict(os.environ, QT_QPA_PLATFORM="offscreen")
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, env=environment)
    assert done.stdout.split() == []


def test_the_public_names_are_those_the_docs_list() -> None:
    listed = re.findall(r"^## `panelcad\.(\w+)", (DOCS / "scripting.md").read_text(encoding="utf-8"), re.MULTILINE)
    assert sorted(listed) == sorted(panelcad.__all__)


def test_the_public_functions_take_what_the_docs_say() -> None:
    heads = re.findall(
        r"^## `panelcad\.(\w+)\((.*?)\)(?: ->.*)?`", (DOCS / "scripting.md").read_text("utf-8"), re.MULTILINE
    )
    assert len(heads) > 10
    for name, arguments in heads:
        told = inspect.signature(eval(f"lambda {arguments}: 0"))  # noqa: S307 - our own page
        real = inspect.signature(getattr(panelcad, name))
        assert [(p.name, p.kind, p.default) for p in told.parameters.values()] == [
            (p.name, p.kind, p.default) for p in real.parameters.values()
        ], name


def test_no_file_hides_a_long_function() -> None:
    too_long = [
        f"{file.relative_to(PACKAGE)}:{node.name}"
        for file in PACKAGE.rglob("*.py")
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8")))
        if isinstance(node, ast.FunctionDef) and (node.end_lineno or 0) - node.lineno > 45
    ]
    assert too_long == []
