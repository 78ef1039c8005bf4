"""Comments as the packages keep them: discussions of an xlsx, annotations of an OpenDocument spreadsheet."""

from raw_builder import extras, ods, xlsx

RELATIONS = "http://schemas.microsoft.com/office/2017/10/relationships"
MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
OLD = (
    f'<comments xmlns="{MAIN}"><authors><author>tc={{1}}</author><author>K.</author></authors><commentList>'
    '<comment ref="D2" authorId="0"><text><t>[Threaded comment] cannot be shown</t></text></comment>'
    '<comment ref="D3" authorId="1"><text><r><t>mea</t></r><r><t>sured</t></r></text></comment></commentList></comments>'
)
THREADS = (
    '<ThreadedComments xmlns="http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments">'
    '<threadedComment ref="D2" id="{1}"><text>is this right?</text></threadedComment>'
    '<threadedComment ref="D2" id="{3}" parentId="{1}"><text>no, 580</text></threadedComment></ThreadedComments>'
)
LINKS = (
    f'<Relationships><Relationship Id="rId1" Type="{RELATIONS}/comments" Target="../comments1.xml"/>'
    f'<Relationship Id="rId2" Type="{RELATIONS}/threadedComment" Target="/xl/threadedComments/threadedComment1.xml"/>'
    f'<Relationship Id="rId3" Type="{RELATIONS}/comments" Target="../gone.xml"/></Relationships>'
)
ANNOTATED = (
    '<table:table table:name="Looms"><table:table-row><table:table-cell/><table:table-cell office:value-type="float" '
    'office:value="601"><office:annotation><creator>{by}</creator><date>2026-11-01</date><text:p>wrong,</text:p>'
    "<text:p>see <text:span>Ali</text:span></text:p></office:annotation><text:p>601</text:p></table:table-cell>"
    "</table:table-row></table:table>"
)


def test_of_a_discussion_all_is_told_and_not_the_text_for_older_programmes(tmp_path):
    parts = [
        ("xl/worksheets/_rels/sheet1.xml.rels", LINKS), ("xl/comments1.xml", OLD),
        ("xl/threadedComments/threadedComment1.xml", THREADS),
    ]  # fmt: skip
    found = extras(xlsx(tmp_path / "a.xlsx", extra=parts))
    assert found.comments == {(2, 4): "is this right? / no, 580", (3, 4): "measured"}


def test_annotations_of_an_opendocument_spreadsheet(tmp_path):
    found = extras(ods(tmp_path / "a.ods", ANNOTATED.format(by="K.")))
    assert found.comments == {(1, 2): "wrong, see Ali"} and not found.no_value
    assert not extras(ods(tmp_path / "b.ods", ANNOTATED.format(by="beamslot"))).comments
