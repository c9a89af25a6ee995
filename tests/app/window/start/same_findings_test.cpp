// SPDX-License-Identifier: GPL-3.0-or-later
// `analyse`, the window's replay and the start page say the same of a capture, to the last digit: also where its
// header says little or nothing of the meter.
#include "app/shared/evaluate.hpp"
#include "app/window/start/bench_doors.hpp"
#include "app/window/start/glance.hpp"
#include "tests/app/cli/made_capture.hpp"
#include "tests/support/findings_text.hpp"
#include "tests/support/source_folder.hpp"

#include <chrono>
#include <fstream>
#include <thread>

#include <QTemporaryDir>
#include <gtest/gtest.h>

namespace stillwire {
namespace {

using namespace std::chrono_literals;

struct Described {
    const char* name;
    const char* meter; // header lines
};

std::string captureWith(const std::string& meter) {
    testing::Wanted wanted;
    wanted.meter = false;
    wanted.dropoutsInShaft = true;
    std::string bytes = testing::madeCapture(wanted);
    return bytes.insert(bytes.find("time_s,"), meter);
}

std::string written(const QTemporaryDir& folder, const char* name, const std::string& bytes) {
    std::string path = folder.filePath(name).toStdString();
    std::ofstream(path, std::ios::binary) << bytes;
    return path;
}

Findings analysed(const std::string& path, const std::string& meter = {}) {
    auto evaluation = evaluateCapture(path, {.sheet = {}, .meter = meter, .import = {}});
    EXPECT_TRUE(evaluation) << evaluation.error().text();
    return evaluation ? evaluation->findings : Findings{};
}

Findings replayed(const std::string& path) {
    Way way;
    way.kind = Way::Kind::capture;
    way.path = QString::fromStdString(path);
    way.speed = 0;
    auto opened = BenchDoors().open(way);
    EXPECT_TRUE(opened) << opened.error().text();
    if (!opened) return {};
    Session& session = *opened->session;
    for (const auto limit = std::chrono::steady_clock::now() + 60s;
         session.running() && std::chrono::steady_clock::now() < limit;)
        std::this_thread::sleep_for(2ms);
    session.stop();
    return *session.snapshot()->findings;
}

class SameFindings : public ::testing::TestWithParam<Described> {};

TEST_P(SameFindings, AnalysedReplayedAndGlancedAt) {
    const QTemporaryDir folder;
    const std::string path = written(folder, "c.csv", captureWith(GetParam().meter));
    const Findings findings = analysed(path);
    EXPECT_FALSE(findings.excursions.empty()) << "nothing to compare";
    EXPECT_EQ(test::findingsText(replayed(path)), test::findingsText(findings));
    EXPECT_EQ(glanceAt(QString::fromStdString(path)).decision, findings.verdict.decision);
}
INSTANTIATE_TEST_SUITE_P(
    Meters, SameFindings,
    ::testing::Values(Described{"NoMeter", ""},
                      Described{"NoRanges", "# [meter]\n# name = \"Half\"\n# interval_s = 0.33\n"},
                      Described{"NoInterval", "# [meter]\n# name = \"Half\"\n# [[meter.range]]\n"
                                              "# full_scale_V = 6.0\n# resolution_V = 0.001\n"},
                      Described{"OnlyALink", "# [meter]\n# name = \"Half\"\n# [meter.link]\n# baud = 2400\n"}),
    [](const auto& described) { return std::string(described.param.name); });

TEST(SameFindingsOf, AMeterThatIsGivenAndOneInTheHeader) {
    const QTemporaryDir folder;
    const std::string meter = test::sourceFile("resources/meters/text-line-logger.toml");
    const std::string without = written(folder, "without.csv", captureWith(""));
    auto capture = loadCapture(without);
    ASSERT_TRUE(capture) << capture.error().text();
    std::ifstream in(meter);
    auto traits = parseMeterTraits(std::string(std::istreambuf_iterator<char>(in), {}), meter);
    ASSERT_TRUE(traits) << traits.error().text();
    capture->header.meter = *traits;
    const std::string bytes = captureWith("");
    const std::string with =
        written(folder, "with.csv", formatHeader(capture->header) + bytes.substr(bytes.find("time_s,")));
    EXPECT_EQ(test::findingsText(analysed(without, meter)), test::findingsText(replayed(with)));
    EXPECT_EQ(test::findingsText(analysed(with)), test::findingsText(replayed(with)));
}

TEST(SameFindingsOf, WholeSecondsThatAreShared) {
    const QTemporaryDir folder;
    std::string bytes = captureWith("");
    std::string rows = "clock,volts\n";
    int row = 0;
    for (std::size_t at = bytes.find('\n', bytes.find("time_s,")) + 1; at < bytes.size(); ++row) {
        const std::size_t end = bytes.find('\n', at), comma = bytes.find(',', at);
        const std::string volts = bytes.substr(comma + 1, bytes.find(',', comma + 1) - comma - 1);
        if (!volts.empty()) rows += std::to_string(row / 3) + "," + volts + "\n";
        at = end + 1;
    }
    const std::string header = bytes.substr(0, bytes.find("time_s,"));
    const std::string path = written(folder, "logged.csv", header + "Time (s),Voltage (V)" + rows.substr(11));
    const Findings findings = analysed(path);
    ASSERT_FALSE(findings.assumed.empty());
    EXPECT_EQ(findings.assumed.front().english(), "times are whole seconds: readings spread evenly within each");
    EXPECT_EQ(test::findingsText(replayed(path)), test::findingsText(findings));
}

} // namespace
} // namespace stillwire
