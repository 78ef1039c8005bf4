"""What headings mean, in eight languages, abbreviated, misspelt, qualified; and what they do not mean."""

import pytest
from mill_sheets import read, workbook

from tracker.domain.tables import LOOMS, TABLES
from tracker.intake.vocabulary.dictionary import LANGUAGES, read_data, vocabulary
from tracker.intake.vocabulary.headings import match_heading

FIELDS = {column.field for column in LOOMS.columns}


def meaning(text):
    """Field of the loom list that a heading means most surely, and how surely."""
    found = [
        (e.weight, e.field) for e in match_heading(text).candidates if e.table in ("", "looms") and e.field in FIELDS
    ]
    return max(found, default=(0.0, ""))


@pytest.mark.parametrize(
    ("field", "headings"),
    [
        (
            "loom",
            "Loom #|M/c No.|Webstuhl-Nr.|N° métier|N. telaio|Nº de telar|Tear n.º|Tezgâh No.|机台编号|MASCH.-NR.|LOOM_NO",
        ),
        ("hall", "Weave room|Websaal|Salle|At.|Capannone|Nave|Galpão|SALON|车间"),
        ("machine_type", "Loom type|Masch.-Typ|Type mach.|Tipo telaio|Tipo máq.|Mod.|MAKİNE TİPİ|机型"),
        ("year", "Yr|Bj.|Année constr.|Anno costr.|Año fabr.|Ano de fab.|İMAL YILI|出厂年份"),
        (
            "reed_width_cm",
            "Reed space (in)|Blattbr. cm|Larg. peigne|Alt. pettine|Ancho peine (cm)|Larg. pente|TARAK ENİ|筘幅（cm）|Reedwidth",
        ),
        ("frames", "No. of shafts|Anz. Schäfte|Nb lames|N. licci|Nº cuadros|Qdr.|Çerç. Say.|综框数|Heald frames"),
        (
            "speed_ppm",
            "RPM|Drehz. 1/min|Vit. (cps/mn)|Colpi/min|Vel. (pas./min)|Rot.|Devir (d/dk)|车速（纬/分）|picks per minute",
        ),
        ("efficiency", "Eff.%|NE %|Rdt %|Rend.|Efic. %|Ef.%|RANDIMAN (%)|效率（%）|Efficency|% Eff"),
        (
            "protected_until",
            "Not before|Gesperrt bis|Bloqué jusqu'au|Bloccato fino al|Protegido hasta|Bloqueado até|保护至",
        ),
    ],
)
def test_meant(field, headings):
    for text in headings.split("|"):
        weight, found = meaning(text)
        assert found == field and weight >= 0.7, (text, found, weight)


NOT_MEANT = (
    "Rail|Creel type|Sides|Drop wires|Controller generation|Ne|Schuss/cm|Serial no.|Inventory no.|Reed no.|Reed count|"
    "Cloth width|Max. speed|Vitesse maxi|最高车速|Speed min|Old loom no.|Frame type|Row spacing|m/min|Gatter|Cantre|Taraf|"
    "控制器代次|序号|S. No."
)


@pytest.mark.parametrize("text", NOT_MEANT.split("|"))
def test_not_meant(text):
    assert meaning(text)[0] < 0.6


def test_serial_numbers_are_told():
    assert all(match_heading(text).serial for text in ("序号", "S. No.", "Lfd. Nr.", "N° d'ordre", "Sıra No"))


def test_qualifiers_are_told():
    said = {
        text: match_heading(text).qualifier
        for text in ("Speed set", "Drehzahl Ist", "Max. speed", "Alte WM-Nr.", "Speed")
    }
    assert said == {
        "Speed set": "target",
        "Drehzahl Ist": "actual",
        "Max. speed": "maximum",
        "Alte WM-Nr.": "old",
        "Speed": "",
    }


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_language_names_every_field_of_every_table(language):
    data = read_data(language)
    missing = [
        f"{table.name}.{column.field}"
        for table in TABLES.values()
        for column in table.columns
        if not (data["fields"].get(column.field) or data.get(table.name, {}).get(column.field))
    ]
    assert missing == []


def test_no_phrase_means_two_fields_of_a_table_alike():
    clashes = []
    for table in TABLES.values():
        fields = {column.field for column in table.columns}
        for phrase, entries in vocabulary().phrases.items():
            best = {}
            for e in entries:
                if e.table in ("", table.name) and e.field in fields:
                    best[e.field] = max(best.get(e.field, 0), e.weight + (0.01 if e.table else 0))
            top = sorted(best.values(), reverse=True)[:2]
            if len(top) == 2 and top[0] >= 0.9 and top[0] - top[1] < 0.01:
                clashes.append((table.name, phrase))
    assert clashes == []


def test_each_line_of_a_heading_answers_for_it(tmp_path):
    """A question about `Reed width`, written over two lines, takes its answer under either line or both."""
    rows = [
        ["Loom", "Hall", "Machine", "Reed"],
        ["no.", None, "type", "width"],
        *([f"{i}", "H", "T4", 120 + i] for i in range(9)),
    ]
    path = workbook(tmp_path / "a.xlsx", rows)
    assert [d.heading for d in read(path).doubts] == ["Reed width"]
    for key in ("Reed width", "width", "reed"):
        assert read(path, answers={key: "inch"}).looms[0]["reed_width_cm"] == pytest.approx(304.8)


@pytest.mark.parametrize(
    ("heading", "field"),
    [
        ("Avg. speed", "speed_ppm"), ("Mean speed (rpm)", "speed_ppm"), ("Rdt moyen", "efficiency"),
        ("Ort. randıman", "efficiency"), ("平均效率", "efficiency"), ("Ø NE", "efficiency"), ("Speed 2026", "speed_ppm"),
        ("Eficiencia 2026 %", "efficiency"), ("M/c speed", "speed_ppm"), ("M/c type", "machine_type"),
        ("R/S (cm)", "reed_width_cm"), ("筘幅cm", "reed_width_cm"), ("Schuss pro Minute", "speed_ppm"),
        ("Touren/min", "speed_ppm"), ("Vitesse (cp/min)", "speed_ppm"), ("Veloc. / pass/min", "speed_ppm"),
    ],
)  # fmt: skip
def test_averages_years_and_rarer_units_leave_the_field(heading, field):
    best = match_heading(heading).candidates[0]
    assert best.field == field and best.weight >= 0.7


@pytest.mark.parametrize("heading", ["Average width", "Mean hall", "Loom 2026"])
def test_only_speed_and_efficiency_are_averaged(heading):
    assert all(entry.weight < 0.6 for entry in match_heading(heading).candidates)


@pytest.mark.parametrize("heading", ["Loss of efficiency %", "Loss of efficiency", "Inv.-Nr."])
def test_a_short_word_that_is_another_word_is_no_slip(heading):
    assert meaning(heading)[0] < 0.6
