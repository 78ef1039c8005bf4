"""A process that has the whole program imported and runs `beamslot` in forks of itself: a command then costs tenths of a
second instead of seconds, and hundreds can be killed, raced and fuzzed.

Arguments: file descriptors of sockets, and commands to run once before all others, so that what a command prepares
(mappings, formats) is shared by all forks. One worker answers at each socket. A line there is a JSON object: `commands`, a
list of `{argv, folder, env, kill, room_bytes}`, and `timeout_s`. They start together. `kill` is `[step, wait_s]`: so long
after that step (0 is the start) the command is killed, at the latest when it has done all. Past `room_bytes` no file can be
written, as on a disk that is full. The answer is a line with a list of `{code, out, err, seconds, steps}`; `code` is below 0
where a signal ended the command, -SIGALRM where it took longer than the timeout.
"""

import fcntl
import gc
import importlib
import json
import os
import pkgutil
import resource
import select
import signal
import socket
import sys
import time
import traceback
from dataclasses import dataclass
from io import FileIO, TextIOWrapper
from typing import Any

from steps import Steps, kill_now

import tracker

LATE = (
    "alembic.autogenerate", "alembic.command", "psycopg", "sqlalchemy.dialects.postgresql.psycopg",
    "sqlalchemy.dialects.sqlite",
)  # fmt: skip
TYPED = "typed.txt"
"""In the folder of a command: what stands on its standard input."""
MOST_HEARD_BYTES = 1 << 20
"""A command that says more than this waits for ever: that is a fault, too."""


@dataclass
class Running:
    pid: int
    ended: int
    """File descriptor that can be read once the process has ended."""
    heard: tuple[int, int]
    """Pipes: standard output, standard error."""
    steps: int
    """A file in memory."""
    seconds: float = 0.0
    code: int = 0


def import_all() -> None:
    """What a command would import when it needs it."""
    inside = [module.name for module in pkgutil.walk_packages(tracker.__path__, "tracker.")]
    for name in (*LATE, *inside):
        if "migrations" not in name:
            importlib.import_module(name)


def start(command: dict[str, Any], ready: tuple[int, int], go: tuple[int, int]) -> Running:
    out, err, steps = os.pipe(), os.pipe(), os.memfd_create("steps")
    for end in (out, err):
        fcntl.fcntl(end[1], fcntl.F_SETPIPE_SZ, MOST_HEARD_BYTES)
    pid = os.fork()
    if not pid:
        code = 70
        try:
            os.close(ready[0])
            os.close(go[1])
            code = run(command, (out[1], err[1], steps), ready[1], go[0])
        except BaseException:
            traceback.print_exc()
        sys.stdout.flush()
        sys.stderr.flush()
        os._exit(code)
    os.close(out[1])
    os.close(err[1])
    return Running(pid, os.pidfd_open(pid), (out[0], err[0]), steps)


def run(command: dict[str, Any], streams: tuple[int, int, int], ready: int, go: int) -> int:
    typed = os.path.join(command["folder"], TYPED)
    os.dup2(os.open(typed if os.path.exists(typed) else os.devnull, os.O_RDONLY), 0)
    os.dup2(streams[0], 1)
    os.dup2(streams[1], 2)
    sys.stdout = TextIOWrapper(FileIO(1, "w"), encoding="utf-8")
    sys.stderr = TextIOWrapper(FileIO(2, "w"), encoding="utf-8", errors="backslashreplace", line_buffering=True)
    os.chdir(command["folder"])
    os.environ.update(command.get("env") or {})
    if command["room_bytes"] is not None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (command["room_bytes"], command["room_bytes"]))
    steps = Steps(command["kill"], streams[2])
    steps.watch()
    os.write(ready, b".")
    os.close(ready)
    select.select([go], [], [])
    steps.step()
    code = as_console_script(command["argv"])
    if steps.kill:
        kill_now()
    return code


def as_console_script(argv: list[str]) -> int:
    """Run `beamslot` in this process; gives its exit code."""
    from tracker.cli import main

    sys.argv = ["beamslot", *argv]
    try:
        main()
    except SystemExit as stop:
        if stop.code is None or isinstance(stop.code, int):
            return stop.code or 0
        print(stop.code, file=sys.stderr)
        return 1
    except BaseException:
        traceback.print_exc()
        return 1
    return 0


def run_together(commands: list[dict[str, Any]], timeout_s: float) -> list[dict[str, Any]]:
    ready, go = os.pipe(), os.pipe()
    running = [start(command, ready, go) for command in commands]
    os.close(ready[1])
    while os.read(ready[0], len(running)):
        pass
    began = time.monotonic()
    for end in (ready[0], *go):
        os.close(end)
    wait_for(running, began, began + timeout_s)
    return [outcome(one) for one in running]


def wait_for(running: list[Running], began: float, until: float) -> None:
    left = {one.ended: one for one in running}
    while left:
        ended, _, _ = select.select(list(left), [], [], max(0.0, until - time.monotonic()))
        for descriptor in ended:
            one = left.pop(descriptor)
            _, status = os.waitpid(one.pid, 0)
            one.seconds, one.code = time.monotonic() - began, one.code or os.waitstatus_to_exitcode(status)
            os.close(descriptor)
        if time.monotonic() >= until:
            for one in left.values():
                one.code = -signal.SIGALRM
                os.kill(one.pid, signal.SIGKILL)


def outcome(one: Running) -> dict[str, Any]:
    out, err = (read_now(stream) for stream in one.heard)
    return {"code": one.code, "out": out, "err": err, "seconds": one.seconds, "steps": int(read_whole(one.steps) or 0)}


def read_now(stream: int) -> str:
    """What a pipe holds; a process left behind may still hold its other end."""
    os.set_blocking(stream, False)
    with open(stream, "rb") as file:
        return (file.read() or b"").decode(errors="replace")


def read_whole(stream: int) -> str:
    with open(stream, "rb") as file:
        file.seek(0)
        return file.read().decode(errors="replace")


def warm_up(commands: list[list[str]]) -> None:
    """Run commands in this process; what they print is told only where one fails."""
    heard = os.memfd_create("heard")
    out, err = os.dup(1), os.dup(2)
    for stream in (1, 2):
        os.dup2(heard, stream)
    codes = [as_console_script(argv) for argv in commands]
    sys.stdout.flush()
    for before, stream in ((out, 1), (err, 2)):
        os.dup2(before, stream)
        os.close(before)
    if any(codes):
        raise SystemExit(f"the first commands ended with {codes}:\n{read_whole(heard)}")
    gc.collect()
    gc.freeze()


def answer_at(descriptor: int) -> None:
    with socket.socket(fileno=descriptor) as line, line.makefile("rw") as file:
        for text in file:
            asked = json.loads(text)
            file.write(json.dumps(run_together(asked["commands"], asked["timeout_s"])) + "\n")
            file.flush()


def main(sockets: list[int], first: list[list[str]]) -> None:
    import_all()
    warm_up(first)
    workers = []
    for descriptor in sockets:
        workers.append(os.fork())
        if not workers[-1]:
            for other in set(sockets) - {descriptor}:
                os.close(other)
            answer_at(descriptor)
            os._exit(0)
    for descriptor in sockets:
        os.close(descriptor)
    for worker in workers:
        os.waitpid(worker, 0)


if __name__ == "__main__":
    main(json.loads(sys.argv[1]), json.loads(sys.argv[2]))
