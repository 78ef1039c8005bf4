"""How far the screens reach, and under which names: refused where it is not safe."""

import ssl
import subprocess

import pytest
from fastapi import FastAPI
from opened import here
from quick_passwords import PASSWORD, quick_passwords  # noqa: F401
from refusals import refused

from tracker.errors import TrackerError, UsageError
from tracker.server.reach import LOCAL, reach, require_people
from tracker.server.serve import options
from tracker.services.people.accounts import add_person
from tracker.store import open_store

NAME = "planning.mill.example"


@pytest.fixture(scope="module")
def pems(tmp_path_factory):
    """Two certificates, each with its key, by the tool of the system."""
    folder = tmp_path_factory.mktemp("pems")
    for name in ("one", "two"):
        try:
            subprocess.run(
                ["openssl", "req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes",
                 "-keyout", folder / f"{name}.key", "-out", folder / f"{name}.pem", "-subj", f"/CN={NAME}", "-days", "2"],
                check=True, capture_output=True,
            )  # fmt: skip
        except FileNotFoundError:
            pytest.skip("openssl is missing: it makes the certificates")
    return folder


def test_this_machine_only_answers_under_its_own_names():
    assert LOCAL.hosts(8501) == {"127.0.0.1:8501", "localhost:8501", "[::1]:8501"}
    assert LOCAL.hosts(80) >= {"127.0.0.1", "localhost:80"}
    assert (LOCAL.address, LOCAL.url(8501), LOCAL.secure) == ("127.0.0.1", "http://127.0.0.1:8501", False)


def test_in_the_network_it_answers_under_the_names_given_and_those_of_the_machine():
    found = reach(share=True, names=("Planning.Mill.example",), plain=True)
    assert (found.address, found.secure) == ("0.0.0.0", False)
    assert f"{NAME}:8501" in found.hosts(8501) and "localhost:8501" in found.hosts(8501)
    assert NAME not in found.hosts(8501) and "mill.example:8501" not in found.hosts(8501)


def test_behind_a_proxy_the_name_comes_without_the_port_and_only_https_is_answered():
    found = reach(names=(NAME,), proxy="127.0.0.1")
    assert NAME in found.hosts(8501) and found.secure and found.address == "127.0.0.1"
    assert found.url(8501) == f"https://{NAME}"


def test_a_certificate_with_its_key_is_taken(pems):
    found = reach(share=True, names=(NAME,), certificate=pems / "one.pem", key=pems / "one.key")
    assert found.url(443) == f"https://{NAME}:443" and {NAME, f"{NAME}:443"} <= found.hosts(443) and found.secure


def test_the_least_tls_is_1_2_wherever_python_was_built(pems):
    """RFC 9325, 3.1.1: TLS 1.0 and 1.1 must not be negotiated; some builds of Python allow them."""
    served = options(FastAPI(), reach(share=True, names=(NAME,), certificate=pems / "one.pem", key=pems / "one.key"))
    served.load()
    assert served.ssl and served.ssl.minimum_version == ssl.TLSVersion.TLSv1_2
    without = options(FastAPI(), LOCAL)
    without.load()
    assert not without.is_ssl


def test_what_does_not_fit_is_one_clear_line(pems, tmp_path):
    (tmp_path / "text.pem").write_text("no certificate")
    one, two = (pems / "one.pem", pems / "one.key"), (pems / "two.pem", pems / "two.key")
    with refused(TrackerError, r"certificate .*one\.pem does not fit the key .*two\.key"):
        reach(certificate=one[0], key=two[1])
    with refused(TrackerError, "are no certificate and key that can be used"):
        reach(certificate=tmp_path / "text.pem", key=one[1])
    with refused(TrackerError, r"there is no file .*three\.pem"):
        reach(certificate=pems / "three.pem", key=one[1])
    with refused(UsageError, "a certificate and its key are given together"):
        reach(certificate=one[0])
    with refused(UsageError, "not-an-address is no address of a proxy; it is one such as 127.0.0.1"):
        reach(proxy="not-an-address", names=(NAME,))
    with refused(UsageError, "under which name"):
        reach(proxy="127.0.0.1")
    with refused(UsageError, "passwords and everything else travel through the network unprotected"):
        reach(share=True)


def test_a_key_with_a_password_is_refused_and_nobody_is_asked_for_it(pems, tmp_path):
    locked = tmp_path / "locked.key"
    command = ["openssl", "ec", "-aes256", "-passout", "pass:secret", "-in", pems / "one.key", "-out", locked]
    subprocess.run(command, check=True, capture_output=True)
    with refused(
        TrackerError, "no certificate and key that can be used; both are PEM files, the key without a password"
    ):
        reach(certificate=pems / "one.pem", key=locked)


def test_nothing_is_shared_while_nobody_has_an_account(tmp_path, quick_passwords):  # noqa: F811
    mill = here(tmp_path / "mill.db")
    with refused(TrackerError, "nobody has an account yet"):
        require_people(mill)
    open_store(mill.database, make=True)
    with refused(TrackerError, "nobody has an account yet"):
        require_people(mill)
    add_person(mill, "Ann", PASSWORD, ["viewer"])
    require_people(mill)
