#!/usr/bin/env python3
"""Runs the commands that a Markdown page shows, and compares what they print with what the page says.

    shown_commands.py [--update] FILE.md...

A block fenced as ```console has lines that begin with "$ ", their continuations with "> ", and below each what it prints.
The blocks of a file run one after the other, in an empty folder of their own. Commands end with 0 or 1 (a finding
failed); in a block fenced as ```console refused the last one with 2. Those of ```console postgres need a server: one is
made, on 127.0.0.1 and a free port that stands for 5432, where PostgreSQL is installed. Blocks of other kinds are not run.
SEAMTAKT: the program; SEAMTAKT_SHARE: the folder with demo, schemas and sql, which pages call /usr/share/seamtakt;
SEAMTAKT_TREE: the source tree, of which README shows paths; SEAMTAKT_DESK: the desk: where it is unset, commands that
name seamtakt-desk are left out, and that is said. --update writes what was printed into the page.
"""
import glob
import os
import re
import shutil
import socket
import subprocess
import sys
import tempfile

INSTALLED = "/usr/share/seamtakt"


def commands_of(lines):
    """(first line, line after, expected exit codes, command, printed) of each command; line numbers from 0."""
    found, fence = [], None
    for at, line in enumerate(lines):
        if line.startswith("```"):
            fence = line[3:].split() if fence is None else None
        elif fence and fence[0] == "console":
            if line.startswith("$ "):
                kind = fence[1] if fence[1:] else ""
                found.append([at, at + 1, [0, 1] + [2] * (kind == "refused"), line[2:], [], kind])
            elif line.startswith("> ") or line == ">":
                assert not found[-1][4], "line %d: a continuation below output" % (at + 1)
                found[-1][3] += "\n" + line[2:]
                found[-1][1] = at + 1
            else:
                assert found and found[-1][1] + len(found[-1][4]) == at, "line %d: output without a command" % (at + 1)
                found[-1][4].append(line)
    return found


class Server:
    """A PostgreSQL server of its own, ended with the object; none where it isn't installed."""

    def __init__(self, scratch):
        self.programs = max(glob.glob("/usr/lib/postgresql/*/bin"), default=None, key=lambda path: int(path.split("/")[-2]))
        self.folder = os.path.join(scratch, "server")
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self.port = free.getsockname()[1]
        if self.programs:
            os.mkdir(self.folder)
            if os.geteuid() == 0:
                os.chmod(scratch, 0o711)
                shutil.chown(self.folder, "postgres")
            self.run("initdb", "-A", "trust", "-U", "postgres", "-E", "UTF8", "--locale=C.UTF-8", "--data-checksums", "-D", self.folder)
            self.run("pg_ctl", "-D", self.folder, "-w", "-l", self.folder + "/log", "-o",
                     "-k %s -p %d -c listen_addresses=127.0.0.1" % (self.folder, self.port), "start")

    def run(self, program, *words):
        as_server = ["runuser", "-u", "postgres", "--"] if os.geteuid() == 0 else []
        subprocess.run([*as_server, os.path.join(self.programs, program), *words], check=True, cwd="/", stdout=subprocess.DEVNULL)

    def end(self):
        if self.programs:
            self.run("pg_ctl", "-D", self.folder, "-m", "immediate", "-w", "stop")


def folder_for(scratch):
    """The environment of the commands; the folder gets the program, what is installed, and a place for keys."""
    work, programs, share = (os.path.join(scratch, name) for name in ("work", "bin", "share"))
    for folder in (work, programs, share, os.path.join(scratch, "home")):
        os.mkdir(folder)
    os.symlink(os.path.abspath(os.environ["SEAMTAKT"]), os.path.join(programs, "seamtakt"))
    if os.environ.get("SEAMTAKT_DESK"):
        os.symlink(os.path.abspath(os.environ["SEAMTAKT_DESK"]), os.path.join(programs, "seamtakt-desk"))
    for name in ("demo", "schemas", "sql", "verify_log.py"):
        os.symlink(os.path.join(os.environ["SEAMTAKT_SHARE"], name), os.path.join(share, name))
    if os.environ.get("SEAMTAKT_TREE"):
        for name in ("reference", "packaging"):
            os.symlink(os.path.join(os.environ["SEAMTAKT_TREE"], name), os.path.join(work, name))
    environment = dict(os.environ, PATH=programs + ":" + os.environ["PATH"], HOME=os.path.join(scratch, "home"),
                       XDG_DATA_HOME=os.path.join(scratch, "home"), LC_ALL="C.UTF-8", TZ="UTC",
                       PGHOST="127.0.0.1", PGUSER="postgres")
    return work, share, environment


def run_all(commands, update, path, server, scratch):
    """What each command printed, by its first line; how many were wrong, how many left out."""
    work, share, environment = folder_for(scratch)
    made, wrong, left_out = {}, 0, 0
    for first, after, codes, command, shown, kind in commands:
        if "seamtakt-desk" in command and not os.environ.get("SEAMTAKT_DESK") or kind == "postgres" and not server.programs:
            left_out += 1
            continue
        port = str(server.port) if server else "5432"
        run = subprocess.run(["bash", "-c", "set -o pipefail\n" + command.replace(INSTALLED, share).replace(":5432", ":" + port)],
                             cwd=work, env=dict(environment, PGPORT=port), stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
                             stderr=subprocess.STDOUT, timeout=300)
        said = run.stdout.decode("utf-8").replace(share, INSTALLED)
        printed = re.sub(r"[ \t]+$", "", said, flags=re.MULTILINE).rstrip("\n").split("\n") if said.strip() else []
        made[first] = printed
        # 141: head had read enough and closed the pipe.
        if run.returncode not in codes + [141]:
            wrong += 1
            print("%s:%d: exit code %d of: %s\n%s" % (path, first + 1, run.returncode, command, said))
        elif printed != shown and not update:
            wrong += 1
            print("%s:%d: %s\n-- shown:\n%s\n-- printed:\n%s" % (path, first + 1, command, "\n".join(shown), "\n".join(printed)))
    return made, wrong, left_out


def look_at(path, update):
    lines = open(path, encoding="utf-8").read().split("\n")
    commands = commands_of(lines)
    with tempfile.TemporaryDirectory() as scratch:
        server = Server(scratch) if any(kind == "postgres" for *_, kind in commands) else None
        try:
            made, wrong, left_out = run_all(commands, update, path, server, scratch)
        finally:
            if server:
                server.end()
    if update:
        new, at = [], 0
        for first, after, _, _, shown, _ in commands:
            new += lines[at:after] + made.get(first, shown)
            at = after + len(shown)
        with open(path, "w", encoding="utf-8") as file:
            file.write("\n".join(new + lines[at:]))
    print("%s: %d commands, %d wrong, %d left out" % (path, len(commands), wrong, left_out))
    return wrong


def main(words):
    update = words[:1] == ["--update"]
    files = words[update:]
    if not files:
        sys.exit(__doc__)
    wrong = sum(look_at(path, update) for path in files)
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main(sys.argv[1:])
