// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/file_error.hpp"
#include "core/capture/read_rows.hpp"
#include "core/capture/writer.hpp"
#include "core/text/toml.hpp"

#include <algorithm>
#include <cerrno>
#include <fcntl.h>
#include <map>
#include <sys/stat.h>
#include <unistd.h>

namespace stillwire {

namespace {

// The capture as it stands: its rows but the marks, and where each mark stood among them.
struct Standing : RowSink, RawRows {
    struct Row {
        std::string raw;
        Time time{0};
    };
    struct OldMark {
        Mark mark;
        std::size_t before = 0; // how many rows stood before it
    };
    std::vector<Row> rows;
    std::vector<OldMark> marks;

    void readings(const Reading*, std::size_t) override {}
    void reading(const Reading&) override {}
    void mark(const Mark& mark) override { marks.push_back({mark, rows.size()}); }
    void row(std::string_view raw, RowKind kind, Time time) override {
        if (kind != RowKind::mark) rows.push_back({std::string(raw), time});
    }
};

// How many rows stand before each new mark. One that was there stays where it was; a new one comes after the rows of
// its time.
std::vector<std::size_t> placesOf(const std::vector<Mark>& marks, const Standing& standing) {
    std::multimap<std::pair<Time, std::string>, std::size_t> old;
    for (const auto& mark : standing.marks) old.emplace(std::pair(mark.mark.time, mark.mark.text()), mark.before);
    std::vector<std::size_t> places;
    std::size_t least = 0;
    for (const Mark& mark : marks) {
        std::size_t place = 0;
        if (const auto found = old.find({mark.time, mark.text()}); found != old.end()) {
            place = found->second;
            old.erase(found);
        } else {
            const auto after = std::upper_bound(standing.rows.begin(), standing.rows.end(), mark.time,
                                                [](Time t, const Standing::Row& row) { return t < row.time; });
            place = static_cast<std::size_t>(after - standing.rows.begin());
        }
        least = std::max(least, place);
        places.push_back(least);
    }
    return places;
}

// A mark in the file's own columns, whichever they are and in whatever order.
std::string markRow(const Mark& mark, const Layout& layout) {
    std::string row = formatRow(mark); // "12.5,,,pose:left\n"
    if (layout.time == 0 && layout.mark == 3 && layout.columns == 4) return row;
    const std::string cell = row.substr(row.find(",,,") + 3, row.size() - row.find(",,,") - 4);
    std::string out;
    for (int i = 0; i < layout.columns; ++i) {
        if (i > 0) out += ',';
        if (i == layout.time) out += formatTime(mark.time);
        if (i == layout.mark) out += cell;
    }
    return out + "\n";
}

// The marks of before this edit, behind those of earlier edits: `old_marks = [["12.5 pose:left"], …]`, the newest
// last.
void keepOldMarks(CaptureHeader& header, const std::vector<Standing::OldMark>& marks) {
    auto other = parseToml(header.other, "");
    TomlTable table = other ? *other->table() : TomlTable();
    TomlArray edits;
    if (const auto found = table.find("old_marks"); found != table.end()) {
        if (const TomlArray* array = found->second.array())
            edits = *array;
        else
            edits.push_back(found->second);
    }
    TomlArray lines;
    for (const auto& old : marks) lines.push_back({formatTime(old.mark.time) + " " + old.mark.text(), 0});
    edits.push_back({std::move(lines), 0});
    table["old_marks"] = {std::move(edits), 0};
    header.other = writeToml({std::move(table), 0}, "");
}

std::string compose(const Prologue& prologue, const Standing& standing, std::vector<Mark> marks) {
    Layout layout = prologue.layout;
    std::string columns = prologue.columnLine;
    if (layout.mark == Layout::kNone) {
        layout.mark = layout.columns++;
        columns += ",mark";
    }
    std::erase_if(marks, [](const Mark& m) { return m.text().empty(); });
    std::stable_sort(marks.begin(), marks.end(), [](const Mark& a, const Mark& b) { return a.time < b.time; });
    const std::vector<std::size_t> places = placesOf(marks, standing);
    CaptureHeader header = prologue.header;
    keepOldMarks(header, standing.marks);
    std::string out = formatHeader(header) + columns + "\n";
    std::size_t next = 0;
    for (std::size_t row = 0; row <= standing.rows.size(); ++row) {
        for (; next < marks.size() && places[next] == row; ++next) out += markRow(marks[next], layout);
        if (row < standing.rows.size()) out += standing.rows[row].raw;
    }
    return out;
}

// Beside the file, to the disk, then in its place: at every moment one whole capture has the name.
Status replaceFile(const std::string& path, std::string_view bytes) {
    std::string beside = path + ".XXXXXX";
    const int descriptor = ::mkstemp(beside.data());
    if (descriptor < 0) return fileError(path, Deed::rewrite, errno);
    struct stat about {};
    int code = ::stat(path.c_str(), &about) == 0 && ::fchmod(descriptor, about.st_mode & 07777) == 0 ? 0 : errno;
    while (code == 0 && !bytes.empty()) {
        const ssize_t n = ::write(descriptor, bytes.data(), bytes.size());
        if (n > 0) {
            bytes.remove_prefix(static_cast<std::size_t>(n));
        } else if (n == 0) {
            code = ENOSPC;
        } else if (errno != EINTR) {
            code = errno;
        }
    }
    if (code == 0 && ::fsync(descriptor) != 0) code = errno;
    ::close(descriptor);
    if (code == 0 && ::rename(beside.c_str(), path.c_str()) != 0) code = errno;
    if (code != 0) {
        ::unlink(beside.c_str());
        return fileError(path, Deed::rewrite, code);
    }
    const std::size_t slash = path.rfind('/');
    const std::string folder = slash == std::string::npos ? "." : path.substr(0, slash + 1);
    // The rename is on the disk once the folder is; if that fails the old file is still whole.
    if (const int at = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC); at >= 0) {
        ::fsync(at);
        ::close(at);
    }
    return Done{};
}

} // namespace

Status rewriteMarks(const std::string& path, const std::vector<Mark>& marks) {
    Standing standing;
    Prologue prologue;
    auto summary = readRows(path, standing, {}, &standing, &prologue);
    if (!summary) return summary.error();
    if (summary->imported) {
        return Error{Error::Kind::badInput, path, 0, "marks are written into captures only",
                     "save the import as a capture first"};
    }
    // The marks are given as they were read. Where readings were spread, that is not as they are written.
    std::vector<Mark> written = marks;
    if (prologue.sharedSeconds)
        if (auto read = loadCapture(path))
            for (Mark& mark : written)
                for (std::size_t i = 0; i < std::min(read->marks.size(), standing.marks.size()); ++i)
                    if (read->marks[i].time == mark.time && read->marks[i].text() == mark.text())
                        mark.time = standing.marks[i].mark.time;
    return replaceFile(path, compose(prologue, standing, std::move(written)));
}

} // namespace stillwire
