"""Reports as plain data for JSON: documented in docs/json.md, versioned, lengths in mm whatever the project's unit."""

from collections.abc import Iterable
from typing import Any, Final

from panelcad.checks.report import CheckReport
from panelcad.checks.wording import sentence
from panelcad.model.cutout import Cutout
from panelcad.model.finding import Finding, Severity
from panelcad.model.layout import PlateLayout, layout
from panelcad.model.project import Item, Option, Project
from panelcad.planning.wording import sentence as planning_sentence

SHAPE: Final = 1
"""Version of the JSON shapes; grows when a key is renamed or removed, not when one is added."""


def check_as_plain(
    project: Project, option: Option, report: CheckReport, of_equipment: Iterable[Finding] = ()
) -> dict[str, Any]:
    """The panel's findings; beside them the open errors `of_equipment`, which planning found."""
    return {
        "shape": SHAPE,
        "project": project.title,
        "option": option.id,
        "fingerprint": report.fingerprint,
        "errors": report.count(Severity.ERROR),
        "findings": [_finding(finding, project, option) for finding in report.findings],
        "equipment_errors": [
            _finding(finding, project, option) | {"message": planning_sentence(finding, project, option)}
            for finding in of_equipment
        ],
        "accepted": [
            _finding(accepted.finding, project, option)
            | {"reason": accepted.acceptance.reason, "initials": accepted.acceptance.initials}
            for accepted in report.accepted
        ],
        "lapsed": [acceptance.finding for acceptance in report.lapsed],
        "unknown": [{"rule": each.rule, "items": list(each.items), "missing": each.missing} for each in report.unknown],
        "not_judged": [{"rule": broken.rule, "reason": broken.reason} for broken in report.not_judged],
    }


def _finding(finding: Finding, project: Project, option: Option) -> dict[str, Any]:
    return {
        "rule": finding.rule,
        "severity": finding.severity.value,
        "items": list(finding.items),
        "features": list(finding.features),
        "plate": finding.plate,
        "measure": finding.measure.value,
        "measured": finding.measured,
        "required": finding.required,
        "where": [[point.x, point.y] for point in finding.where],
        "message": sentence(finding, project, option),
        "source": finding.source,
        "identity": finding.identity,
    }


def listing_as_plain(project: Project) -> dict[str, Any]:
    return {
        "shape": SHAPE,
        "project": project.title,
        "unit": project.unit.value,
        "aircraft": project.aircraft.model_dump(mode="json"),
        "options": [_option(project, option) for option in project.all_options],
        "releases": [release.model_dump(mode="json") for release in project.releases],
        "issues": [issued.model_dump(mode="json") for issued in project.issues],
    }


def _option(project: Project, option: Option) -> dict[str, Any]:
    return {
        "id": option.id,
        "name": option.name,
        "plates": [_plate(laid) for laid in layout(project, option).plates],
        "items": [_item(item) for item in option.items],
    }


def _plate(laid: PlateLayout) -> dict[str, Any]:
    left, bottom, right, top = laid.outline.bounds
    return {
        "id": laid.plate.id,
        "name": laid.plate.name,
        "role": laid.plate.role.value,
        "state": laid.plate.state.value,
        "alloy": laid.plate.alloy,
        "thickness": laid.plate.thickness,
        "width": right - left,
        "height": top - bottom,
        "cuts": [
            {"id": placed.cut.id, "name": placed.cut.name, "state": placed.cut.state.value}
            | {"x": placed.cut.x, "y": placed.cut.y, "features": len(placed.features)}
            for placed in laid.cuts
        ],
    }


def _item(item: Item) -> dict[str, Any]:
    keys = {"id", "name", "cutout", "cut", "plate", "x", "y", "rotation"}
    return item.model_dump(mode="json", include=keys)


def cutouts_as_plain(cutouts: list[Cutout]) -> dict[str, Any]:
    return {"shape": SHAPE, "cutouts": [{"name": c.name, "title": c.title, "family": c.family} for c in cutouts]}
