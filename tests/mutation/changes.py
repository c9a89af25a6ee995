# SPDX-License-Identifier: GPL-3.0-or-later
"""Every one-token change that a C++ text takes. Knows tokens and brackets, no grammar: whatever comes out as nonsense
does not build, and is not counted."""
import re
from dataclasses import dataclass


@dataclass(frozen=True)
class Change:
    file: str
    at: int  # index into the text
    before: str
    after: str
    line: int
    line_before: str
    line_after: str
    again: int  # the same line stands in the file so many times before

    def key(self):
        """As equal.txt has it: no line number, so that it outlives changes elsewhere in the file."""
        file = f"{self.file}#{self.again + 1}" if self.again else self.file
        return f"{file} ## {self.line_before} ## {self.line_after}"

    def applied(self, text):
        assert text[self.at:self.at + len(self.before)] == self.before
        return text[:self.at] + self.after + text[self.at + len(self.before):]


NO_TARGET = re.compile(
    r'//[^\n]*|/\*.*?\*/|R"\((?:.*?)\)"|"(?:\\.|[^"\\\n])*"|(?<![0-9A-Za-z])\'(?:\\.|[^\'\\\n])+\''
    r'|^[ \t]*#(?:\\\n|[^\n])*|\[\[.*?\]\]',
    re.S | re.M)


def masked(text):
    """Comments, literals, preprocessor lines, attributes and static_asserts blanked; every index stays."""
    blank = lambda span: re.sub(r"[^\n]", " ", span)
    text = NO_TARGET.sub(lambda m: blank(m.group()), text)
    for m in reversed(list(re.finditer(r"\bstatic_assert\s*\(", text))):
        end = closing(text, m.end() - 1) + 1
        text = text[:m.start()] + blank(text[m.start():end]) + text[end:]
    return text


def closing(text, opening):
    """Index of the bracket that closes the one at `opening`; the end of the text if none does."""
    pairs = {"(": ")", "{": "}"}
    here, there = text[opening], pairs[text[opening]]
    depth = 0
    for i in range(opening, len(text)):
        depth += (text[i] == here) - (text[i] == there)
        if depth == 0:
            return i
    return len(text) - 1


# Of operators only those with a space on either side: as clang-format sets them, the others are templates, pointers,
# references and signs.
OPERATORS = {
    "<": ["<=", ">="], "<=": ["<", ">"], ">": [">=", "<="], ">=": [">", "<"], "==": ["!="], "!=": ["=="],
    "+": ["-"], "-": ["+"], "*": ["/"], "/": ["*"], "+=": ["-="], "-=": ["+="], "*=": ["/="], "/=": ["*="],
    "&&": ["||"], "||": ["&&"],
}
WORDS = {"true": "false", "false": "true", "min": "max", "max": "min", "min_element": "max_element",
         "max_element": "min_element"}
OPERATOR = re.compile(r"(?<=\s)(?:[<>=!+\-*/]=|&&|\|\||[<>+\-*/])(?=\s)")
NUMBER = re.compile(r"(?<![\w.'])(\d+(?:\.\d*)?(?:e-?\d+)?)(?=(?:[uUlLfzZ]*|s|ms|us|ns|min|h)\b|[^\w.'])")


def numbers(word):
    """A number halved, doubled, and one more than it where it is whole."""
    if re.search(r"[.e]", word):
        value = float(word)
        return [repr(value / 2), repr(value * 2)] if value else []
    value = int(word)
    return sorted({str(v) for v in (value // 2, value * 2, value + 1)} - {word})


NO_STATEMENT = re.compile(r"[};,)]|else\b|case\b|default\b|while\b")


def returns(text):
    """Where a `return;` can come early: before each statement of a function that returns nothing."""
    places = set()
    for m in re.finditer(r"\bvoid\s+[\w:]+\s*\(", text):
        rest = re.compile(r"[\s\w]*\{").match(text, closing(text, m.end() - 1) + 1)
        if not rest:
            continue
        depth, last = 0, ""
        for i in range(rest.end() - 1, closing(text, rest.end() - 1)):
            c = text[i]
            if c.isspace():
                continue
            if depth == 0 and last in ("{", ";", "}") and not NO_STATEMENT.match(text, i):
                places.add(i)
            depth += (c in "([") - (c in ")]")
            # A brace right behind a name, a bracket or an equals sign holds values, no statements.
            values = c == "{" and not re.search(r"(\)|\belse|\bdo|\bconst|:) $", text[:i][-8:])
            last = "" if values else c
    return sorted(places)


def changes(file, text):
    """All of them, those of one place together: [[Change, ...], ...]."""
    bare = masked(text)
    found = []
    for m in OPERATOR.finditer(bare):
        found.append((m.start(), m.group(), OPERATORS.get(m.group(), [])))
    for m in re.finditer(r"!(?!=)", bare):
        found.append((m.start(), "!", [""]))
    for m in NUMBER.finditer(bare):
        if re.search(r"\)\s*(?:const\s*)?=\s*$", bare[max(0, m.start() - 20):m.start()]):
            continue  # a pure virtual function
        found.append((m.start(), m.group(1), numbers(m.group(1))))
    for m in re.finditer(r"\b(?:true|false)\b|(?<=std::)(?:min|max)(?:_element)?\b", bare):
        found.append((m.start(), m.group(), [WORDS[m.group()]]))
    found += [(at, "", ["return; "]) for at in returns(bare)]

    lines = text.split("\n")
    starts = [0]
    for line in lines:
        starts.append(starts[-1] + len(line) + 1)
    places = []
    for at, before, afters in sorted(found):
        line = text.count("\n", 0, at)
        whole, column = lines[line], at - starts[line]
        again = sum(other.strip() == whole.strip() for other in lines[:line])
        places.append([Change(file, at, before, after, line + 1, whole.strip(),
                              (whole[:column] + after + whole[column + len(before):]).strip(), again)
                       for after in afters])
    return [place for place in places if place]
