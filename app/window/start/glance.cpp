// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/glance.hpp"

#include "app/window/start/capture_edit.hpp"
#include "app/window/words.hpp"
#include "core/capture/reader.hpp"
#include "core/examination_capture.hpp"

#include <cmath>

#include <QDateTime>
#include <QFileInfo>
#include <QLocale>

namespace stillwire {
namespace {

constexpr std::size_t kSlices = 150;
constexpr qint64 kLargest_bytes = 20'000'000; // a bigger one would keep a core busy for a picture

QString whenSaid(const QString& started) {
    const QDateTime at = QDateTime::fromString(started, Qt::ISODate);
    if (!at.isValid()) return {};
    const QString time = at.time().toString(QStringLiteral("HH:mm"));
    const QDate today = QDate::currentDate();
    if (at.date() == today) return GlanceTaker::tr("today %1").arg(time);
    if (at.date() == today.addDays(-1)) return GlanceTaker::tr("yesterday %1").arg(time);
    return GlanceTaker::tr("%1 at %2").arg(QLocale().toString(at.date(), QStringLiteral("d MMM yyyy")), time);
}

} // namespace

Glance glanceAt(const QString& path) {
    Glance glance;
    glance.path = path;
    const QFileInfo file(path);
    glance.name = titleOfCapture(path);
    if (!file.exists()) {
        glance.trouble = GlanceTaker::tr("moved or removed");
        return glance;
    }
    if (file.size() > kLargest_bytes) {
        glance.verdict = GlanceTaker::tr("open it to see");
        return glance;
    }
    const auto capture = loadCapture(path.toStdString());
    if (!capture) {
        glance.trouble = say(capture.error().what);
        return glance;
    }
    const CaptureHeader& header = capture.value().header;
    glance.when = whenSaid(QString::fromStdString(header.started));
    if (header.sheet) glance.machine = sayName(header.sheet->name);
    for (const Mark& mark : capture.value().marks)
        if (const auto* note = mark.as<NoteMark>()) glance.note = QString::fromStdString(note->text);
    Trace trace;
    for (const Reading& reading : capture.value().readings) {
        if (reading.flags.has(Flag::ref)) continue; // a second meter's
        trace.append({reading.time, reading.volts_V});
        if (std::isfinite(reading.volts_V)) glance.high_V = std::max(glance.high_V, reading.volts_V);
    }
    if (trace.size() == 0) {
        glance.verdict = GlanceTaker::tr("no readings");
        glance.empty = true;
        return glance;
    }
    const TraceSnapshot snapshot = trace.snapshot();
    glance.slices = snapshot.extremes(Time{0}, snapshot[snapshot.size() - 1].time + Time{1}, kSlices);
    if (!header.sheet) {
        glance.verdict = GlanceTaker::tr("without a sheet");
        return glance;
    }
    auto setup = examinationSetup(header, {}, capture.value().readings, path.toStdString());
    Examination examination(std::move(*setup));
    pushRows(capture.value(), examination);
    glance.decision = examination.findings().verdict.decision;
    glance.verdict = decisionWords(*glance.decision);
    return glance;
}

GlanceTaker::GlanceTaker(QObject* parent) : QObject(parent) { pool_.setMaxThreadCount(1); }

GlanceTaker::~GlanceTaker() {
    stop_ = true;
    pool_.clear();
    pool_.waitForDone();
}

void GlanceTaker::take(const QStringList& paths) {
    for (const QString& path : paths) {
        if (asked_.contains(path)) continue;
        asked_ << path;
        pool_.start([this, path] {
            if (stop_) return;
            const Glance glance = glanceAt(path);
            QMetaObject::invokeMethod(
                this, [this, glance] { emit taken(glance); }, Qt::QueuedConnection);
        });
    }
}

} // namespace stillwire
