"""Random edits of a panel: undoing all of them gives the first project back, and saving in between changes nothing."""

import contextlib
from collections.abc import Callable

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule

from panelcad.editing.align import Line, align, distribute, equal_gaps
from panelcad.editing.attach import Spread, attach_along
from panelcad.editing.between import centre_in_row
from panelcad.editing.clip import copy, from_text, paste, to_text
from panelcad.editing.duplicate import Grid, duplicate_in_grid
from panelcad.editing.extents import Axis
from panelcad.editing.groups import group, lock, ungroup, unlock
from panelcad.editing.marks import add_dimension, in_line, pull_dimensions
from panelcad.editing.mirror import mirror
from panelcad.editing.move import move_by, move_to
from panelcad.editing.options import copy_option, delete_option
from panelcad.editing.outline import bow_by, outline_of, set_outline
from panelcad.editing.place import place
from panelcad.editing.remove import remove
from panelcad.editing.rename import rename
from panelcad.editing.rotate import rotate_about, rotate_by, turn_as_one, turn_each
from panelcad.editing.sharp_outline import redrawn
from panelcad.editing.split_plates import split_plate
from panelcad.editing.stack import add_to_stack, place_stack
from panelcad.editing.stack_order import step_in_stack
from panelcad.editing.swap import swap
from panelcad.editing.taken_along import bring_to
from panelcad.errors import PanelcadError
from panelcad.geometry.point import Point
from panelcad.model.cutout import Bezel, Cutout, RackUnit
from panelcad.model.hole import HoleForm
from panelcad.model.layout import layout
from panelcad.model.markup import Along, Hook
from panelcad.model.project import Project
from panelcad.model.shape import Circle, Outline, Rectangle
from panelcad.store.project_file import from_bytes, to_bytes
from panelcad.units import LengthUnit
from tests import builders

lengths = st.floats(-400, 400).map(lambda mm: round(mm, 4))
angles = st.sampled_from([15.0, 90.0, -90.0, 180.0, 33.3])
BEZEL = Bezel(shape=Circle(diameter=85.0), x=2.0, source=builders.SOURCE)


def _rack(height: float) -> Cutout:
    rack = RackUnit(height=height, width=158.75, rail_distance=160.02, source=builders.SOURCE)
    opening = builders.opening(Rectangle(width=160.02, height=height + 1.0))
    return builders.round_cutout(name=f"rack-{height:g}", openings=(opening,), rack=rack, bezel=BEZEL)


CUTOUTS = (
    builders.round_cutout(name="gauge", bezel=BEZEL),
    builders.round_cutout(name="switch", diameter=12.3),
    builders.round_cutout(name="blank", openings=(), bezel=BEZEL),
    _rack(33.0),
    _rack(50.0),
)
cutouts = st.sampled_from(CUTOUTS)


class Editing(RuleBasedStateMachine):
    def __init__(self) -> None:
        super().__init__()
        first = builders.project(builders.sheet(width=1200.0, height=600.0), unit=LengthUnit.INCH)
        self.history = [first]
        self.first_bytes = to_bytes(first)

    @property
    def project(self) -> Project:
        return self.history[-1]

    def ids(self, data: st.DataObject, least: int = 1) -> list[str]:
        option = self.project.option("new")
        known = sorted(option.part_ids() - {plate.id for plate in option.plates})
        if len(known) < least:
            return []
        return data.draw(st.lists(st.sampled_from(known), min_size=least, max_size=4, unique=True))

    def edit(self, change: Callable[[Project], Project]) -> None:
        """An edit is done whole or refused in one sentence."""
        with contextlib.suppress(PanelcadError):
            self.history.append(change(self.project))

    def edit_some(self, data: st.DataObject, change: Callable[[Project, list[str]], Project], least: int = 1) -> None:
        ids = self.ids(data, least)
        if ids:
            self.edit(lambda project: change(project, ids))

    @rule(cutout=cutouts, x=lengths, y=lengths, rotation=angles)
    def place_one(self, cutout: Cutout, x: float, y: float, rotation: float) -> None:
        self.edit(lambda p: place(p, "new", "main", cutout, x, y, rotation).project)

    @rule(units=st.lists(st.sampled_from(CUTOUTS[3:]), min_size=1, max_size=3), x=lengths, top=lengths)
    def place_a_stack(self, units: list[Cutout], x: float, top: float) -> None:
        self.edit(lambda p: place_stack(p, "new", "main", units, x, top).project)

    @rule(data=st.data(), unit=st.sampled_from(CUTOUTS), position=st.integers(0, 3))
    def stack_one(self, data: st.DataObject, unit: Cutout, position: int) -> None:
        self.edit_some(data, lambda p, ids: add_to_stack(p, "new", ids[0], unit, position).project)

    @rule(data=st.data(), dx=lengths, dy=lengths)
    def shift(self, data: st.DataObject, dx: float, dy: float) -> None:
        self.edit_some(data, lambda p, ids: move_by(p, "new", ids, dx, dy))
        self.edit_some(data, lambda p, ids: move_to(p, "new", ids[0], dx, dy))

    @rule(data=st.data(), degrees=angles, x=lengths)
    def turn(self, data: st.DataObject, degrees: float, x: float) -> None:
        self.edit_some(data, lambda p, ids: rotate_by(p, "new", ids, degrees))
        self.edit_some(data, lambda p, ids: rotate_about(p, "new", ids, Point(x, 0.0), degrees))

    @rule(data=st.data(), degrees=angles)
    def turn_as_a_hand_does(self, data: st.DataObject, degrees: float) -> None:
        self.edit_some(data, lambda p, ids: turn_as_one(p, "new", ids, degrees))
        self.edit_some(data, lambda p, ids: turn_each(p, "new", ids, degrees))

    @rule(data=st.data(), by=st.integers(-2, 2), axis=st.sampled_from(Axis), x=lengths)
    def order_and_centre(self, data: st.DataObject, by: int, axis: Axis, x: float) -> None:
        self.edit_some(data, lambda p, ids: step_in_stack(p, "new", ids[0], by))
        self.edit_some(data, lambda p, ids: centre_in_row(p, "new", ids, axis))
        self.edit_some(data, lambda p, ids: bring_to(p, "new", ids[0], x, 0.0))

    @rule(dx=lengths, dy=lengths)
    def pull(self, dx: float, dy: float) -> None:
        names = [dimension.id for dimension in self.project.option("new").dimensions]
        self.edit(lambda p: pull_dimensions(p, "new", names, dx, dy))
        for name in names:
            self.edit(lambda p, name=name: in_line(p, "new", name, 50.0)[0])

    @rule(data=st.data(), axis=st.sampled_from(Axis), at=lengths)
    def turn_over(self, data: st.DataObject, axis: Axis, at: float) -> None:
        self.edit_some(data, lambda p, ids: mirror(p, "new", ids, axis, at))

    @rule(data=st.data(), line=st.sampled_from(Line), axis=st.sampled_from(Axis))
    def line_up(self, data: st.DataObject, line: Line, axis: Axis) -> None:
        self.edit_some(data, lambda p, ids: align(p, "new", ids, line), 2)
        self.edit_some(data, lambda p, ids: distribute(p, "new", ids, axis), 3)
        self.edit_some(data, lambda p, ids: equal_gaps(p, "new", ids, axis), 3)

    @rule(data=st.data(), cutout=cutouts)
    def replace_one(self, data: st.DataObject, cutout: Cutout) -> None:
        self.edit_some(data, lambda p, ids: swap(p, "new", ids[0], cutout))

    @rule(data=st.data())
    def take_away(self, data: st.DataObject) -> None:
        self.edit_some(data, lambda p, ids: remove(p, "new", ids))

    @rule(data=st.data(), name=st.sampled_from(["Fuel", "Clock", "Ω"]))
    def name_group_and_lock(self, data: st.DataObject, name: str) -> None:
        self.edit_some(data, lambda p, ids: rename(p, "new", ids[0], name))
        self.edit_some(data, lambda p, ids: group(p, "new", ids, name)[0], 2)
        self.edit_some(data, lambda p, ids: lock(p, "new", ids[:1]))
        self.edit_some(data, lambda p, ids: unlock(p, "new", ids), 2)
        self.edit_some(data, lambda p, ids: ungroup(p, "new", ids), 2)

    @rule(data=st.data(), dx=lengths)
    def copy_and_paste(self, data: st.DataObject, dx: float) -> None:
        self.edit_some(
            data, lambda p, ids: paste(p, "new", "main", from_text(to_text(copy(p, "new", ids))), dx).project
        )
        self.edit_some(data, lambda p, ids: duplicate_in_grid(p, "new", ids, Grid(2, 1, 50.0)).project)

    @rule(data=st.data(), offset=lengths)
    def dimension(self, data: st.DataObject, offset: float) -> None:
        self.edit_some(
            data,
            lambda p, ids: add_dimension(p, "new", "main", Hook(), Hook(part=ids[0]), Along.ACROSS, offset)[0],
        )
        self.edit_some(
            data,
            lambda p, ids: add_dimension(p, "new", "main", Hook(part=ids[0]), Hook(part=ids[1]), Along.UP, offset)[0],
            2,
        )

    @rule(edge=st.integers(0, 3), rise=st.floats(1, 60), x=lengths)
    def change_the_sheet(self, edge: int, rise: float, x: float) -> None:
        form = HoleForm(diameter=5.0, fastener=4.8)
        self.edit(lambda p: attach_along(p, "new", "main", edge, Spread(12.0, 20.0, 200.0), form).project)
        self.edit(lambda p: set_outline(p, "new", "main", bow_by(_outline(p), edge, rise)))
        self.edit(lambda p: set_outline(p, "new", "main", _rounded(_outline(p), edge, rise)))
        self.edit(lambda p: split_plate(p, "new", "main", Point(x, 0.0), Point(x + 1.0, 9.0)).project)

    @rule(unit=st.sampled_from(LengthUnit))
    def change_the_unit_and_the_options(self, unit: LengthUnit) -> None:
        self.edit(lambda p: p.revised(unit=unit))
        self.edit(lambda p: copy_option(p, "new").project)
        self.edit(lambda p: delete_option(p, "new-2"))

    @invariant()
    def saving_and_loading_changes_nothing(self) -> None:
        assert from_bytes(to_bytes(self.project), "a file") == self.project

    @invariant()
    def an_instrument_stands_where_its_cut_is(self) -> None:
        option = self.project.option("new")
        cuts = {cut.id: cut for plate in option.plates for cut in plate.cuts}
        for item in option.items:
            alone = sum(other.cut == item.cut for other in option.items) == 1
            if item.cut is not None and alone and cuts[item.cut].cutout is not None:
                cut = cuts[item.cut]
                assert (item.x, item.y, item.rotation) == (cut.x, cut.y, cut.rotation)

    @invariant()
    def it_can_be_laid_out(self) -> None:
        layout(self.project, self.project.option("new"))

    def teardown(self) -> None:
        """Undo puts references back; the first project is still what it was, byte for byte."""
        while len(self.history) > 1:
            self.history.pop()
        assert to_bytes(self.project) == self.first_bytes


def _pasted(project: Project, text: str, dx: float) -> Project:
    return paste(project, "new", "main", from_text(text), dx).project


def _outline(project: Project) -> Outline:
    return outline_of(project.option("new").plate("main").outline)


def _rounded(outline: Outline, corner: int, radius: float) -> Outline:
    return redrawn(outline, lambda whole: whole.rounded_by(corner % len(whole.radii), radius))


TestEditing = Editing.TestCase
TestEditing.settings = settings(
    max_examples=25, stateful_step_count=20, deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
