"""The published list of words is the one the model knows."""

from pathlib import Path

from panelcad.model.function import Control, Function, Supply
from panelcad.planning.tso import standard_of

PUBLISHED = (Path(__file__).parents[2] / "docs" / "functions.md").read_text(encoding="utf-8")


def column(heading: str) -> list[str]:
    """The first cell of each row below a heading."""
    part = PUBLISHED.split(f"## {heading}")[1].split("\n## ")[0]
    return [line.split("|")[1].strip() for line in part.splitlines() if line.startswith("| ")][2:]


def test_functions_supplies_and_controllers_are_published() -> None:
    assert column("Functions") == [function.value for function in Function]
    assert column("Supplies") == [supply.value for supply in Supply]
    assert column("Controllers") == [control.value for control in Control]


def test_each_standard_names_where_it_was_seen() -> None:
    for function in Function:
        standard = standard_of(function)
        if standard is not None:
            assert standard.source
            assert f"| {function} | {standard.text} | {standard.source} |" in PUBLISHED


def test_standards_of_the_flight_instruments() -> None:
    """SAE AS6296 paragraph 2.2.2.3; 14 CFR 91.215(a) for the transponder."""
    texts = {f: standard.text for f in Function if (standard := standard_of(f))}
    assert texts[Function.AIRSPEED] == "TSO-C2d"
    assert texts[Function.ATTITUDE] == "TSO-C4c"
    assert texts[Function.ALTITUDE] == "TSO-C10b"
    assert "C112" in texts[Function.TRANSPONDER]
