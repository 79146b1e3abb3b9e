"""Saves two projects in turn to a file, again and again, in a child that is killed at a random moment each round.

Run as a program: FILE ROUNDS SEED. After each round it holds the file's content against the two, and ends with 1 at
the first that is neither.
"""

import contextlib
import os
import random
import signal
import sys
import time
from pathlib import Path

from panelcad.model.project import Project
from panelcad.store.project_file import load, save, to_bytes


def main() -> int:
    file, rounds, seed = Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3])
    first = load(file)
    second = first.revised(title="Another title", notes="a longer text " * 250)
    whole = {to_bytes(first), to_bytes(second)}
    chance = random.Random(seed)  # noqa: S311 - moments, not secrets
    for _ in range(rounds):
        kill_while_saving((first, second), file, chance.uniform(0.0, 0.012))
        if file.read_bytes() not in whole:
            return 1
    return 0


def kill_while_saving(projects: tuple[Project, Project], file: Path, after: float) -> None:
    child = os.fork()
    if child == 0:
        with contextlib.suppress(BaseException):
            while True:
                for project in projects:
                    save(project, file)
        os._exit(2)
    time.sleep(after)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)


if __name__ == "__main__":
    sys.exit(main())
