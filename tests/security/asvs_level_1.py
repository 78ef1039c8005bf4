"""OWASP Application Security Verification Standard 5.0.0 (May 2025), level 1, gone through point by point.

All 70 requirements of that level, by their numbers, each with a short title in our own words (the standard's text: the repository
OWASP/ASVS, tag v5.0.0_release, folder 5.0/en; CC BY-SA 4.0). A point is met (by what, and by which test that would fail otherwise),
does not apply (why), or is open (what is missing).
"""

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Met:
    title: str
    how: str
    by: tuple[str, ...]
    """`path::test`."""


@dataclass(frozen=True, slots=True)
class DoesNotApply:
    title: str
    why: str


@dataclass(frozen=True, slots=True)
class Open:
    title: str
    missing: str


def met(title: str, how: str, *by: str) -> Met:
    return Met(title, how, by)


POINTS: Mapping[str, Met | DoesNotApply | Open] = {
    # ---- V1 encoding and sanitization
    "1.2.1": met(
        "output is escaped for where it stands",
        "tables and forms escape every text of the mill (html.escape), headers are made by the library",
        "tests/browser/test_hostile_text_in_chromium.py::test_an_address_in_the_mills_text_is_no_link",
        "tests/server/test_gate.py::test_what_was_typed_as_a_name_is_shown_as_text",
    ),
    "1.2.2": met(
        "addresses are built encoded",
        "urlencode and quote; where somebody is led on to is a path of ours",
        "tests/server/test_gate.py::test_nobody_is_led_to_another_site",
    ),
    "1.2.3": DoesNotApply(
        "scripts are built escaped", "no script of ours holds a value of the mill: its three are constants"
    ),
    "1.2.4": met(
        "queries with parameters",
        "SQLAlchemy throughout; a mill whose loom is named as a statement keeps its tables",
        "tests/faults/test_kills.py::test_a_killed_command_is_done_or_not_begun",
        "tests/faults/test_command_lines.py::test_odd_command_lines_are_answered_and_refused_ones_change_nothing",
    ),
    "1.2.5": DoesNotApply(
        "no commands of the system from input",
        "nothing that is typed or loaded starts a program; worker processes are Python functions",
    ),
    "1.3.1": DoesNotApply("HTML that is typed is cleaned", "nobody types HTML; every text is shown as text"),
    "1.3.2": met(
        "no evaluation of code",
        "conditions of the method are read by a grammar of ours",
        "tests/outside/test_dmn_unary_tests.py::test_what_the_grammar_does_not_have",
        "tests/security/test_points.py::test_nothing_is_evaluated_as_code",
    ),
    "1.5.1": met(
        "XML without external entities",
        "a workbook with a document type or entities is refused before it is parsed",
        "tests/office/test_check_file.py::test_entity_tricks",
    ),
    # ---- V2 validation and business logic
    "2.1.1": met(
        "what input may be is documented",
        "the tables of a mill are declared once, and the template tells each limit",
        "tests/intake/columns/test_value_limits.py::test_a_term_out_of_its_limits_says_what_is_possible",
    ),
    "2.2.1": met(
        "input is checked against what can be",
        "type, limits and words of each column, pairs of values, and the mill around",
        "tests/intake/columns/test_value_limits.py::test_a_term_out_of_its_limits_says_what_is_possible",
    ),
    "2.2.2": met(
        "checked where it is trusted",
        "all checks are in the services; a screen only hides what would be refused",
        "tests/services/test_permissions.py::test_who_may_only_look_writes_nothing_by_it",
    ),
    "2.3.1": met(
        "steps in their order",
        "stages move along one order, out of it only with a reason; nothing is signed off open",
        "tests/services/test_record_stage.py::test_what_is_out_of_order_needs_a_reason",
    ),
    # ---- V3 web frontend
    "3.2.1": met(
        "an answer is not taken for something else",
        "nosniff, no frames, own site only, on every answer",
        "tests/server/test_server_guard.py::test_every_answer_tells_the_browser_to_keep_it_to_itself",
    ),
    "3.2.2": met(
        "text is shown as text",
        "escaped HTML, and literal() where the screen library knows markup",
        "tests/browser/test_hostile_text_in_chromium.py::test_an_address_in_the_mills_text_is_no_link",
    ),
    "3.3.1": met(
        "cookies for https only, with a prefix",
        "by https all cookies of ours are Secure and begin with __Host-",
        "tests/server/test_gate.py::test_by_https_the_cookie_is_for_https_only",
    ),
    "3.4.1": met(
        "browsers come by https only",
        "Strict-Transport-Security of a year on every answer that goes by https",
        "tests/security/test_every_route.py::test_by_https_a_browser_is_told_to_come_by_https_for_a_year",
    ),
    "3.4.2": met(
        "no other site may read an answer",
        "no header lets one, and a foreign origin gets no answer",
        "tests/server/test_server_guard.py::test_another_site_gets_no_answer_by_a_form_or_a_script",
    ),
    "3.5.1": met(
        "forms come from here",
        "a token in form and cookie, SameSite, and the origin where one is told",
        "tests/server/test_gate.py::test_a_form_without_its_token_is_nobodys",
        "tests/server/test_gate.py::test_another_site_sends_no_form",
    ),
    "3.5.2": DoesNotApply(
        "preflight cannot be avoided", "nothing rests on a preflight: a foreign origin ends in the guard"
    ),
    "3.5.3": met(
        "nothing is done by GET",
        "signing in and out are posts; screens act by their stream, whose origin is checked",
        "tests/security/test_every_route.py::test_to_look_at_a_page_does_nothing",
        "tests/server/test_server_guard.py::test_a_stream_needs_the_origin_of_the_page_itself",
    ),
    # ---- V4 interfaces
    "4.1.1": met(
        "an answer says what it is",
        "content type with charset on all pages of ours",
        "tests/security/test_every_route.py::test_every_page_of_ours_says_its_type_and_charset",
    ),
    "4.4.1": met(
        "websockets encrypted",
        (
            "by https the page's policy and the guard take wss of the own origin only; without a certificate "
            "nothing is shared unless somebody says --plain"
        ),
        "tests/server/test_reach.py::test_nothing_is_shared_while_nobody_has_an_account",
        "tests/server/test_reach.py::test_behind_a_proxy_the_name_comes_without_the_port_and_only_https_is_answered",
    ),
    # ---- V5 files
    "5.2.1": met(
        "files of a size that can be read",
        "bytes, cells and parts are bounded before a file is parsed",
        "tests/office/test_check_file.py::test_oversize",
        "tests/office/test_check_file.py::test_bomb_by_total",
    ),
    "5.2.2": met(
        "files are what they say",
        "the content decides, whatever the name",
        "tests/office/test_check_file.py::test_the_content_decides_and_is_named",
    ),
    "5.3.1": met(
        "what is sent is not executed",
        "nothing that is sent is kept as a file that is served; static serving is off",
        "tests/server/test_server_guard.py::test_what_the_screens_do_not_need_of_the_library_is_closed",
    ),
    "5.3.2": met(
        "no paths from names that are sent",
        "a file that is sent is kept under a name of ours in a folder of its own",
        "tests/domain/test_file_names.py::test_what_a_file_name_keeps",
    ),
    # ---- V6 authentication
    "6.1.1": met(
        "how guessing is held up is documented",
        "DEVELOPERS.md and tracker/server/waits.py",
        "tests/security/test_many_passwords.py::test_passwords_are_guessed_in_vain",
    ),
    "6.2.1": met(
        "at least 8 characters", "at least 12", "tests/services/test_accounts.py::test_which_passwords_are_refused"
    ),
    "6.2.2": met(
        "people change their own password",
        "on a screen of its own",
        "tests/services/test_own_password.py::test_whoever_knows_the_password_before_sets_a_new_one",
    ),
    "6.2.3": met(
        "with the one before",
        "which is asked; after five wrong ones the session ends",
        "tests/services/test_own_password.py::test_five_wrong_passwords_end_the_session",
    ),
    "6.2.4": met(
        "not among the commonest",
        "30,000 are known and refused",
        "tests/services/test_accounts.py::test_which_passwords_are_refused",
    ),
    "6.2.5": met(
        "any characters", "length only", "tests/security/test_points.py::test_a_password_may_be_of_any_characters"
    ),
    "6.2.6": met(
        "fields hide what is typed",
        "type=password on the door and on People",
        "tests/security/test_points.py::test_password_fields_hide_and_take_what_a_manager_fills_in",
    ),
    "6.2.7": met(
        "may be pasted and filled in",
        "nothing stands against it, and autocomplete is told",
        "tests/security/test_points.py::test_password_fields_hide_and_take_what_a_manager_fills_in",
    ),
    "6.2.8": met(
        "compared as typed",
        "only the form of the letters is made one (NFKC, as NIST SP 800-63B asks); none is cut or turned",
        "tests/security/test_points.py::test_a_password_counts_to_its_last_letter",
    ),
    "6.3.1": met(
        "guessing is held up",
        "after five a wait that doubles, by name and address",
        "tests/security/test_many_passwords.py::test_passwords_are_guessed_in_vain",
        "tests/server/test_gate.py::test_after_five_wrong_passwords_there_is_a_wait_for_that_name_from_there",
    ),
    "6.3.2": met(
        "no accounts that come along",
        "there is none until somebody adds one",
        "tests/security/test_points.py::test_a_new_mill_has_no_account",
    ),
    "6.4.1": DoesNotApply("first passwords made by the program", "it makes none: who adds an account types it"),
    "6.4.2": met(
        "no hints, no secret questions",
        "an account is a name, roles and a hash",
        "tests/security/test_points.py::test_an_account_keeps_no_hint",
    ),
    # ---- V7 sessions
    "7.2.1": met(
        "sessions are looked up by the server",
        "with every request and every message of a websocket",
        "tests/server/test_gate.py::test_a_message_of_an_ended_session_reaches_nothing",
    ),
    "7.2.2": met(
        "tokens are made for each session",
        "by secrets.token_urlsafe",
        "tests/server/test_gate.py::test_signing_in_again_ends_the_session_before",
    ),
    "7.2.3": met(
        "256 bits at random",
        "by the system's generator, kept as a hash",
        "tests/server/test_gate.py::test_who_signs_in_is_led_on_and_known_by_nothing_but_the_session",
    ),
    "7.2.4": met(
        "a new one at each sign-in, the old one ends",
        "",
        "tests/server/test_gate.py::test_signing_in_again_ends_the_session_before",
    ),
    "7.4.1": met(
        "an end is an end",
        "the row ends, so that a copied cookie opens nothing",
        "tests/server/test_gate.py::test_signing_out_ends_the_session_also_for_who_copied_its_cookie",
        "tests/security/test_every_route.py::test_a_cookie_that_was_stolen_opens_nothing_once_its_session_has_ended",
    ),
    "7.4.2": met(
        "the end of an account ends its sessions",
        "",
        "tests/server/test_gate.py::test_a_change_of_the_account_ends_its_sessions_and_no_others",
    ),
    # ---- V8 authorization
    "8.1.1": met(
        "who may do what is documented",
        "one table in README.md and in the code",
        "tests/services/test_permissions.py::test_the_table_says_what_the_mill_was_promised",
    ),
    "8.2.1": met(
        "functions only for who may",
        "every writing service asks",
        "tests/services/test_permissions.py::test_every_writing_service_is_tried_here",
    ),
    "8.2.2": met(
        "data only for who may",
        "everybody with a role sees the mill; accounts, sessions and tokens only administrators",
        "tests/security/test_every_route.py::test_accounts_and_sessions_are_for_administrators_only",
    ),
    "8.3.1": met(
        "decided by the server",
        "in the services",
        "tests/services/test_permissions.py::test_who_may_only_look_writes_nothing_by_it",
    ),
    # ---- V9 self-contained tokens: those of the mill's identity provider
    "9.1.1": met(
        "signatures are checked",
        "",
        "tests/server/test_provider.py::test_a_token_of_another_key_signs_nobody_in_and_a_new_key_of_the_provider_is_found",
    ),
    "9.1.2": met(
        "only algorithms that are named",
        "",
        "tests/server/test_provider.py::test_a_token_that_says_what_cannot_be_signs_nobody_in",
    ),
    "9.1.3": met(
        "keys only from the provider told",
        "",
        "tests/server/test_provider.py::test_a_token_of_another_key_signs_nobody_in_and_a_new_key_of_the_provider_is_found",
    ),
    "9.2.1": met(
        "within their time", "", "tests/server/test_provider.py::test_a_token_that_says_what_cannot_be_signs_nobody_in"
    ),
    # ---- V10 authorization servers
    "10.4.1": DoesNotApply(
        "where an answer may be sent",
        "the program is a client of the mill's provider, and authorizes nobody for others",
    ),
    "10.4.2": DoesNotApply(
        "a code counts once", "the program is a client of the mill's provider, and authorizes nobody for others"
    ),
    "10.4.3": DoesNotApply(
        "a code is short-lived", "the program is a client of the mill's provider, and authorizes nobody for others"
    ),
    "10.4.4": DoesNotApply(
        "only the grants needed", "the program is a client of the mill's provider, and authorizes nobody for others"
    ),
    "10.4.5": DoesNotApply(
        "refresh tokens cannot be replayed",
        "the program is a client of the mill's provider, and authorizes nobody for others",
    ),
    # ---- V11 cryptography
    "11.3.1": DoesNotApply("no weak modes", "nothing is encrypted by the program; TLS is the system's library"),
    "11.3.2": DoesNotApply("approved ciphers", "as 11.3.1"),
    "11.4.1": met(
        "approved hashes",
        "SHA-256, and argon2id for passwords",
        "tests/security/test_points.py::test_no_weak_hash_is_used",
    ),
    # ---- V12 communication
    "12.1.1": met(
        "TLS 1.2 and 1.3 only",
        "set on the context that the server makes",
        "tests/server/test_reach.py::test_the_least_tls_is_1_2_wherever_python_was_built",
    ),
    "12.2.1": met(
        "no way without TLS",
        ("sharing without a certificate is refused unless --plain accepts it; behind a proxy only https is answered"),
        "tests/server/test_reach.py::test_behind_a_proxy_the_name_comes_without_the_port_and_only_https_is_answered",
    ),
    "12.2.2": DoesNotApply(
        "certificates that everybody trusts", "it is served in the mill's own network, with the mill's certificate"
    ),
    # ---- V13 configuration
    "13.4.1": met(
        "no source control beside it",
        "only declared paths are answered",
        "tests/security/test_every_route.py::test_without_a_session_nothing_but_the_door_answers",
    ),
    # ---- V14 data protection
    "14.2.1": met(
        "nothing secret in addresses",
        (
            "passwords and session go in body and cookie; the token of a calendar stands in its address, as "
            "phones need it, opens one crew's bookings and ends"
        ),
        "tests/server/test_gate.py::test_who_signs_in_is_led_on_and_known_by_nothing_but_the_session",
        "tests/server/test_calendar.py::test_only_the_token_of_a_crew_opens_its_calendar_as_long_as_it_lasts",
    ),
    "14.3.1": met(
        "nothing left in the browser",
        "signing out asks the browser to clear what the site kept; open pages close",
        "tests/security/test_every_route.py::test_signing_out_clears_what_the_browser_kept",
    ),
    # ---- V15 architecture
    "15.1.1": Open(
        "in what time libraries are mended",
        "versions are locked and the newest are tried in CI, but no times are promised",
    ),
    "15.2.1": Open("none is older than that", "as 15.1.1"),
    "15.3.1": met(
        "only the fields needed",
        "tokens and password hashes are in no report",
        "tests/security/test_points.py::test_an_account_keeps_no_hint",
        "tests/services/test_accounts.py::test_an_account_has_its_roles_in_order_and_keeps_no_password",
    ),
}
