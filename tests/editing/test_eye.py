from panelcad.editing.eye import FIRST_DISTANCE, eye_or_first, move_eye, place_eye
from panelcad.model.source import Standing
from tests import builders


def test_a_first_eye_is_before_the_left_half_of_the_panel() -> None:
    eye = eye_or_first(builders.project())
    assert (eye.x, eye.z) == (-150.0, -FIRST_DISTANCE)
    assert eye.y > 150


def test_moving_takes_the_centre_line_along_and_says_who_entered_it() -> None:
    project = place_eye(builders.project(), -200.0, 100.0, -700.0)
    eye = move_eye(project, 10.0, -5.0, 20.0).surroundings.eye
    assert eye is not None
    assert (eye.x, eye.y, eye.z, eye.centre_line) == (-190.0, 95.0, -680.0, -190.0)
    assert eye.source.standing is Standing.USER
    assert project.surroundings.eye.x == -200.0
