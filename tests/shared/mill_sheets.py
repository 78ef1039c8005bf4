"""Invented loom lists in every convention that a mill may use, with what they say."""

import csv
import io
import random
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

import openpyxl
from openpyxl.styles import Font

from tracker.domain.findings import Severity
from tracker.domain.rows import ReadResult, TypedRow
from tracker.intake.reader import read_files
from tracker.words.findings import FindingInWords, in_words

TODAY = date(2026, 11, 25)
FIELDS = (
    "loom",
    "hall",
    "row",
    "place",
    "machine_type",
    "insertion",
    "year",
    "reed_width_cm",
    "frames",
    "speed_ppm",
    "efficiency",
)
"""Fields of the invented lists, in the order of `HEADINGS`."""

HEADINGS: dict[str, tuple[str, ...]] = {
    "en": ("Loom no.", "Hall", "Row", "Place", "Machine type", "Insertion", "Year built", "Reed width", "Frames", "Speed", "Eff."),
    "de": ("Maschinen-Nr.", "Halle", "Reihe", "Platz", "Maschinentyp", "Schusseintrag", "Baujahr", "Blattbreite", "Schaftzahl",
           "Drehzahl", "Nutzeffekt"),
    "fr": ("N° métier", "Salle", "Rangée", "Place", "Type de machine", "Insertion trame", "Année", "Largeur peigne", "Nb de cadres",
           "Vitesse", "Rendement"),
    "it": ("N. telaio", "Sala", "Fila", "Posto", "Tipo macchina", "Inserzione", "Anno", "Altezza pettine", "Licci", "Velocità",
           "Rendimento"),
    "es": ("Nº telar", "Nave", "Fila", "Puesto", "Tipo de máquina", "Inserción", "Año", "Ancho de peine", "Nº cuadros",
           "Velocidad", "Eficiencia"),
    "pt": ("Tear nº", "Galpão", "Fileira", "Posição", "Modelo", "Inserção", "Ano fabr.", "Largura do pente", "Liços", "Rotação",
           "Eficiência"),
    "tr": ("Tezgâh No", "Salon", "Sıra", "Yer", "Makine Tipi", "Atkı atma", "İmal yılı", "Tarak eni", "Çerçeve sayısı", "Devir",
           "Randıman"),
    "zh": ("织机号", "车间", "排", "位置", "机型", "引纬方式", "制造年份", "筘宽", "综框", "转速", "效率"),
}  # fmt: skip
TYPES = (("AJ-190", 190.0), ("RP-220", 220.0), ("AJ-280", 280.0), ("RP-360", 360.0))

Rows = list[list[Any]]


@dataclass(frozen=True)
class Read:
    """What a read says, and how it said it."""

    result: ReadResult

    @property
    def looms(self) -> list[dict[str, Any]]:
        return [dict(row.values) for row in self.rows("looms")]

    def rows(self, table: str) -> list[TypedRow]:
        return [row for row in self.result.rows if row.table == table]

    def findings(self, severity: Severity | None = None, code: str = "") -> list[FindingInWords]:
        found = [f for f in self.result.findings if severity in (None, f.severity) and code in ("", f.code)]
        return [in_words(finding) for finding in found]

    @property
    def doubts(self) -> list[FindingInWords]:
        return self.findings(Severity.DOUBT)

    @property
    def refused(self) -> list[FindingInWords]:
        return self.findings(Severity.REFUSED)


def read(*paths: Path, remembered: Mapping[str, str] | None = None, **answers: str) -> Read:
    """Read files; answers whose heading is no Python name come through `answers={…}`."""
    given = {**answers.pop("answers", {}), **answers}  # type: ignore[dict-item]
    return Read(read_files(list(paths), given, remembered or {}, TODAY))


def inventory(count: int = 12, seed: int = 1) -> list[dict[str, Any]]:
    """Loom records as the domain has them: two halls, four machine types, loom numbers with leading noughts."""
    chance = random.Random(seed)
    looms = []
    for i in range(count):
        kind, width = chance.choice(TYPES)
        looms.append({
            "loom": f"{i + 1:03d}", "hall": "Hall 1" if i < count / 2 else "Hall 2", "row": str(1 + i // 4),
            "place": str(1 + i % 4), "machine_type": kind, "insertion": "rapier" if kind[0] == "R" else "air-jet",
            "year": 1996 + chance.randrange(30), "reed_width_cm": width, "frames": chance.choice((6, 8, 10, 12, 16)),
            "speed_ppm": float(chance.randrange(300, 950, 5)), "efficiency": chance.randrange(780, 960, 5) / 1000,
        })  # fmt: skip
    return looms


def typed_rows(looms: Sequence[Mapping[str, Any]], fields: Iterable[str] = FIELDS) -> Rows:
    """The records as a tidy sheet types them: numbers as numbers, efficiency in percent, row and place as numbers."""
    return [[_cell(field, loom[field]) for field in fields] for loom in looms]


def _cell(field: str, value: Any) -> Any:
    if field == "efficiency":
        return round(value * 100, 4)
    return int(value) if field in ("row", "place") else value


def workbook(
    path: Path,
    sheets: Mapping[str, Rows] | Rows,
    merged: Iterable[str] = (),
    formats: Mapping[str, str] | None = None,
    hidden: Iterable[str] = (),
    hidden_rows: Iterable[int] = (),
    struck: Iterable[str] = (),
    hidden_columns: Iterable[str] = (),
) -> Path:
    """Write an .xlsx. `merged`, `formats`, `hidden_rows`, `hidden_columns` and the cells that are
    `struck` through are about the first sheet."""
    book = openpyxl.Workbook()
    book.remove(book.active)  # type: ignore[arg-type]
    for name, rows in (sheets if isinstance(sheets, Mapping) else {"Sheet1": sheets}).items():
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(row)
        sheet.sheet_state = "hidden" if name in hidden else "visible"
    first = book.worksheets[0]
    for area in merged:
        first.merge_cells(area)
    for cell, code in (formats or {}).items():
        first[cell].number_format = code
    for cell in struck:
        first[cell].font = Font(strike=True)
    for row in hidden_rows:
        first.row_dimensions[row].hidden = True
    for column in hidden_columns:
        first.column_dimensions[column].hidden = True
    book.save(path)
    return path


def delimited(path: Path, rows: Rows, delimiter: str = ";", encoding: str = "utf-8", before: str = "") -> Path:
    """Write a text file of fields."""
    text = io.StringIO(newline="")
    csv.writer(text, delimiter=delimiter, lineterminator="\r\n").writerows(
        [["" if v is None else v for v in row] for row in rows]
    )
    path.write_bytes((before + text.getvalue()).encode(encoding))
    return path


def turned(rows: Rows) -> Rows:
    """Rows as columns."""
    width = max(map(len, rows))
    return [[row[c] if c < len(row) else None for row in rows] for c in range(width)]
