# SPDX-License-Identifier: GPL-3.0-or-later
import os
import sys
import unittest

sys.dont_write_bytecode = True
sys.path.insert(0, os.path.dirname(__file__))
from changes import changes  # noqa: E402


def made(text):
    return [change.applied(text) for place in changes("a.cpp", text) for change in place]


class Changes(unittest.TestCase):
    def test_operators_and_words(self):
        self.assertEqual(made("a = b < c;"), ["a = b <= c;", "a = b >= c;"])
        self.assertEqual(made("if (a && !b)"), ["if (a || !b)", "if (a && b)"])
        self.assertEqual(made("x += y / z;"), ["x -= y / z;", "x += y * z;"])
        self.assertEqual(made("x = std::min(a, b), ok = true;"),
                         ["x = std::max(a, b), ok = true;", "x = std::min(a, b), ok = false;"])

    def test_numbers(self):
        self.assertEqual(made("double a = 0.5;"), ["double a = 0.25;", "double a = 1.0;"])
        self.assertEqual(made("int a = 6;"), ["int a = 12;", "int a = 3;", "int a = 7;"])
        self.assertEqual(made("Time a = 3s;"), ["Time a = 1s;", "Time a = 4s;", "Time a = 6s;"])
        self.assertEqual(made("auto n = 1U, level_2 = 0.0;"), ["auto n = 0U, level_2 = 0.0;", "auto n = 2U, level_2 = 0.0;"])

    def test_what_is_no_target(self):
        for text in ("#include <a1>\n", "// 3 < 4\n", 'say("1 < 2");', "static_assert(sizeof(A) == (8));", "c = '1';",
                     "[[deprecated]] int a;", "/* 1 +\n 2 */", "std::vector<int> a; f(A&& a, B* b);",
                     "template <typename T> T f();", "virtual int f() const = 0;"):
            self.assertEqual(made(text), [], text)

    def test_early_returns(self):
        text = ("void A::f(int a) {\n    g(a);\n    if (a) {\n        h();\n    } else {\n        A b{a, a};\n    }\n}\n"
                "int k() { return z; }\n")
        self.assertEqual([change.line for place in changes("a.cpp", text) for change in place], [2, 3, 4, 6])
        self.assertIn("    return; g(a);", made(text)[0])

    def test_key_tells_equal_lines_apart(self):
        keys = [change.key() for place in changes("a.cpp", "f(!a);\nf(!a);\n") for change in place]
        self.assertEqual(keys, ["a.cpp ## f(!a); ## f(a);", "a.cpp#2 ## f(!a); ## f(a);"])


if __name__ == "__main__":
    unittest.main()
