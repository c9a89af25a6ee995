// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/verdict/verdict_details.hpp"

#include "app/window/look/paint.hpp"
#include "app/window/words.hpp"

#include <algorithm>

#include <QAbstractTextDocumentLayout>
#include <QLabel>
#include <QScrollBar>
#include <QTextBlock>
#include <QTextDocument>

namespace stillwire {
namespace {

QString section(const QString& title, const QStringList& lines, int size_px) {
    if (lines.isEmpty()) return {};
    QString html = QStringLiteral("<p style='margin:6px 0 0 0'><b>%1</b></p>").arg(title.toHtmlEscaped());
    for (const QString& line : lines)
        html += QStringLiteral("<p style='margin:0 0 3px 0; font-size:%2px'>%1</p>")
                    .arg(keepUnits(line).toHtmlEscaped())
                    .arg(size_px);
    return html;
}

QStringList said(const std::vector<Sentence>& sentences) {
    QStringList lines;
    for (const Sentence& sentence : sentences) {
        lines << say(sentence);
        if (!lines.back().isEmpty())
            lines.back()[0] = lines.back()[0].toUpper(); // it may begin with a position's name
    }
    return lines;
}

} // namespace

VerdictDetails::VerdictDetails(const Look& look, QWidget* parent) : QScrollArea(parent), look_(look) {
    setFrameShape(QFrame::NoFrame);
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFocusPolicy(Qt::StrongFocus); // so that the keyboard can scroll it
    setAccessibleName(tr("What stands behind the verdict"));
    text_ = new QLabel;
    text_->setTextFormat(Qt::RichText);
    text_->setWordWrap(true);
    text_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    setWidget(text_);
    connect(&look, &Look::changed, this, &VerdictDetails::restyle);
    restyle();
}

// Higher than its text it would push what stands below away; lower, it ends between two lines and not in one.
void VerdictDetails::keepToTheText() {
    // As if the scroll bar stood there, whether it does or not: else its coming could send it away again.
    const int width = contentsRect().width() - verticalScrollBar()->sizeHint().width();
    const int whole = text_->heightForWidth(width);
    setMaximumHeight(whole + look_.ipx(6) + height() - contentsRect().height());
    const double room = contentsRect().height();
    if (whole <= room) return setViewportMargins(0, 0, 0, 0);
    QTextDocument page; // laid out as the label lays it out
    page.setDefaultFont(text_->font());
    page.setDocumentMargin(0);
    page.setHtml(text_->text());
    page.setTextWidth(width - text_->contentsMargins().right());
    double fits = 0;
    for (QTextBlock block = page.begin(); block.isValid(); block = block.next()) {
        const QTextBlock::iterator first = block.begin();
        if (first.atEnd() || first.fragment().charFormat().fontWeight() >= QFont::Bold) continue; // no lone heading
        const double top = page.documentLayout()->blockBoundingRect(block).top();
        for (int i = 0; i < block.layout()->lineCount(); ++i) {
            const double below = top + block.layout()->lineAt(i).rect().bottom();
            if (below <= room) fits = std::max(fits, below);
        }
    }
    setViewportMargins(0, 0, 0, fits > 0 ? static_cast<int>(room - fits) : 0);
}

void VerdictDetails::resizeEvent(QResizeEvent* event) {
    QScrollArea::resizeEvent(event);
    keepToTheText();
}

void VerdictDetails::restyle() {
    text_->setFont(look_.font(TextSize::text));
    text_->setPalette(look_.widgetPalette());
    text_->setContentsMargins(0, 0, look_.ipx(8), 0); // clear of the scroll bar
}

void VerdictDetails::show(const Findings& findings) {
    const Verdict& verdict = findings.verdict;
    QStringList causes;
    for (std::size_t i = 1; i < verdict.causes.size(); ++i) { // the first is the verdict's own
        QString line = decisionWords(verdict.causes[i].decision) + QStringLiteral(": ") + say(verdict.causes[i].says);
        if (!verdict.causes[i].nextTest.empty()) line += QLatin1Char(' ') + say(verdict.causes[i].nextTest);
        causes << line;
    }
    QStringList why = said(wordsOf(verdict.reasons));
    if (!why.isEmpty()) why.removeFirst(); // it stands beside the decision
    // What to do is the largest of them: it is what the page is for.
    const int large = look_.font(TextSize::title).pixelSize(), text = look_.font(TextSize::text).pixelSize();
    const QString html =
        section(tr("Next"),
                verdict.next.empty() ? QStringList{tr("Nothing more to do.")} : said(wordsOf(verdict.next)), large) +
        section(tr("Why"), why, text) + section(tr("It could also be"), causes, text) +
        section(tr("Not tested"), said(wordsOf(verdict.notTested)), text) +
        section(tr("Assumed"), said(findings.assumed), text);
    if (text_->text() == html) return;
    text_->setText(html);
    keepToTheText();
    setAccessibleDescription(said(wordsOf(verdict.reasons)).join(QLatin1Char(' ')));
}

} // namespace stillwire
