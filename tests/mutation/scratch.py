# SPDX-License-Identifier: GPL-3.0-or-later
"""A copy of the tree with a warm build of its own, in which one file at a time is changed."""
import json
import os
import re
import resource
import signal
import subprocess
import time
from collections import namedtuple

PARTS = ["CMakeLists.txt", "CMakePresets.json", "core", "meters", "app", "resources", "demo-sessions", "tests"]
TARGETS = ["core_tests", "families_tests"]
MEMORY_KB = 4 << 20  # a change can make a loop that fills it


# How a program runs that nothing was changed in.
Known = namedtuple("Known", "words cpu_s wall_s figures")


class Broken(Exception):
    """The tree does not build, or its tests do not run, without any change."""


def files_of(root):
    for part in PARTS:
        if os.path.isfile(os.path.join(root, part)):
            yield part
        for folder, folders, names in os.walk(os.path.join(root, part)):
            folders[:] = [f for f in folders if f != "__pycache__"]
            for name in names:
                yield os.path.relpath(os.path.join(folder, name), root)


def bytes_of(path):
    with open(path, "rb") as file:
        return file.read()


class Scratch:
    def __init__(self, tree, folder, build_jobs):
        self.tree, self.folder, self.build_jobs = tree, folder, build_jobs
        self.changed, self.original = None, ""  # the file that is changed now, and its text before
        self.known = {}  # by program

    def copy(self):
        """Only what differs is written, so that the build stays warm from one run to the next."""
        wanted = set(files_of(self.tree))
        if os.path.isdir(self.folder):
            for name in set(files_of(self.folder)) - wanted:
                os.remove(os.path.join(self.folder, name))
        for name in wanted:
            new, there = bytes_of(os.path.join(self.tree, name)), os.path.join(self.folder, name)
            if not os.path.exists(there) or bytes_of(there) != new:
                os.makedirs(os.path.dirname(there), exist_ok=True)
                with open(there, "wb") as file:
                    file.write(new)
            os.chmod(there, os.stat(os.path.join(self.tree, name)).st_mode)

    def run(self, words, **more):
        # Nobody asks for these objects again; and without the cache, headers are precompiled.
        env = dict(os.environ, CCACHE_DISABLE="1")
        for name in ("STILLWIRE_LONG", "GTEST_FILTER", "GTEST_OUTPUT"):
            env.pop(name, None)
        return subprocess.run(words, cwd=self.folder, env=env, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                              text=True, errors="replace", **more)

    def build(self):
        done = self.run(["nice", "-n", "10", "cmake", "--build", "build/dev", "-j", str(self.build_jobs), "--target",
                         *TARGETS])
        return done.returncode == 0, done.stdout

    def warm(self):
        """Copied, built and run once as it is."""
        self.copy()
        # `a && b || c` is what a change makes; only a person should not write it.
        configured = self.run(["cmake", "--preset", "dev", "-DSTILLWIRE_WINDOW=OFF",
                               "-DCMAKE_CXX_FLAGS=-Wno-parentheses"])
        if configured.returncode != 0:
            raise Broken(configured.stdout)
        built, said = self.build()
        if not built:
            raise Broken(said)
        everywhere = []
        for program in TARGETS:
            failing = self.failing(program)
            everywhere += failing
            words = ["nice", "-n", "10", f"build/dev/bin/{program}", "--gtest_fail_fast"]
            if failing:
                words.append("--gtest_filter=-" + ":".join(failing))
            began, before = time.monotonic(), resource.getrusage(resource.RUSAGE_CHILDREN)
            done = self.run(words)
            after = resource.getrusage(resource.RUSAGE_CHILDREN)
            if done.returncode != 0:
                raise Broken(f"{program} fails without the tests that fail:\n{done.stdout[-2000:]}")
            cpu_s = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
            self.known[program] = Known(words, cpu_s, time.monotonic() - began, figures(done.stdout))
        return sorted(everywhere)

    def failing(self, program):
        report = os.path.join(self.folder, "build", program + ".json")
        if os.path.exists(report):
            os.remove(report)
        done = self.run(["nice", "-n", "10", f"build/dev/bin/{program}", f"--gtest_output=json:{report}"])
        if not os.path.exists(report):
            raise Broken(f"{program} did not come to its end:\n{done.stdout[-2000:]}")
        with open(report, encoding="utf-8") as file:
            suites = json.load(file)["testsuites"]
        return [f"{test['classname']}.{test['name']}" for suite in suites for test in suite["testsuite"]
                if test.get("failures")]

    def put(self, change):
        """This change alone. Not by way of the tree, in which somebody may go on working meanwhile."""
        if self.changed != change.file:
            self.put_back()
            self.changed = change.file
            self.original = bytes_of(os.path.join(self.folder, change.file)).decode()
        self.write(change.applied(self.original))

    def put_back(self):
        if self.changed:
            self.write(self.original)
        self.changed = None

    def write(self, text):
        with open(os.path.join(self.folder, self.changed), "w", encoding="utf-8") as out:
            out.write(text)

    def verdict(self):
        """Of the copy as it stands: "noticed", "not noticed" or "did not build", and what more can be said."""
        built, said = self.build()
        if not built:
            error = re.search(r"error: .*", said)
            return "did not build", error.group()[:100] if error else "no compiler's error: " + said[-200:]
        same = True
        for program in TARGETS:
            known = self.known[program]
            # Processor time, so that a busy computer is no endless loop.
            limits = f"ulimit -c 0; ulimit -v {MEMORY_KB}; ulimit -t {int(5 * known.cpu_s + 10)}; exec \"$@\""
            try:
                done = self.run(["sh", "-c", limits, "sh", *known.words], timeout=20 * known.wall_s + 60)
            except subprocess.TimeoutExpired:
                return "noticed", f"{program} hung"
            if done.returncode != 0:
                failed = re.search(r"^\[  FAILED  \] ([\w./]+)", done.stdout, re.M)
                endless = done.returncode in (-signal.SIGXCPU, -signal.SIGKILL)
                how = "ran on" if endless else f"ended with {done.returncode}"
                return "noticed", failed.group(1) if failed else f"{program} {how}"
            same = same and figures(done.stdout) == known.figures
        return "not noticed", "every printed figure stays" if same else "printed figures change"


def figures(said):
    """The rows of the tables that a program prints, but for how quick it was, their last column."""
    return [line.rsplit(None, 1)[0] for line in said.splitlines() if line.count(" | ") > 3]
