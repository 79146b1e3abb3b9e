"""Lay out a light aircraft's new instrument panel, check it, show it, and release it to the machinist.

The same functions serve the window, the command line and scripts. Heavy libraries load where they are first used.
"""

from panelcad.model.layout import layout
from panelcad.model.project import Project
from panelcad.store.project_file import load, save

__all__ = ["Project", "layout", "load", "save"]
