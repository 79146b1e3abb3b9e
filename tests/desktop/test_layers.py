from panelcad.drawing.layers import Layer


def pane(hands):
    dock = hands.window.docks.dock("layers")
    dock.setVisible(True)
    return dock.widget()


def shown(hands) -> set[str]:
    return {item.picture.layer for item in hands.window.bench.stage.scene.groups if item.isVisible()}


def test_a_layer_is_switched_off_not_picked_and_switched_on_again(hands) -> None:
    bezels = pane(hands).boxes[Layer.BEZELS]
    bezels.click()
    assert Layer.BEZELS not in shown(hands)
    assert Layer.CUTS in shown(hands)
    bezels.click()
    assert Layer.BEZELS in shown(hands)


def test_only_the_layers_of_the_view_are_offered(hands) -> None:
    boxes = pane(hands).boxes
    assert boxes[Layer.BODIES].isHidden()
    hands.window.bench.stage.look_from("behind")
    assert boxes[Layer.BEZELS].isHidden()
    assert not boxes[Layer.CUTS].isHidden()


def test_numbers_are_off_at_first_and_are_those_of_the_schedule(hands) -> None:
    assert Layer.NUMBERS not in shown(hands)
    pane(hands).everything.click()
    (numbers,) = [item.picture for item in hands.window.bench.stage.scene.groups if item.picture.layer == Layer.NUMBERS]
    assert {(text.text, (text.at.x, text.at.y)) for text in numbers.nodes} == {
        ("1", (-200.0, 50.0)),
        ("2", (0.0, 50.0)),
        ("3", (200.0, -50.0)),
    }
    assert Layer.NUMBERS in shown(hands)


def test_what_is_off_stays_off_after_an_edit(hands) -> None:
    pane(hands).boxes[Layer.BEZELS].click()
    hands.drag((0, 70), (30, 90))
    assert Layer.BEZELS not in shown(hands)
