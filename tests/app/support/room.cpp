// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/support/room.hpp"

#include "app/window/leave/ask_view.hpp"
#include "app/window/look/choice_box.hpp"

#include <QAbstractItemView>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QScrollBar>
#include <QTest>

namespace stillwire::test {
namespace {

bool labelIsCut(const QLabel& label) {
    if (label.text().isEmpty()) return false;
    const bool high = label.wordWrap() ? label.heightForWidth(label.width()) > label.height()
                                       : label.sizeHint().height() > label.height();
    return high || (!label.wordWrap() && label.sizeHint().width() > label.width());
}

QList<QRect> places(const QWidget& window) {
    QList<QRect> all;
    for (const QWidget* widget : window.findChildren<QWidget*>()) all << widget->geometry();
    return all;
}

// One layout asks for the next; it is over when nothing moves any more.
void settle(QWidget& window) {
    QList<QRect> before;
    for (int round = 0; round < 20 && before != places(window); ++round) {
        before = places(window);
        QTest::qWait(10);
        window.grab();
    }
}

// What stands over all of a page hides it, and what is hidden cannot overlap.
bool covers(const QWidget& above, const QWidget& parent) {
    return (above.testAttribute(Qt::WA_OpaquePaintEvent) || qobject_cast<const AskView*>(&above)) &&
           above.geometry().contains(parent.rect());
}

bool scrolls(const QWidget& widget) {
    for (const QWidget* at = widget.parentWidget(); at != nullptr; at = at->parentWidget())
        if (qobject_cast<const QAbstractScrollArea*>(at)) return true;
    return false;
}

} // namespace

QStringList cutOff(QWidget& window, const Look& look) {
    settle(window);
    QStringList cut;
    for (QWidget* widget : window.findChildren<QWidget*>()) {
        if (!widget->isVisible()) continue;
        for (const QString& text : widget->property("cutOff").toStringList()) cut << text;
        if (const auto* label = qobject_cast<QLabel*>(widget))
            if (labelIsCut(*label)) cut << label->text();
        if (const auto* button = qobject_cast<QPushButton*>(widget))
            if (button->width() < button->sizeHint().width() || button->height() < button->sizeHint().height())
                cut << button->text();
        const auto* box = qobject_cast<QComboBox*>(widget);
        if (box && !qobject_cast<ChoiceBox*>(widget)) // that one notes what it cut
            if (QFontMetrics(box->font()).horizontalAdvance(box->currentText()) > box->width() - look.ipx(44))
                cut << box->currentText();
        if (!scrolls(*widget) && !widget->parentWidget()->rect().contains(widget->geometry()))
            cut << QStringLiteral("outside: ") + widget->metaObject()->className();
    }
    return cut;
}

QStringList overlaps(QWidget& window) {
    QStringList found;
    QList<QWidget*> all = window.findChildren<QWidget*>();
    all << &window;
    for (const QWidget* parent : all) {
        if (!parent->isVisible() || qobject_cast<const QAbstractScrollArea*>(parent)) continue;
        QList<QWidget*> visible;
        for (QWidget* child : parent->findChildren<QWidget*>(Qt::FindDirectChildrenOnly))
            if (child->isVisible() && !child->isWindow()) { // children come from the lowest to the highest
                if (covers(*child, *parent)) visible.clear();
                visible << child;
            }
        for (qsizetype i = 0; i < visible.size(); ++i)
            for (qsizetype j = i + 1; j < visible.size(); ++j)
                if (visible[i]->geometry().intersects(visible[j]->geometry()))
                    found << QStringLiteral("%1 over %2 in %3")
                                 .arg(visible[i]->metaObject()->className(), visible[j]->metaObject()->className(),
                                      parent->metaObject()->className());
    }
    return found;
}

QString LongerWords::translate(const char* context, const char* sourceText, const char*, int) const {
    const QString text = QString::fromUtf8(sourceText);
    const QLatin1String of(context);
    const bool ours = of.startsWith(QLatin1String("stillwire::")) || of.endsWith(QLatin1String("Text")) ||
                      of == QLatin1String("core") || of == QLatin1String("names") || of == QLatin1String("Names");
    // File filters and keys are no words.
    if (!ours || text.size() < 3 || text.contains(QLatin1String("(*"))) return text;
    QString more;
    while (more.size() < (text.size() + 2) / 3) more += more.size() % 6 == 5 ? QLatin1Char(' ') : QLatin1Char('o');
    const bool stops = text.endsWith(QLatin1Char('.'));
    return (stops ? text.chopped(1) : text) + (more.size() > 3 ? QStringLiteral(" ") : QString()) + more +
           (stops ? QStringLiteral(".") : QString());
}

} // namespace stillwire::test
