// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/capture_edit.hpp"

#include "core/capture/reader.hpp"

#include <algorithm>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QRegularExpression>

namespace stillwire {
namespace {

const QRegularExpression& recordedAt() {
    static const QRegularExpression prefix(QStringLiteral("^\\d{4}-\\d{2}-\\d{2}-\\d{4,6}-"));
    return prefix;
}

} // namespace

QString titleOfCapture(const QString& path) {
    QString title = QFileInfo(path).completeBaseName();
    title.remove(recordedAt());
    title.replace(QLatin1Char('-'), QLatin1Char(' '));
    title = title.simplified();
    if (!title.isEmpty()) title[0] = title[0].toUpper();
    return title;
}

Result<QString> renameCapture(const QString& path, const QString& title) {
    const QFileInfo file(path);
    QString name = title.simplified();
    for (QChar& c : name)
        if (c == QLatin1Char('/') || c == QLatin1Char('\\') || c.category() == QChar::Other_Control)
            c = QLatin1Char('-');
    const auto failed = [&](Sentence what) {
        return Error{Error::Kind::badInput, file.fileName().toStdString(), 0, std::move(what), "choose another name"};
    };
    if (name.isEmpty() || name.startsWith(QLatin1Char('.'))) return failed("no file can be called that");
    const QString to = file.dir().filePath(recordedAt().match(file.completeBaseName()).captured() + name +
                                           QLatin1Char('.') + file.suffix());
    if (to == path) return to;
    if (!QFile::rename(path, to)) return failed("it could not be renamed");
    return to;
}

Status noteOnCapture(const QString& path, const QString& note) {
    auto capture = loadCapture(path.toStdString());
    if (!capture) return capture.error();
    std::vector<Mark> marks = capture->marks;
    Time last{0};
    if (!capture->readings.empty()) last = capture->readings.back().time;
    if (!marks.empty()) last = std::max(last, marks.back().time);
    marks.emplace_back(last, "note:" + note.simplified().toStdString());
    return rewriteMarks(path.toStdString(), marks);
}

} // namespace stillwire
