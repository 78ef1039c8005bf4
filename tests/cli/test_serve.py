"""What `serve` refuses, in one line, having made nothing."""

import socket


def test_without_new_nothing_is_made(beamslot, tmp_path):
    assert beamslot("--db", "new.db", "serve").code == 1
    assert list(tmp_path.iterdir()) == []


def test_a_taken_port_makes_no_database(beamslot, tmp_path):
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        taken = other.getsockname()[1]
        ran = beamslot("--db", "new.db", "serve", "--new", "--port", taken)
    assert (ran.code, ran.line) == (1, f"port {taken} on 127.0.0.1 is taken; choose another: --port {taken + 1}")
    assert list(tmp_path.iterdir()) == []


def test_an_impossible_port_is_a_wrong_use(beamslot, tmp_path):
    ran = beamslot("--db", "new.db", "serve", "--new", "--port", 70000)
    assert (ran.code, ran.line) == (2, "port 70000 is not between 1 and 65535")
    assert list(tmp_path.iterdir()) == []


def test_a_database_that_cannot_be_opened_is_not_served(beamslot, tmp_path):
    ran = beamslot("--db", tmp_path, "serve")
    assert ran.code == 1 and ran.line.endswith(" is a folder; name the database in it")


def test_a_folder_for_backups_that_is_not_there_is_refused_before_anything_is_made(beamslot, tmp_path):
    ran = beamslot("--db", "new.db", "serve", "--new", "--backup-to", "nowhere")
    assert (ran.code, ran.line) == (
        1, "nowhere is no folder in which backups can be written; make it, or name another"
    )  # fmt: skip
    assert list(tmp_path.iterdir()) == []
