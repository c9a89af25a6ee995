// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/look/look.hpp"

#include "app/window/look/typeface.hpp"

#include <algorithm>
#include <cmath>

#include <QFontMetricsF>

namespace stillwire {
namespace {

double designSize(TextSize size) {
    switch (size) {
    case TextSize::small: return 13.5;
    case TextSize::text: return 16;
    case TextSize::title: return 22;
    case TextSize::word: return 32;
    case TextSize::state: return 44;
    case TextSize::number: return 172;
    }
    return 16;
}

} // namespace

Look::Look(QObject* parent) : QObject(parent), family_(typefaceFamily()) {}

void Look::setNight(bool night) {
    if (night == night_) return;
    night_ = night;
    palette_ = night ? Palette::night() : Palette::day();
    emit changed();
}

void Look::fitTo(QSize window) {
    window_ = window;
    const double larger = type_ == Type::usual ? 1 : type_ == Type::large ? 1.15 : 1.3;
    const double fit = std::max(1.0, std::min(window.width() / kWidth, window.height() / kHeight)) * larger;
    const double most = std::min(window.width() / kLeastWidth, window.height() / kLeastHeight);
    // In sixteenths, so that dragging a window edge does not restyle it at every pixel.
    const double unit = std::clamp(std::floor(std::min(fit, most) * 16.0) / 16.0, 1.0, 4.0);
    if (std::abs(unit - unit_) < 1e-9) return;
    unit_ = unit;
    emit changed();
}

void Look::setType(Type type) {
    if (type == type_) return;
    type_ = type;
    fitTo(window_);
}

void Look::setCalm(bool calm) {
    if (calm == calm_) return;
    calm_ = calm;
    emit changed();
}

QFont Look::font(TextSize size, bool bold) const {
    QFont font(family_);
    font.setPixelSize(std::max(9, qRound(designSize(size) * unit_)));
    font.setBold(bold);
    return font;
}

QFont Look::digits(double height) const {
    QFont font = this->font(TextSize::number, true);
    font.setPixelSize(1000);
    const double share = QFontMetricsF(font).tightBoundingRect(QStringLiteral("1")).height() / 1000.0;
    font.setPixelSize(std::max(9, static_cast<int>(std::ceil(height / share))));
    return font;
}

QPalette Look::widgetPalette() const {
    const Palette& p = palette_;
    QPalette q;
    q.setColor(QPalette::Window, p[Role::paper]);
    q.setColor(QPalette::WindowText, p[Role::ink]);
    q.setColor(QPalette::Base, p[Role::plot]);
    q.setColor(QPalette::AlternateBase, p[Role::page]);
    q.setColor(QPalette::Text, p[Role::ink]);
    q.setColor(QPalette::Button, p[Role::plot]);
    q.setColor(QPalette::ButtonText, p[Role::ink]);
    q.setColor(QPalette::Highlight, p[Role::trace]);
    q.setColor(QPalette::HighlightedText, p[Role::plot]);
    q.setColor(QPalette::PlaceholderText, p[Role::quietText]);
    q.setColor(QPalette::ToolTipBase, p[Role::plot]);
    q.setColor(QPalette::ToolTipText, p[Role::ink]);
    for (QPalette::ColorRole role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        q.setColor(QPalette::Disabled, role, p[Role::quietText]);
    return q;
}

QString Look::styleSheet() const {
    // Only what a palette cannot say: frames, rings and rounding of the few widgets that take input.
    static const QString pattern = QStringLiteral(
        "QPushButton { border: %5px solid @strong; border-radius: %1px; padding: %2px %3px; "
        "background: @plot; color: @ink; }"
        "QPushButton:hover { background: @paper; }"
        "QPushButton:focus { border: %4px solid @focus; padding: %6px %7px; outline: none; }"
        "QPushButton:pressed, QPushButton:checked { background: @trace; color: @plot; }"
        "QPushButton:disabled { border-style: dashed; color: @quiet; }"
        "QPushButton[flat=\"true\"] { border-color: transparent; background: transparent; }"
        "QPushButton[flat=\"true\"]:focus { border-color: @focus; }"
        "QPushButton[flat=\"true\"] { padding: %4px %6px; border-width: %4px; }"
        "QPushButton[flat=\"true\"]:focus { padding: %4px %6px; }"
        "QPushButton[flat=\"true\"]:pressed { color: @ink; background: @plot; }"
        "QComboBox { border: %5px solid @strong; border-radius: %1px; padding: %2px %3px; background: "
        "@plot; color: @ink; }"
        "QComboBox { combobox-popup: 0; }" // a list below it, and not over it with arrows for rows
        "QComboBox:focus { border: %4px solid @focus; padding: %6px %7px; }"
        "QComboBox::drop-down { border: none; width: %8px; }"
        "QComboBox::down-arrow { image: url(:/icons/@arrow.svg); width: %3px; height: %3px; }"
        "QComboBox QAbstractItemView { background: @plot; color: @ink; border: %4px solid @strong; "
        "border-radius: 0; selection-background-color: @trace; selection-color: @plot; outline: none; }"
        "QScrollArea, QScrollArea > QWidget > QWidget { background: transparent; }"
        "QScrollArea { border: %4px solid transparent; }"
        "QScrollArea:focus { border: %4px solid @focus; border-radius: %1px; }"
        "QScrollBar { background: transparent; border: none; margin: 0; }"
        "QScrollBar:horizontal { height: %2px; } QScrollBar:vertical { width: %2px; }"
        "QScrollBar::handle { background: @strong; border-radius: %5px; }"
        "QScrollBar::handle:horizontal { min-width: %8px; } "
        "QScrollBar::handle:vertical { min-height: %8px; }"
        "QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; border: none; }"
        "QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }"
        "QListView { background: transparent; border: %4px solid transparent; outline: none; }"
        "QListView:focus { border: %4px solid @focus; border-radius: %1px; }");
    const int rim = std::max(1, ipx(1)), ring = this->ring(), pad = ipx(7), side = ipx(12);
    QString sheet = pattern.arg(ipx(7))
                        .arg(pad)
                        .arg(side)
                        .arg(ring)
                        .arg(rim)
                        .arg(pad - ring + rim)
                        .arg(side - ring + rim)
                        .arg(ipx(28));
    const std::pair<const char*, Role> names[] = {
        {"@strong", Role::strongLine}, {"@plot", Role::plot},   {"@ink", Role::ink},        {"@paper", Role::paper},
        {"@focus", Role::focus},       {"@trace", Role::trace}, {"@quiet", Role::quietText}};
    sheet.replace(QStringLiteral("@arrow"), night_ ? QStringLiteral("down-night") : QStringLiteral("down-day"));
    for (const auto& [name, role] : names) sheet.replace(QLatin1String(name), palette_[role].name());
    return sheet;
}

} // namespace stillwire
