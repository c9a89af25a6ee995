// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/look/text_label.hpp"

namespace stillwire {

TextLabel::TextLabel(const Look& look, TextSize size, bool bold, Role colour, QWidget* parent)
    : QLabel(parent), look_(look), size_(size), bold_(bold), colour_(colour) {
    setTextFormat(Qt::PlainText);
    setWordWrap(true);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    connect(&look, &Look::changed, this, &TextLabel::restyle);
    restyle();
}

void TextLabel::say(const QString& text) {
    setTextFormat(Qt::PlainText);
    if (text != this->text()) setText(text);
    setVisible(!text.isEmpty());
}

void TextLabel::sayInTurn(const QStringList& deeds) {
    QString html = QStringLiteral("<table cellspacing='0' cellpadding='0'>");
    for (qsizetype i = 0; i < deeds.size(); ++i)
        html +=
            QStringLiteral("<tr><td style='padding:0 8px 4px 0'>%1</td><td style='padding:0 0 4px 0'>%2</td></tr>")
                .arg(i + 1)
                .arg(deeds[i].toHtmlEscaped());
    html += QStringLiteral("</table>");
    setTextFormat(Qt::RichText);
    if (html != text()) setText(html);
    setVisible(true);
}

void TextLabel::setSize(TextSize size) {
    if (size == size_) return;
    size_ = size;
    restyle();
}

// A label that was hidden while the theme changed is given the old colours back when its style is made up for it.
void TextLabel::showEvent(QShowEvent* event) {
    restyle();
    QLabel::showEvent(event);
}

void TextLabel::restyle() {
    setFont(look_.font(size_, bold_));
    QPalette colours = look_.widgetPalette();
    colours.setColor(QPalette::WindowText, look_(colour_));
    setPalette(colours);
}

} // namespace stillwire
