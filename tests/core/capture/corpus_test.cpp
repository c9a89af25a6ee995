// SPDX-License-Identifier: GPL-3.0-or-later
// Small files in shapes of our own, each with its truth beside it: right to the last digit, or refused with the line
// that mends it. None may be wrong.
#include "tests/core/capture/collect.hpp"
#include "tests/core/capture/import_words.hpp"
#include "tests/core/capture/temp_folder.hpp"
#include "tests/support/source_folder.hpp"

#include <set>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

const std::string kFolder = test::sourceFile("tests/core/capture/corpus/");
constexpr std::size_t kFewest = 150;

// NAME.truth: "# what it is"; "refused: LINE: words of the error" if it has to ask; "options: …" that then mend it,
// or that it needs; and a line for each row, as collect() has it. No rows: nothing mends it but another file.
struct Truth {
    std::string about, refused, options, rows;
};

Truth truthOf(const std::string& name) {
    Truth truth;
    std::istringstream in(readFile(kFolder + name + ".truth"));
    for (std::string line; std::getline(in, line);) {
        if (line.starts_with("# "))
            truth.about = line.substr(2);
        else if (line.starts_with("refused: "))
            truth.refused = line.substr(9);
        else if (line.starts_with("options: "))
            truth.options = line.substr(9);
        else
            truth.rows += line + "|";
    }
    return truth;
}

std::vector<std::string> names() {
    std::set<std::string> found;
    for (const auto& entry : std::filesystem::directory_iterator(kFolder)) found.insert(entry.path().stem().string());
    return {found.begin(), found.end()};
}

Read readFromDisk(const std::string& path, const ImportOptions& options) {
    Collected sink;
    Read read;
    auto summary = readCapture(path, sink, options);
    if (!summary) read.error = summary.error().text();
    read.text = sink.text;
    return read;
}

class Corpus : public testing::TestWithParam<std::string> {};

} // namespace

TEST_P(Corpus, IsReadRightOrRefusedWithTheLineThatMendsIt) {
    const std::string path = kFolder + GetParam() + ".csv", bytes = readFile(path);
    const Truth truth = truthOf(GetParam());
    SCOPED_TRACE(truth.about);
    ASSERT_NE(truth.about, "");
    if (!truth.refused.empty()) {
        const std::string error = collect(bytes).error;
        const std::size_t colon = truth.refused.find(": ");
        const bool line = colon != std::string::npos && truth.refused.find_first_not_of("0123456789") == colon;
        EXPECT_THAT(error, testing::HasSubstr(line ? truth.refused.substr(colon + 2) : truth.refused));
        EXPECT_THAT(error, testing::HasSubstr(line ? "test.csv:" + truth.refused.substr(0, colon + 1) : "test.csv"));
        EXPECT_EQ(error.find('\n'), std::string::npos);
    }
    if (truth.rows.empty()) return;
    const Read read = collect(bytes, importOptions(truth.options));
    EXPECT_EQ(read.error, "");
    EXPECT_EQ(read.text, truth.rows);
    EXPECT_EQ(readFromDisk(path, importOptions(truth.options)).text, truth.rows);
}

INSTANTIATE_TEST_SUITE_P(Each, Corpus, testing::ValuesIn(names()), [](const auto& each) {
    std::string name = each.param;
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
});

TEST(CorpusItself, IsLargeAndHasATruthBesideEachFile) {
    EXPECT_GE(names().size(), kFewest);
    for (const std::string& name : names()) {
        EXPECT_TRUE(std::filesystem::exists(kFolder + name + ".csv")) << name;
        EXPECT_TRUE(std::filesystem::exists(kFolder + name + ".truth")) << name;
    }
}

} // namespace stillwire
