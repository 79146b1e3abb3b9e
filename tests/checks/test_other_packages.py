"""Rules from other packages through the entry point; the worked example of the docs is the one that is run."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
ASK = """
from panelcad.checks.registry import load_rules
from panelcad.checks.run import check
from panelcad.checks.wording import sentence
from panelcad.model.shape import Rectangle
from tests.checks.made import own_cut, panel
made = panel(cuts=(own_cut("a", 0, 0, Rectangle(width=310, height=50, corner_radius=5)),))
option = made.option("new")
report = check(made, option)
print([rule.id for rule in load_rules().rules if rule.id == "our-punch"])
print([sentence(finding, made, option) for finding in report.findings])
print([broken.rule for broken in report.not_judged], report.has_errors)
"""

SAID = (
    "Opening is too large for our punch: a (opening): 310.00 mm, at most 300.00 mm required. "
    "Have it cut outside, or make it 300.00 mm at most."
)


def example() -> str:
    return re.search(r"```python\n(.*?)```", (ROOT / "docs/own-rules.md").read_text(encoding="utf-8"), re.DOTALL)[1]


def installed(folder: Path, module: str) -> None:
    """As an installer would lay the package down."""
    info = folder / "our_shops_rules-1.0.dist-info"
    info.mkdir()
    (info / "METADATA").write_text("Metadata-Version: 2.1\nName: our-shops-rules\nVersion: 1.0\n")
    (info / "entry_points.txt").write_text("[panelcad.rules]\nour-shop = our_shops_rules\n")
    (folder / "our_shops_rules.py").write_text(module)


def asked(folder: Path) -> list[str]:
    command = [sys.executable, "-c", f"import sys; sys.path.insert(0, {str(folder)!r})\n{ASK}"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True)
    return done.stdout.splitlines()


def test_the_example_of_the_docs_works(tmp_path):
    installed(tmp_path, example())
    assert asked(tmp_path) == [
        "['our-punch']",
        f"['{SAID}']",
        "[] False",
    ]


@pytest.mark.parametrize("module", ["import gone\n", "def :\n"])
def test_a_package_that_cannot_be_imported_is_not_judged(tmp_path, module):
    installed(tmp_path, module)
    assert asked(tmp_path) == ["[]", "[]", "['our-shop'] True"]
