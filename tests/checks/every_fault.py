"""One project with every fault: each case of the rules' tests that fails, on a plate of its own, far from others."""

from collections.abc import Iterator

from panelcad.model.cutout import CompassSafe, Cutout
from panelcad.model.plate import CutState
from panelcad.model.profile import Profile
from panelcad.model.project import Project
from panelcad.model.shape import Circle, Corner, Outline
from panelcad.model.surroundings import Compass, Surroundings
from tests.builders import SOURCE, cut, project, round_cutout
from tests.checks import (
    test_bends,
    test_bezels,
    test_bodies,
    test_bundles,
    test_contours,
    test_corner,
    test_depth,
    test_edge_distance,
    test_fit,
    test_front,
    test_hardware,
    test_net_section,
    test_outline,
    test_overlay,
    test_plates_apart,
    test_service,
    test_stack,
    test_web,
)
from tests.checks.made import fitted, four_screws, instrument, own_cut, panel

MODULES = (
    test_bends,
    test_bezels,
    test_bodies,
    test_bundles,
    test_contours,
    test_corner,
    test_depth,
    test_edge_distance,
    test_fit,
    test_front,
    test_hardware,
    test_outline,
    test_service,
    test_stack,
    test_web,
)
APART = 2_500.0
"""Wider than any of the plates, and than what is wrong with them reaches."""
LIMITS = Profile(bed_width=2000.0, bed_height=950.0, stock_width=1300.0, stock_height=960.0)
BOW = Outline(corners=tuple(Corner(x=x, y=y) for x, y in ((0, 0), (40, 40), (40, 0), (0, 60))))


def faults() -> Iterator[tuple[str, Project]]:
    """A name and a project for each fault."""
    for module in MODULES:
        for number, case in enumerate(module.CASES, 1):
            yield f"{module.__name__.rpartition('test_')[2].replace('_', '-')}-{number}", case.make(case.fails)
    circle = Circle(diameter=50)
    yield "doubled", panel(cuts=(own_cut("a", 0, 0, circle), own_cut("b", 0, 0, circle)))
    yield "crossing", panel(cuts=(own_cut("a", 0, 0, BOW),))
    screws = round_cutout(holes=(four_screws(),), own_web=2.7)
    yield "own-web", panel(cuts=(cut("a", 0, 0),), cutouts=(screws,))
    yield "open", panel(cuts=(own_cut("old", 0, 0, circle, state=CutState.EXISTING),))
    yield "thin", panel(thickness=0.8)
    yield "bed", panel(size=(1500.0, 1000.0))
    yield "stock", panel(size=(1300.0, 900.0), state="new")
    yield "compass", panel(fitted("a", 0, 0), cutouts=(instrument(compass_safe=_SAFE),))
    yield "section", test_net_section.window(250)
    yield "overlay", test_overlay.over(-1.0)
    yield "alone", project(test_overlay.sheet(), test_overlay.overlay(own_cut("above", 0, 0, circle)))
    yield "two-plates", test_plates_apart.two_plates(1.0)
    yield "other-rib", test_plates_apart.beside_the_other_plates_rib(1.0, None)
    yield "other-shade", test_plates_apart.knob_to_shade(1.0)
    yield "no-cut", panel(items=(fitted("a", 0, 0)[1].revised(cut=None),))


_SAFE = CompassSafe(distance=300.0, source=SOURCE)


def every_fault() -> Project:
    """All of them in one option; the compass stands beside the fault that is about it."""
    every = list(faults())
    option = panel().option("new")
    plates, items, cutouts, around = [], [], [], []
    for number, (name, made) in enumerate(every):
        own = made.option("new")
        cutouts += [_named(each, name) for each in made.cutouts]
        plates += [_plate(plate, name, (number % 30 - 15) * APART, (number // 30) * APART) for plate in own.plates]
        items += [_item(each, name) for each in own.items]
        around.append(_around(made.surroundings, name))
    at = next(plate.frame for plate in plates if plate.id.startswith("compass"))
    whole = Surroundings(
        obstacles=tuple(each for one in around for each in one.obstacles),
        depth_limits=tuple(each for one in around for each in one.depth_limits),
        moving_parts=tuple(each for one in around for each in one.moving_parts),
        keep_outs=tuple(each for one in around for each in one.keep_outs),
        compass=Compass(x=at.x, y=at.y + 200.0, z=0.0, source=SOURCE),
    )
    filled = option.revised(plates=tuple(plates), items=tuple(items))
    return project(cutouts=tuple(cutouts), profile=LIMITS, surroundings=whole, options=(filled,))


def _named(cutout: Cutout, fault: str) -> Cutout:
    return cutout.revised(name=f"{fault}.{cutout.name}")


def _plate(plate, fault, x, y):
    cuts = tuple(
        each.revised(id=f"{fault}.{each.id}", cutout=each.cutout and f"{fault}.{each.cutout}") for each in plate.cuts
    )
    screws = tuple(each.revised(id=f"{fault}.{each.id}") for each in plate.attach_screws)
    frame = plate.frame.revised(x=plate.frame.x + x, y=y)
    over = plate.over and f"{fault}.{plate.over}"
    return plate.revised(id=f"{fault}.{plate.id}", cuts=cuts, attach_screws=screws, frame=frame, over=over)


def _item(item, fault):
    return item.revised(
        id=f"{fault}.{item.id}",
        cutout=f"{fault}.{item.cutout}",
        cut=item.cut and f"{fault}.{item.cut}",
        plate=item.plate and f"{fault}.{item.plate}",
    )


def _around(around: Surroundings, fault: str) -> Surroundings:
    kinds = {"obstacles", "depth_limits", "moving_parts", "keep_outs"}
    return around.revised(
        **{
            kind: tuple(
                each.revised(id=f"{fault}.{each.id}", plate=f"{fault}.{each.plate}") for each in getattr(around, kind)
            )
            for kind in kinds
        }
    )
