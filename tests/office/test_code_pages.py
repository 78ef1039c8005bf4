"""Which code page a text is in: each word is written in a page and must come back, or be asked about with the right reading."""

import pytest

from tracker.intake.vocabulary.known_words import KNOWN
from tracker.office.opening.code_pages import decoded

HEADINGS = {
    "en": "Loom;Hall;Machine type;Notes", "de": "Stuhl;Halle;Maschinentyp;Bemerkung", "fr": "Place;Salle;Type de machine;Vitesse",
    "it": "N. telaio;Sala;Tipo macchina;Note", "es": "Telar;Nave;Tipo;Velocidad", "pt": "Tear;Sala;Modelo;Notas",
    "tr": "Salon;Makine Tipi;Devir;Not",
}  # fmt: skip
WORDS = {
    "de": ("Kühlung geprüft", "Schäfte", "GETRIEBE LÄUFT", "Öl", "Straße", "größer"),
    "fr": ("métier réglé", "huile ôtée", "à l’entrée", "boîte bruyante", "ÉTÉ", "œil", "naïf"),
    "it": ("qualità", "così", "perché", "più", "è lento"),
    "es": ("daño", "año dudoso", "máquina", "señal"),
    "pt": ("manutenção", "não", "mês", "Galpão"),
    "tr": ("şaft", "bakım gerekli", "gürültülü", "çalışıyor", "İplik", "ağır"),
    "en": (
        "operator’s favourite",
        "75½",
        "–",
        "N° 3",
        "20 °C",
        "Ø 30",
        "“new” reed",
        "A–02",
        "café",
        "naïve",
        "reed\xa0width",
    ),
}
PAGES = {"tr": ("cp1254", "cp857", "mac_turkish")}
CASES = [
    (headings, word, page)
    for language, words in WORDS.items()
    for headings in dict.fromkeys((language, "en"))
    for word in words
    for page in PAGES.get(language, ("cp1252", "cp850", "mac_roman"))
]


@pytest.mark.parametrize(("headings", "word", "page"), CASES)
def test_a_word_beyond_ascii_is_never_read_wrongly_without_asking(headings, word, page):
    try:
        data = f"{HEADINGS[headings]}\n1;H;AJ;{word}\n".encode(page)
    except UnicodeEncodeError:
        return
    read = decoded(data, KNOWN)
    texts = [data.decode(name) for name, _ in read.readings] or [read.text]
    assert any(f";{word}\n" in text for text in texts)


@pytest.mark.parametrize(
    ("headings", "word", "page"),
    [
        (headings, word, page) for headings, word, page in CASES
        if page in ("cp1252", "cp1254") and word in WORDS[headings] and word not in ("Straße", "İplik", "è lento")
    ],
)  # fmt: skip
def test_the_commonest_pages_are_told_without_a_question(headings, word, page):
    data = f"{HEADINGS[headings]}\n1;H;AJ;{word}\n".encode(page)
    assert not decoded(data, KNOWN).readings


def test_one_odd_byte_leaves_the_rest_utf_8_and_an_answer_settles_the_page():
    data = "Loom;Notes\n1;métier réglé\n".encode() + b"2;caf\xe9\n"
    assert decoded(data, KNOWN).text == "Loom;Notes\n1;métier réglé\n2;caf\ufffd\n"
    data = "Loom;Notes\n1;così\n".encode("cp850")
    assert decoded(data, KNOWN).readings and decoded(data, KNOWN, "cp850").text == "Loom;Notes\n1;così\n"
