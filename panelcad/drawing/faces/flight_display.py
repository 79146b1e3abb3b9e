"""Flight displays: rectangular, wide or upright, and round."""

from panelcad.drawing.display import Face, Group, Node
from panelcad.drawing.faces.altimeter import setting_knob
from panelcad.drawing.faces.frame import Frame
from panelcad.drawing.faces.inks import BLACK, CYAN, GREY, LIME, MAGENTA, SCREEN, WHITE
from panelcad.drawing.faces.marks import Box, box, word, words_left, words_right
from panelcad.drawing.faces.parts import bezel, cutout_knobs, knob, round_glass, window
from panelcad.drawing.faces.screen_arcs import height_arc, speed_arc
from panelcad.drawing.faces.screen_attitude import attitude
from panelcad.drawing.faces.screen_map import moving_map
from panelcad.drawing.faces.screen_situation import heading_box, situation, strip
from panelcad.drawing.faces.screen_tapes import airspeed_tape, altitude_tape, tag, vertical_speed_strip
from panelcad.drawing.faces.unit import display_keys, lit_screen, screen_above_knobs
from panelcad.geometry.contour import circle
from panelcad.model.flight import Flight


def draw(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """A rectangular flight display; a wide one shows the map beside, an upright one the rose below."""
    screen = screen_above_knobs(frame)
    picture = _wide if frame.width > 1.25 * frame.height else _upright
    return (*lit_screen(frame, screen, picture(screen, flight)), *display_keys(frame, screen), *cutout_knobs(frame))


def draw_map(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """The same display with the map over its whole screen."""
    screen = screen_above_knobs(frame)
    chart = moving_map(screen, flight, screen.at(0.5, 0.36), 0.46 * min(screen.width, screen.height))
    picture = (chart, *_data(screen, flight))
    return (*lit_screen(frame, screen, picture), *display_keys(frame, screen), *cutout_knobs(frame))


def draw_heading_display(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """A round display with the horizontal situation."""
    r, c = frame.window_radius * 1.02, frame.centre
    picture = (
        situation(c.moved(0.0, -0.06 * r), 0.8 * r, flight),
        *heading_box(c.moved(0.0, 0.9 * r), 0.17 * r, flight),
    )
    return (
        *bezel(frame),
        *window(c, r, BLACK),
        Group(picture, layer=SCREEN, clip=circle(c, 2 * r)),
        round_glass(c, r),
        *knob(setting_knob(frame), 0.16 * r, None),
    )


def _upright(screen: Box, flight: Flight) -> tuple[Node, ...]:
    upper = Box(screen.x, screen.y + 0.38 * screen.height, screen.width, 0.62 * screen.height)
    return _primary(screen, upper, flight)


def _wide(screen: Box, flight: Flight) -> tuple[Node, ...]:
    main = screen.part(0.0, 0.0, 0.62, 1.0) if screen.width > 1.6 * screen.height else screen
    upper = Box(main.x, main.y + 0.38 * main.height, main.width, 0.62 * main.height)
    nodes = _primary(main, upper, flight)
    if main is screen:
        return nodes
    side = Box(main.right + 0.4, screen.y, screen.right - main.right - 0.4, screen.height)
    chart = moving_map(side, flight, side.at(0.5, 0.36), 0.42 * side.width)
    return (*nodes, chart, *_data(side, flight))


def _primary(area: Box, upper: Box, flight: Flight) -> tuple[Node, ...]:
    """The attitude in its own field with a tape on either side, the rose on black in what is left below."""
    w, h = area.width, upper.height
    tape_w, climb_w, small = 0.17 * w, 0.05 * w, 0.08 * h
    low, high = upper.y + small, h - 2.6 * small
    speed = Box(area.x, low, tape_w, high)
    altitude = Box(area.right - climb_w - tape_w, low, tape_w, high)
    field = Box(speed.right + 0.012 * w, upper.y, altitude.x - speed.right - 0.024 * w, h - 1.6 * small)
    return (
        attitude(field, flight, field.at(0.5, 0.48), 0.44 * min(field.width, field.height)),
        airspeed_tape(speed, flight),
        altitude_tape(altitude, flight),
        vertical_speed_strip(Box(altitude.right, low + 0.1 * high, climb_w, 0.8 * high), flight),
        *tag(Box(speed.x, upper.y, tape_w, small), "KT", WHITE),
        *tag(Box(altitude.x, low + high, tape_w, small), f"{flight.altitude_bug:.0f}", CYAN),
        *tag(Box(altitude.x, upper.y, tape_w, small), f"{flight.setting_in_hg:.2f}", CYAN),
        *_modes(Box(area.x, upper.top - 1.5 * small, w, 1.5 * small), flight),
        *_below(Box(area.x, area.y, w, upper.y - area.y), small, flight),
    )


def _below(area: Box, small: float, flight: Flight) -> tuple[Node, ...]:
    """The rose with figures on either side of it."""
    rose = 0.41 * min(area.height, 0.6 * area.width)
    hub = area.at(0.5, 0.46)
    rows = (
        (0.03, 0.86, "HDG SET", f"{flight.heading_bug:03.0f}°", CYAN),
        (0.03, 0.42, "COURSE", f"{flight.course:03.0f}°", MAGENTA),
        (0.8, 0.86, "GROUND KT", f"{flight.ground_speed:.0f}", WHITE),
        (0.8, 0.42, "OUTSIDE °C", f"{flight.outside_c:+.0f}", WHITE),
    )
    figures = (
        node
        for x, y, name, value, colour in rows
        for node in (
            words_left(name, area.at(x, y), 0.3 * small, GREY),
            words_left(value, area.at(x, y).moved(0.0, -0.72 * small), 0.52 * small, colour, Face.BOLD),
        )
    )
    return (*figures, situation(hub, rose, flight), *heading_box(hub.moved(0.0, 1.22 * rose), 0.3 * rose, flight))


def _modes(bar: Box, flight: Flight) -> tuple[Node, ...]:
    """What the autopilot does, and where the aeroplane is bound, on one line at the top."""
    height = 0.42 * bar.height
    return (
        box(bar, BLACK),
        words_left(f"HDG  {flight.vertical_mode}", bar.at(0.02, 0.5), height, LIME, Face.BOLD),
        words_right(f"{flight.next_fix}  {flight.distance_nm:.1f} NM", bar.at(0.98, 0.5), height, MAGENTA),
    )


def _data(side: Box, flight: Flight) -> tuple[Node, ...]:
    row = side.part(0.0, 0.9, 1.0, 0.1)
    height = 0.3 * row.height
    texts = (
        ("GS", f"{flight.ground_speed:.0f}"),
        ("TRK", f"{flight.track:03.0f}°"),
        ("DIS", f"{flight.distance_nm:.1f}"),
    )
    cells = [Box(row.x + i * row.width / 3, row.y, row.width / 3, row.height) for i in range(3)]
    nodes: list[Node] = [box(row, BLACK)]
    for cell, (name, value) in zip(cells, texts, strict=True):
        nodes += [
            words_left(name, cell.at(0.1, 0.5), 0.75 * height, WHITE),
            words_right(value, cell.at(0.92, 0.5), height, MAGENTA),
        ]
    return tuple(nodes)


def draw_round(frame: Frame, flight: Flight) -> tuple[Node, ...]:
    """A flight display in a round instrument's place: attitude, with speed and height as arcs along the rim."""
    r, c = frame.window_radius * 1.02, frame.centre
    area = Box(c.x - r, c.y - r, 2 * r, 2 * r)
    glass = circle(c, 2 * r)
    picture = (
        attitude(area, flight, c.moved(0.0, 0.06 * r), 0.5 * r),
        *speed_arc(c, r, flight),
        *height_arc(c, r, flight),
        strip(area.part(0.28, 0.1, 0.44, 0.14), flight),
        word(f"{flight.setting_in_hg:.2f}", area.at(0.5, 0.055), 0.075 * r, CYAN, Face.BOLD),
    )
    return (
        *bezel(frame),
        *window(c, r, BLACK),
        Group(picture, layer=SCREEN, clip=glass),
        round_glass(c, r),
        *knob(setting_knob(frame), 0.16 * r, None),
    )
