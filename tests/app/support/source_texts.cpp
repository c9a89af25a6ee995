// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/support/source_texts.hpp"

#include "core/findings/findings.hpp"
#include "core/text/toml.hpp"

#include <algorithm>
#include <cctype>
#include <fstream>
#include <sstream>
#include <string_view>
#include <vector>

namespace stillwire::test {

namespace fs = std::filesystem;

namespace {

// Files without a word for people: logs, what goes over the wire, TOML and JSON as written, names of foreign columns.
const std::vector<std::string> kForMachines = {
    "core/capture/column_names.cpp",   "core/domain/mark.cpp",        "core/sheet/describe.cpp",
    "meters/bench/hand.cpp",           "meters/bench/rig.cpp",        "meters/bench/simulated_meter.cpp",
    "meters/bench/truth.cpp",          "meters/bench/truth_json.cpp", "meters/decode/encode.cpp",
    "meters/session/live_session.cpp", "meters/session/log.cpp"};
// Of the rest, what speaks in sentences as core does.
const std::vector<std::string> kOfApp = {
    "app/cli/html.cpp",          "app/cli/html_tables.cpp",  "app/cli/report.cpp",
    "app/shared/evaluate.cpp",   "app/shared/resources.cpp", "app/cli/spoken.cpp",
    "app/cli/spoken_levels.cpp", "app/cli/trace_svg.cpp",    "app/window/start/bench_doors.cpp"};

std::string bytesOf(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

// The C++ literals of a text, each with what stands before it. No raw strings, no literals with a prefix.
struct Literal {
    std::string before, text;
};

class Scanner {
public:
    explicit Scanner(std::string text) : text_(std::move(text)) {}

    std::vector<Literal> literals() {
        std::vector<Literal> found;
        bool joins = false;
        std::string before;
        while (at_ < text_.size()) {
            if (starts("//") || starts("#include")) {
                skipTo('\n');
            } else if (starts("R\"(")) {
                at_ = std::min(text_.find(")\"", at_), text_.size() - 2) + 2;
                joins = false;
            } else if (text_[at_] == '\'') {
                quoted('\'');
                joins = false;
            } else if (text_[at_] == '"') {
                const std::string piece = quoted('"');
                if (joins)
                    found.back().text += piece;
                else
                    found.push_back({before, piece});
                joins = true;
                before.clear();
            } else {
                if (!std::isspace(static_cast<unsigned char>(text_[at_]))) {
                    joins = false;
                    before += text_[at_];
                    if (before.size() > 40) before.erase(0, 20);
                }
                ++at_;
            }
        }
        return found;
    }

private:
    [[nodiscard]] bool starts(const char* with) const {
        return text_.compare(at_, std::string(with).size(), with) == 0;
    }
    void skipTo(char end) { at_ = std::min(text_.find(end, at_), text_.size()); }
    std::string quoted(char end) {
        std::string out;
        for (++at_; at_ < text_.size() && text_[at_] != end; ++at_) {
            if (text_[at_] != '\\') {
                out += text_[at_];
                continue;
            }
            ++at_;
            out += text_[at_] == 'n' ? '\n' : (text_[at_] == 't' ? '\t' : text_[at_]);
        }
        ++at_;
        return out;
    }

    std::string text_;
    std::size_t at_ = 0;
};

bool hasWord(const std::string& text) {
    int letters = 0;
    for (const char c : text) {
        letters = std::isalpha(static_cast<unsigned char>(c)) ? letters + 1 : 0;
        if (letters > 1) return true;
    }
    return false;
}

// Two words or more; or one that is made a sentence where it stands, or a label of the report.
bool forPeople(const Literal& literal, bool ofReport) {
    if (!hasWord(literal.text) || literal.text.find('\n') != std::string::npos) return false;
    const std::string& text = literal.text;
    // A piece of something written for a machine, or the name of a row of the judgement.
    if (std::string_view(" <\")").find(text.front()) != std::string_view::npos || text.back() == ' ') return false;
    if (literal.before.ends_with("JudgementRow{")) return false;
    const bool made = literal.before.ends_with("Sentence{") || literal.before.ends_with("Section{");
    const auto letter = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const bool label = ofReport && std::isupper(letter(0)) != 0 && std::islower(letter(1)) != 0;
    return made || label || text.find(' ') != std::string::npos;
}

void addNames(const TomlNode& node, std::set<std::string>& names) {
    if (const TomlArray* array = node.array())
        for (const TomlNode& one : *array) addNames(one, names);
    const TomlTable* table = node.table();
    if (table == nullptr) return;
    for (const auto& [key, value] : *table) {
        if (value.string() != nullptr && (key == "name" || key == "notes" || key == "source"))
            names.insert(*value.string());
        if (key == "text" && value.array() != nullptr)
            for (const TomlNode& caution : *value.array())
                if (caution.string() != nullptr) names.insert(*caution.string());
        addNames(value, names);
    }
}

std::string escaped(const std::string& text) {
    std::string out;
    for (const char c : text) {
        if (c == '"' || c == '\\') out += '\\';
        out += c;
    }
    return out;
}

} // namespace

std::set<std::string> sentencesOfSource(const fs::path& source) {
    std::vector<fs::path> files;
    for (const char* folder : {"core", "meters"})
        for (const auto& entry : fs::recursive_directory_iterator(source / folder)) {
            const std::string name = fs::relative(entry.path(), source).generic_string();
            const bool code = name.ends_with(".cpp") || name.ends_with(".hpp");
            if (code && std::find(kForMachines.begin(), kForMachines.end(), name) == kForMachines.end())
                files.push_back(entry.path());
        }
    std::set<std::string> all;
    const auto collect = [&](const fs::path& file, bool ofReport) {
        for (const Literal& literal : Scanner(bytesOf(file)).literals())
            if (forPeople(literal, ofReport)) all.insert(literal.text);
    };
    for (const fs::path& file : files) collect(file, false);
    for (const std::string& name : kOfApp) collect(source / name, true);
    return all;
}

std::set<std::string> namesOfResources(const fs::path& source) {
    std::set<std::string> names{"left", "right", "sheets", "meters", "bench"};
    for (int i = 0; i < kStepCount; ++i) names.emplace(stepName(static_cast<Step>(i)));
    for (int i = 0; i <= static_cast<int>(Decision::cannotTell); ++i)
        names.emplace(decisionName(static_cast<Decision>(i)));
    for (const char* folder : {"sheets", "meters", "bench"})
        for (const auto& entry : fs::directory_iterator(source / "resources" / folder)) {
            const auto parsed = parseToml(bytesOf(entry.path()), entry.path().string());
            if (parsed) addNames(parsed.value(), names);
        }
    return names;
}

std::string textsForLupdate(const fs::path& source) {
    std::string out =
        "// SPDX-License-Identifier: GPL-3.0-or-later\n"
        "// Made by resources/translations/update: what core, meters and the resources say, for lupdate to read. "
        "Never compiled.\n";
    for (const std::string& text : sentencesOfSource(source))
        out += "QT_TRANSLATE_NOOP(\"core\", \"" + escaped(text) + "\")\n";
    for (const std::string& text : namesOfResources(source))
        out += "QT_TRANSLATE_NOOP(\"names\", \"" + escaped(text) + "\")\n";
    return out;
}

} // namespace stillwire::test
