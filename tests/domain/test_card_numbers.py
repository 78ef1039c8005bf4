"""Card numbers: a published check, stable, and a typing error shows."""

import pytest

from tracker.domain.card_numbers import card_number, check_character, read_card_number


@pytest.mark.parametrize(
    ("digits", "check"),
    [
        ("079", "X"),  # ISO/IEC 7064, the standard's own example of MOD 11-2
        ("0794", "0"),  # likewise
        ("000000021825009", "7"),  # the sample identifier 0000-0002-1825-0097 of the ORCID support pages
    ],
)
def test_the_check_character_is_that_of_the_standard(digits, check):
    assert check_character(digits) == check


def test_a_number_by_hand():
    """30042: ((((3·2 + 0)·2 + 0)·2 + 4)·2 + 2)·2 = 116; 116 mod 11 = 6; 12 − 6 = 6."""
    assert card_number(3, 42) == "C3-0042-6"
    assert read_card_number(" c3-0042-6 ") == read_card_number("C300426") == (3, 42)


def test_every_wrong_digit_and_every_swap_of_neighbours_shows():
    number = card_number(17, 1204)
    wrong = {number[:i] + d + number[i + 1 :] for i, c in enumerate(number) if c.isdigit() for d in "0123456789X"} | {
        number[:i] + number[i + 1] + number[i] + number[i + 2 :] for i in range(1, len(number) - 1)
    }
    for text in wrong - {number}:
        with pytest.raises(ValueError, match="no card number"):
            read_card_number(text)


@pytest.mark.parametrize("text", ["", "42", "C-0042-6", "C3-042-6", "C0-0042-1", "C3-0000-3", "D3-0042-6"])
def test_what_is_none(text):
    with pytest.raises(ValueError, match="no card number"):
        read_card_number(text)


@pytest.mark.parametrize(("plan", "place"), [(0, 1), (1, 0), (1, 10_000)])
def test_there_is_no_number_beyond_its_bounds(plan, place):
    with pytest.raises(ValueError, match="no card number"):
        card_number(plan, place)
