"""Every code that is used has its words, every code that has words is used, English says what each means, and no sentence for
a person is made anywhere else."""

import ast
import re
import subprocess
import sys

from fluent.syntax import FluentParser, FluentSerializer
from fluent.syntax import ast as fluent
from sources import CODE, ROOT, codes_given, codes_of_columns, codes_passed, sentences, sources, texts, words_of_enums

from tracker.domain.columns import word_named
from tracker.domain.tables import TABLES, TERM_COLUMNS
from tracker.words import ENGLISH, LANGUAGES, codes
from tracker.words.catalogue import HERE, bundle

SPEAKERS_OWN = {"just", "and-more", "word-yes", "word-no"}
PURE = ("tracker/domain/", "tracker/scope/", "tracker/forecast/", "tracker/planning/", "tracker/kits/", "tracker/mill_state/",
        "tracker/rehearsal/", "tracker/services/")  # fmt: skip
"""Where what is worked out may never be worded. The others have texts that are none for a person (statements for the database,
words by which a reader knows a column), or are an edge themselves (the command, a workbook)."""
NOT_WORDED_HERE = (
    "tracker/domain/tables.py",
    "tracker/domain/own_sheets.py",
    "tracker/domain/plan.py",
    "tracker/services/plans/scenario_template.py",
)
"""Headings and hints of the sheets and of the scenario file, and the names of states."""


def test_every_code_in_the_code_has_its_words():
    given = {place: one.value for place, one in codes_given() if isinstance(one, ast.Constant)}
    missing = [f"{place}: {code}" for place, code in (*given.items(), *codes_passed()) if code not in codes()]
    assert missing == []


def test_every_sheet_heading_unit_word_and_term_of_ours_has_its_words():
    assert sorted(codes_of_columns() - codes().keys()) == []


def test_in_english_a_heading_is_said_as_a_load_knows_it():
    columns = [column for table in TABLES.values() for column in table.columns]
    assert [c.title for c in (*columns, *TERM_COLUMNS) if ENGLISH.say(c.titled) != c.title] == []
    assert [t.sheet for t in TABLES.values() if ENGLISH.say(t.named) != t.sheet] == []
    assert [word for c in columns for word in c.words if ENGLISH.say(word_named(word)) != word] == []


def test_what_is_refused_or_said_is_a_code_and_never_a_sentence():
    worded = [
        f"{place}: {ast.unparse(one)}"
        for place, one in codes_given()
        if (isinstance(one, ast.Constant) and not CODE.fullmatch(str(one.value)))
        or isinstance(one, ast.JoinedStr | ast.BinOp)
        if not place.startswith("tracker/words/")
    ]
    assert worded == []


def test_no_sentence_is_made_where_things_are_worked_out():
    here = {path for path in sources() if path.startswith(PURE) and path not in NOT_WORDED_HERE and sentences(path)}
    assert sorted(here) == [], "say it by a code of the catalogue"


def test_every_code_with_words_is_used():
    assert sorted(codes().keys() - set(texts()) - words_of_enums() - codes_of_columns() - SPEAKERS_OWN) == []


def test_english_says_what_each_code_means():
    unsaid = [code for code in codes() if "means" not in bundle("en", codes()[code]).get_message(code).attributes]
    assert unsaid == []


def test_another_language_has_no_code_that_english_lacks():
    for language in LANGUAGES:
        assert sorted(set(codes(language)) - set(codes())) == []


def test_every_file_can_be_read():
    for language in LANGUAGES:
        for kind in set(codes(language).values()):
            assert bundle(language, kind) is not None


OPTION = re.compile(r"(?<![\w-])--[a-z]|\bbeamslot [a-z]+")
OF_THE_COMMAND = {"terminal", "means"}
"""Parts of a message that no screen shows."""


def test_only_a_terminal_is_told_what_to_type_at_one():
    told = [
        (language, code)
        for language in LANGUAGES
        for kind in sorted(set(codes(language).values()))
        for code, text in _shown_anywhere(kind, language)
        if OPTION.search(text) or (kind.startswith("on_") and "terminal" in text.casefold())
    ]
    assert told == [], "who looks at a screen has no terminal"


def _shown_anywhere(kind, language):
    """(code, text of it or of one of its parts) where a screen may say it."""
    written = FluentSerializer().serialize_entry
    for entry in FluentParser().parse((HERE / language / f"{kind}.ftl").read_text("utf-8")).body:
        if isinstance(entry, fluent.Message):
            parts = [part for part in entry.attributes if part.id.name not in OF_THE_COMMAND]
            yield entry.id.name, written(fluent.Message(entry.id, entry.value, parts))


def test_a_process_that_says_nothing_loads_no_library_of_languages():
    loaded = "import sys, tracker.words; sys.exit(any(name in sys.modules for name in ('babel', 'fluent')))"
    assert subprocess.run([sys.executable, "-c", loaded], cwd=ROOT, check=False).returncode == 0
