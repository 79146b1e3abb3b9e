"""Whatever is done, undoing all of it gives the first project back; saving and loading in between changes nothing."""

from hypothesis import given, settings
from hypothesis import strategies as st

from panelcad.desktop.document import Document
from panelcad.editing.duplicate import duplicate
from panelcad.editing.groups import group, lock, unlock
from panelcad.editing.move import move_by
from panelcad.editing.place import place
from panelcad.editing.remove import remove
from panelcad.editing.rename import rename
from panelcad.editing.rotate import rotate_by
from panelcad.errors import PanelcadError
from panelcad.library.catalogue import packaged_catalogue
from panelcad.model.plate import PlateState
from panelcad.store.project_file import from_bytes, to_bytes
from tests import builders

LENGTH = st.integers(-3000, 3000).map(lambda tenths: tenths / 10)
WHICH = st.integers(0, 50)
STEPS = st.one_of(
    st.tuples(st.just("place"), WHICH, LENGTH, LENGTH),
    st.tuples(st.just("move"), WHICH, LENGTH, LENGTH),
    st.tuples(st.just("turn"), WHICH, LENGTH),
    st.tuples(st.just("rename"), WHICH, st.text("abcü ", min_size=1, max_size=5)),
    *(
        st.tuples(st.just(name), WHICH)
        for name in ("remove", "duplicate", "lock", "unlock", "group", "undo", "redo", "store")
    ),
)


def start() -> Document:
    cuts = (builders.cut("one-cut", -100, 0), builders.cut("two-cut", 100, 0))
    items = (builders.item("one", -100, 0, cut="one-cut"), builders.item("two", 100, 0, cut="two-cut"))
    return Document(builders.project(builders.sheet(state=PlateState.NEW, cuts=cuts), items=items))


def edited(document: Document, step: tuple) -> None:
    """One step; an edit that is refused leaves everything as it was."""
    name, which, *more = step
    project, items = document.project, document.option.items
    if name == "place":
        cutouts = list(packaged_catalogue().cutouts.values())
        document.apply(name, place(project, "new", "main", cutouts[which % len(cutouts)], *more).project)
        return
    if not items:
        return
    part = items[which % len(items)].id
    changes = {
        "move": lambda: move_by(project, "new", (part,), *more),
        "turn": lambda: rotate_by(project, "new", (part,), *more),
        "rename": lambda: rename(project, "new", part, *more),
        "remove": lambda: remove(project, "new", (part,)),
        "duplicate": lambda: duplicate(project, "new", (part,), 7.0, -3.0).project,
        "lock": lambda: lock(project, "new", (part,)),
        "unlock": lambda: unlock(project, "new", (part,)),
        "group": lambda: group(project, "new", [item.id for item in items[:2]])[0],
    }
    document.apply(name, changes[name]())


@given(st.lists(STEPS, max_size=12))
@settings(max_examples=25, deadline=None)
def test_undoing_everything_gives_the_first_project_back(steps) -> None:
    document = start()
    first = document.project
    content = to_bytes(first)
    for step in steps:
        if step[0] == "undo":
            document.undo()
        elif step[0] == "redo":
            document.redo()
        elif step[0] == "store":
            assert from_bytes(to_bytes(document.project), "a test") == document.project
        else:
            before = document.project
            try:
                edited(document, step)
            except PanelcadError:
                assert document.project is before
    last = document.project
    done = len(document.done)
    while document.done:
        document.undo()
    assert document.project is first
    assert to_bytes(document.project) == content
    for _ in range(done):
        document.redo()
    assert document.project is last
