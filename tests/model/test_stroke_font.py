import unicodedata

import pytest

from panelcad.errors import UnknownName
from panelcad.geometry.point import Point, distance
from panelcad.model.stroke_font import missing_letters, stroke_lettering, stroke_width
from panelcad.model.stroke_glyphs import ALIKE, GLYPHS

HERE = Point(0.0, 0.0)
PANGRAMS = {
    "Czech": "Příliš žluťoučký kůň úpěl ďábelské ódy",
    "Danish": "Høj bly gom vandt fræk sexquiz på wc",
    "Dutch": "Pa's wijze lynx bezag vroom het fikse aquaduct",
    "Estonian": "Põdur Zagrebi tšellomängija-följetonist Ciqo külmetas kehvas garaažis",
    "Finnish": "Törkylempijävongahdus",
    "French": "Voix ambiguë d'un cœur qui, au zéphyr, préfère les jattes de kiwis",
    "German": "Falsches Üben von Xylophonmusik quält jeden größeren Zwerg",
    "Greek, capitals": "ΞΕΣΚΕΠΑΖΩ ΤΗΝ ΨΥΧΟΦΘΟΡΑ ΒΔΕΛΥΓΜΙΑ",
    "Hungarian": "Árvíztűrő tükörfúrógép",
    "Icelandic": "Kæmi ný öxi hér, ykist þjófum nú bæði víl og ádrepa",
    "Italian": "Pranzo d'acqua fa volti sghembi, perché è così",
    "Latvian": "Glāžšķūņa rūķīši dzērumā čiepj Baha koncertflīģeļu vākus",
    "Lithuanian": "Įlinkdama fechtuotojo špaga sublykčiojusi pragręžė apvalų arbūzą",
    "Maltese": "Ħanżir ċkejken ġabu għaż-żejt",
    "Norwegian": "Vår sære Zulu fra badeøya spilte jo whist og quickstep i min taxi",
    "Polish": "Pchnąć w tę łódź jeża lub ośm skrzyń fig",
    "Portuguese": "Luís argüia à Júlia que brações, fé, chá, óxido, pôr, zângão eram palavras",
    "Romanian": "Gheorghe, obezul, a reușit să obțină jucându-se un flux în Quebec",
    "Russian, capitals": "СЪЕШЬ ЖЕ ЕЩЁ ЭТИХ МЯГКИХ ФРАНЦУЗСКИХ БУЛОК, ДА ВЫПЕЙ ЧАЮ",
    "Slovak": "Kŕdeľ šťastných ďatľov učí pri ústí Váhu mĺkveho koňa",
    "Slovenian": "Šerif bo za vajo spet kuhal domače žgance",
    "Spanish": "¿Quién, zorro? ¡Jamás! El pingüino Wenceslao hizo kilómetros bajo exhaustiva lluvia",
    "Swedish": "Yxskaftbud, ge vår WC-zonmö IQ-hjälp",
    "Turkish": "Pijamalı hasta yağız şoföre çabucak güvendi",
}


@pytest.mark.parametrize("language", PANGRAMS)
def test_covers_the_languages_of_europe(language):
    assert missing_letters(PANGRAMS[language]) == ()


def test_composed_and_decomposed_letters_are_the_same():
    text = "Höhe ďž ą"

    assert stroke_lettering(unicodedata.normalize("NFD", text), 5.0, HERE) == stroke_lettering(text, 5.0, HERE)


def test_a_line_is_centred_and_as_high_as_asked():
    boxes = [track.bounds for track in stroke_lettering("HELIX", 4.0, Point(100.0, 50.0))]
    left, right = min(b[0] for b in boxes), max(b[2] for b in boxes)

    assert (min(b[1] for b in boxes), max(b[3] for b in boxes)) == pytest.approx((48.0, 52.0))
    assert (left + right) / 2 == pytest.approx(100.0)
    assert right - left == pytest.approx(stroke_width("HELIX", 4.0))


def test_letters_stand_two_tenths_and_words_six_tenths_apart():
    """ISO 3098, lettering B: a = 2/10 h, e = 6/10 h, clear of a stroke of 1/10 h; 'I' has no width."""
    stroke = 1.0
    assert stroke_width("II", 10.0) - stroke == pytest.approx(2.0)
    assert stroke_width("I I", 10.0) - stroke == pytest.approx(6.0)


JUDGED = sorted({c for c in (*GLYPHS, *ALIKE) if c.isupper() or c.isdigit()} - set("1I\u0399\u0406"))
"""Capitals and figures, save I, its Greek and Cyrillic likenesses, and 1."""


@pytest.mark.parametrize("stroke", [1 / 8, 1 / 7, 1 / 6])
@pytest.mark.parametrize("letter", JUDGED)
def test_capitals_and_figures_are_three_to_five_up_to_as_wide_as_high(letter, stroke):
    """DOD-HDBK-791 6-5.3.2.2, at the outer edges of the strokes as cut: half a stroke around their middles."""
    width = stroke_width(letter, 10.0) + 10.0 * stroke
    height = 10.0 + 10.0 * stroke
    assert 3 / 5 <= width / height <= 1


@pytest.mark.parametrize("letter", "BCDEFGHJKLMNOPRSTUVWXYZ023456789")
def test_capitals_and_figures_fill_their_height(letter):
    boxes = [track.bounds for track in stroke_lettering(letter, 10.0, HERE)]
    assert min(box[1] for box in boxes) == pytest.approx(-5.0, abs=0.002)
    assert max(box[3] for box in boxes) == pytest.approx(5.0, abs=0.002)


@pytest.mark.parametrize("char", GLYPHS)
def test_no_stroke_has_a_tiny_piece_or_leaves_its_line(char):
    for track in stroke_lettering(f"H{char}H", 10.0, HERE):
        assert all(distance(v.point, w.point) > 0.09 for v, w in zip(track.vertices, track.vertices[1:], strict=False))
        assert track.bounds[1] >= -8.5
        assert track.bounds[3] <= 6.5


def test_a_lookalike_is_drawn_as_the_letter_it_looks_like():
    assert all(target in GLYPHS for target in ALIKE.values())


def test_a_letter_that_is_not_drawn_is_named():
    assert missing_letters("OIL 油") == ("油",)
    with pytest.raises(UnknownName, match="no engraved letter '油'"):
        stroke_lettering("OIL 油", 5.0, HERE)
