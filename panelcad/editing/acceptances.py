"""Somebody's word that a finding may stand: given, and taken back."""

from panelcad.editing.refusal import edit
from panelcad.model.finding import Acceptance
from panelcad.model.project import Project


@edit
def add_acceptance(project: Project, option_id: str, word: Acceptance) -> Project:
    """The option with this word, in place of an earlier one on the same finding. Raises `UnknownName`."""
    option = project.option(option_id)
    others = tuple(old for old in option.acceptances if old.finding != word.finding)
    return project.with_option(option.revised(acceptances=(*others, word)))


@edit
def withdraw_acceptance(project: Project, option_id: str, finding: str) -> Project:
    """The option without the word on this finding (its identity). Raises `UnknownName`."""
    option = project.option(option_id)
    kept = tuple(word for word in option.acceptances if word.finding != finding)
    return project.with_option(option.revised(acceptances=kept))
