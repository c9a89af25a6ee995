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
    deeds_.clear();
    setTextFormat(Qt::PlainText);
    if (text != this->text()) setText(text);
    setVisible(!text.isEmpty());
}

void TextLabel::sayInTurn(const QStringList& deeds) {
    deeds_ = deeds;
    setTextFormat(Qt::RichText);
    setInTurn();
    setVisible(true);
}

void TextLabel::setInTurn() {
    QString html = QStringLiteral("<table cellspacing='0' cellpadding='0'>");
    for (qsizetype i = 0; i < deeds_.size(); ++i)
        html +=
            QStringLiteral("<tr><td style='padding:0 %1px %2px 0'>%3</td><td style='padding:0 0 %2px 0'>%4</td></tr>")
                .arg(look_.ipx(8))
                .arg(look_.ipx(4))
                .arg(i + 1)
                .arg(deeds_[i].toHtmlEscaped());
    html += QStringLiteral("</table>");
    if (html != text()) setText(html);
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
    if (!deeds_.isEmpty()) setInTurn(); // its gaps grow with the type
}

} // namespace stillwire
