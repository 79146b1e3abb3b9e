"""Issue an option: all its papers of one revision in one folder, with a manifest, and an entry in the release log."""

import secrets
import shutil
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from panelcad.checks.report import CheckReport
from panelcad.checks.run import check
from panelcad.errors import ReleaseRefused, UnusableInput
from panelcad.model.changes import change_sentence, changes_since, released_features, released_items
from panelcad.model.finding import Severity
from panelcad.model.fingerprint import option_fingerprint
from panelcad.model.part import chosen_plates, worked_plates
from panelcad.model.project import Option, Project
from panelcad.model.release import Issued, Release, next_revision
from panelcad.model.revision import Stamp, releases_of
from panelcad.outputs.dxf_options import DxfOptions, Origin
from panelcad.outputs.manifest import MANIFEST, differing_files
from panelcad.outputs.release_papers import Issue, ReleaseOptions, write_cutting_draft, write_draft, write_papers
from panelcad.outputs.trial_piece import named_cuts
from panelcad.store.atomic import files_together, write_atomically

_DEFAULTS: Final = ReleaseOptions()


@dataclass(frozen=True)
class Released:
    """What was issued: the folder, its files in order, the revision, and the project with its log."""

    folder: Path
    files: tuple[Path, ...]
    stamp: Stamp
    project: Project
    changes: tuple[str, ...] = ()
    was_reissued: bool = False


def release(
    project: Project, option_id: str, folder: Path | str, on: str, options: ReleaseOptions = _DEFAULTS
) -> Released:
    """Write all papers of an option to a folder of their own in `folder`, released on this day (YYYY-MM-DD).

    Each kind of cutting file, and each choice of plates, gets a folder of its own. An option that is as it was released
    last is issued again under the same letter and date. Raises `ReleaseRefused` where the option may not leave the
    shop, `UnusableInput` where files cannot be written, `UnknownName`.
    """
    option = project.option(option_id)
    _refuse_uncuttable(option)
    plates = chosen_plates(option, options.plates)
    report = check(project, option)
    _refuse_open_errors(report)
    entry, grown = _entry(project, option, on, options.by)
    mark = Stamp(entry.fingerprint, entry.revision, entry.on)
    issue = Issue(replace(report, project=grown), mark, plates, entry.changes)
    target = Path(folder) / issue.folder_name(options.dxf)
    ids = tuple(plate.id for plate in plates)
    issued = Issued(option=option.id, revision=entry.revision, on=on, plates=ids, folder=target.name, by=options.by)
    try:
        names = _issued(target, lambda beside: write_papers(issue, beside, options))
    except OSError as error:
        problem = f"the release cannot be written ({error.strerror})"
        raise UnusableInput(str(folder), "", problem, "a folder one may write in") from error
    files = tuple(target / name for name in names)
    return Released(target, files, mark, _logged(grown, issued), entry.changes, was_reissued=grown is project)


def draft(
    project: Project, option_id: str, folder: Path | str, options: ReleaseOptions = _DEFAULTS
) -> tuple[Path, ...]:
    """Write the option's drawing as a PDF marked not for cutting, errors or not; no cutting file. Returns its files."""
    return _drafted(
        _unreleased(project, option_id, options), Path(folder), replace(options, dxf=DxfOptions()), write_draft
    )


def cutting_draft(
    project: Project,
    option_id: str,
    folder: Path | str,
    options: ReleaseOptions = _DEFAULTS,
    around: Iterable[str] = (),
) -> tuple[tuple[Path, ...], CheckReport]:
    """Write cutting files that are marked as drafts, for a trial in scrap, errors or not; the files, and the findings.

    With each goes its report and the plate's paper template. `around` names cuts, by their number on the papers, id or
    name: then one trial piece is written, from its lower left
    corner, that holds these alone. Raises `UnknownName`, and `UnusableInput` for a folder
    that holds a release or cannot be written in.
    """
    names = tuple(around)
    if names:
        plate, cuts = named_cuts(project, project.option(option_id), names)
        piece = replace(options.dxf, around=cuts, origin=Origin.LOWER_LEFT)
        options = replace(options, plates=(plate.id,), dxf=piece)
    if (Path(folder) / MANIFEST).exists():
        raise UnusableInput(
            str(folder), "", "it holds a release", "a folder for drafts, so that nobody takes one for it"
        )
    issue = _unreleased(project, option_id, options)
    marked = replace(options, dxf=replace(options.dxf, stamp=issue.mark))
    return _drafted(issue, Path(folder), marked, write_cutting_draft), issue.report


def _unreleased(project: Project, option_id: str, options: ReleaseOptions) -> Issue:
    option = project.option(option_id)
    mark = Stamp(option_fingerprint(project, option))
    return Issue(check(project, option), mark, chosen_plates(option, options.plates))


def _drafted(
    issue: Issue,
    folder: Path,
    options: ReleaseOptions,
    write: Callable[[Issue, Path, ReleaseOptions], tuple[Path, ...]],
) -> tuple[Path, ...]:
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with files_together(folder) as beside:
            names = tuple(file.name for file in write(issue, beside, options))
        return tuple(folder / name for name in names)
    except OSError as error:
        problem = f"the draft cannot be written ({error.strerror})"
        raise UnusableInput(str(folder), "", problem, "a folder one may write in") from error


def _refuse_open_errors(report: CheckReport) -> None:
    if report.not_judged:
        rules = ", ".join(each.rule for each in report.not_judged)
        raise ReleaseRefused(f"Option '{report.option.name}' is not released: these rules could not judge it: {rules}.")
    if report.has_errors:
        count = report.count(Severity.ERROR)
        errors = "1 error is" if count == 1 else f"{count} errors are"
        raise ReleaseRefused(
            f"Option '{report.option.name}' is not released: {errors} open; put them right, or issue a draft."
        )


def _refuse_uncuttable(option: Option) -> None:
    plates = worked_plates(option)
    if not plates:
        raise ReleaseRefused(f"Option '{option.name}' is not released: all its plates are kept, so nothing is cut.")
    for plate in plates:
        if plate.bends and not plate.is_flat_pattern:
            raise ReleaseRefused(
                f"Option '{option.name}' is not released: plate '{plate.name}' is bent and its outline is not entered "
                "as a flat pattern."
            )


def _entry(project: Project, option: Option, on: str, by: str) -> tuple[Release, Project]:
    """The log's entry for this release and the project that holds it: the last one again, or a new one."""
    fingerprint = option_fingerprint(project, option)
    entries = releases_of(project, option)
    if entries and entries[-1].fingerprint == fingerprint:
        return entries[-1], project
    if project.locked_revision(option.id):
        raise ReleaseRefused(
            f"Option '{option.name}' is not released: it changed since revision {entries[-1].revision} (its limits or "
            "its cutouts did); open a new revision first."
        )
    entry = Release(
        option=option.id,
        revision=_next_letter(project, option, entries),
        on=on,
        fingerprint=fingerprint,
        by=by,
        changes=_changes(entries, project, option),
        features=released_features(project, option),
        items=released_items(option),
    )
    return entry, project.revised(releases=(*project.releases, entry))


def _logged(project: Project, issued: Issued) -> Project:
    """The project whose log says which plates were issued in that folder, if it did not say so yet."""
    known = ((each.option, each.plates, each.folder) for each in project.issues)
    if (issued.option, issued.plates, issued.folder) in known:
        return project
    return project.revised(issues=(*project.issues, issued))


def _next_letter(project: Project, option: Option, entries: tuple[Release, ...]) -> str:
    opened = [each.revision for each in project.opened_revisions if each.option == option.id]
    if opened and opened[-1] not in {entry.revision for entry in entries}:
        return opened[-1]
    return next_revision(entries[-1].revision if entries else "")


def _changes(entries: tuple[Release, ...], project: Project, option: Option) -> tuple[str, ...]:
    if not entries:
        return ()
    found = changes_since(entries[-1], project, option)
    return tuple(change_sentence(change, project.unit) for change in found) or (
        "limits, bodies or turned lettering only",
    )


def _issued(target: Path, write: Callable[[Path], tuple[str, ...]]) -> tuple[str, ...]:
    """Write a release beside its place and put it there whole. Raises `ReleaseRefused` over a different one."""
    target.parent.mkdir(parents=True, exist_ok=True)
    beside = target.parent / f".{target.name}.{secrets.token_hex(4)}"
    beside.mkdir()
    try:
        names = write(beside)
        if not target.exists():
            beside.replace(target)
            return names
        different = differing_files(beside, target)
        if different:
            raise ReleaseRefused(
                f"{target} holds an earlier release whose {different[0]} differs; nothing was overwritten. "
                "Open a new revision, or release to another folder."
            )
        for name in names:
            write_atomically(target / name, (beside / name).read_bytes())
        return names
    finally:
        shutil.rmtree(beside, ignore_errors=True)
