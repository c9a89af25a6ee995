// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/start/find_meter_box.hpp"

#include "app/window/look/progress_line.hpp"
#include "app/window/look/text_label.hpp"
#include "app/window/start/found_delegate.hpp"
#include "app/window/words.hpp"

#include <algorithm>

#include <QHBoxLayout>
#include <QListWidget>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

namespace stillwire {

namespace {

constexpr std::size_t kRowsShown = 4; // of bytes nobody can read

// Everything to say about a port, a line each.
QString textOf(const PortFinding& finding) {
    QString text = QString::fromStdString(finding.port);
    for (const Sentence& sentence : findingSays(finding)) text += QLatin1Char('\n') + say(sentence);
    if (!finding.matches.empty()) return text;
    const std::span<const std::uint8_t> bytes = finding.heard.bytes;
    for (std::size_t at = 0; at < std::min(bytes.size(), kRowsShown * kBytesInARow); at += kBytesInARow)
        text += QLatin1Char('\n') + QChar(FoundDelegate::kBytes) +
                QString::fromStdString(hexRow(bytes.subspan(at, std::min(kBytesInARow, bytes.size() - at))));
    return text;
}

} // namespace

FindMeterBox::FindMeterBox(const Look& look, Doors& doors, QWidget* parent)
    : QDialog(parent), look_(look), doors_(doors) {
    setWindowTitle(tr("Which meter is it?"));
    setAccessibleName(windowTitle());
    title_ = new TextLabel(look, TextSize::word, true, Role::ink, this);
    title_->say(tr("Which meter is it?"));
    says_ = new TextLabel(look, TextSize::text, false, Role::ink, this);
    says_->setAccessibleName(tr("What the search is doing"));
    line_ = new ProgressLine(look, this);
    line_->setAccessibleName(tr("How far the search is"));
    QSizePolicy kept = line_->sizePolicy();
    kept.setRetainSizeWhenHidden(true); // what is found does not jump
    line_->setSizePolicy(kept);
    list_ = new QListWidget(this);
    list_->setAccessibleName(tr("What was found"));
    list_->setItemDelegate(new FoundDelegate(look, list_));
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    list_->setResizeMode(QListView::Adjust);
    use_ = new QPushButton(tr("Use this meter"), this);
    again_ = new QPushButton(tr("Look again"), this);
    close_ = new QPushButton(tr("Stop"), this);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(use_);
    buttons->addWidget(again_);
    buttons->addStretch(1);
    buttons->addWidget(close_);
    auto* column = new QVBoxLayout(this);
    column->addWidget(title_);
    column->addWidget(says_);
    column->addWidget(line_);
    column->addWidget(list_, 1);
    column->addLayout(buttons);
    for (QPushButton* button : {use_, again_, close_}) button->setAccessibleName(button->text());
    connect(use_, &QPushButton::clicked, this, &FindMeterBox::accept);
    connect(again_, &QPushButton::clicked, this, &FindMeterBox::search);
    connect(close_, &QPushButton::clicked, this, &FindMeterBox::reject);
    connect(list_, &QListWidget::itemActivated, this, &FindMeterBox::accept);
    connect(list_, &QListWidget::currentRowChanged, this, [this] { use_->setEnabled(current() != nullptr); });
    connect(&look, &Look::changed, this, &FindMeterBox::restyle);
    restyle();
}

void FindMeterBox::search() {
    halt();
    found_.clear();
    list_->clear();
    running_ = true;
    use_->setEnabled(false);
    again_->setEnabled(false);
    nameClose(tr("Stop"));
    close_->setFocus();
    says_->say(tr("Switch the meter on and let it send."));
    line_->show(0);
    line_->setVisible(true);
    search_ = std::jthread([this](const std::stop_token& stop) {
        // The widgets are the other thread's; what is posted to a box that is gone is dropped.
        auto found = doors_.findMeters(
            [this](const FindProgress& p) {
                QMetaObject::invokeMethod(
                    this, [this, p] { progress(p); }, Qt::QueuedConnection);
            },
            stop);
        QMetaObject::invokeMethod(
            this, [this, found = std::move(found)] { finished(found); }, Qt::QueuedConnection);
    });
}

void FindMeterBox::nameClose(const QString& words) {
    close_->setText(words);
    close_->setAccessibleName(words);
}

void FindMeterBox::halt() {
    if (!search_.joinable()) return;
    search_.request_stop();
    search_.join();
}

void FindMeterBox::progress(const FindProgress& progress) {
    if (!running_) return;
    says_->say(say(progressSays(progress)));
    line_->show(progress.of > 0 ? static_cast<double>(progress.step) / progress.of : 0);
}

void FindMeterBox::finished(std::vector<PortFinding> found) {
    if (!running_) return;
    running_ = false;
    found_ = std::move(found);
    for (const PortFinding& finding : found_) list_->addItem(textOf(finding));
    const auto best = std::find_if(found_.begin(), found_.end(),
                                   [](const PortFinding& finding) { return !finding.matches.empty(); });
    line_->setVisible(false); // over: a full line would outshine what was found
    nameClose(tr("Close"));
    again_->setEnabled(true);
    if (!found_.empty()) list_->setCurrentRow(best == found_.end() ? 0 : static_cast<int>(best - found_.begin()));
    use_->setEnabled(current() != nullptr);
    says_->say(found_.empty()         ? tr("No port was found. Plug the meter's lead in and look again.")
               : best == found_.end() ? tr("No meter was found.")
               : current() != nullptr ? tr("Found. Enter takes it.")
                                      : tr("Found, but not as it is described: see what to change."));
    if (current() != nullptr)
        list_->setFocus();
    else
        again_->setFocus();
}

// The chosen port, if its best match can be used as it is described.
const PortFinding* FindMeterBox::current() const {
    const int row = list_->currentRow();
    if (running_ || row < 0 || row >= static_cast<int>(found_.size())) return nullptr;
    const PortFinding& finding = found_[static_cast<std::size_t>(row)];
    return !finding.matches.empty() && finding.matches.front().asDescribed ? &finding : nullptr;
}

void FindMeterBox::accept() {
    const PortFinding* finding = current();
    if (finding == nullptr) return;
    emit chosen(QString::fromStdString(finding->port), QString::fromStdString(finding->matches.front().name));
    QDialog::accept();
}

void FindMeterBox::reject() {
    if (running_ && search_.joinable()) {
        search_.request_stop(); // what was found so far is shown
        return;
    }
    QDialog::reject();
}

// The page behind is as dark as the box, and not every desktop frames a window.
void FindMeterBox::paintEvent(QPaintEvent* event) {
    QDialog::paintEvent(event);
    QPainter painter(this);
    painter.setPen(QPen(look_(Role::strongLine), look_.px(1.5)));
    const double half = look_.px(0.75);
    painter.drawRect(QRectF(rect()).adjusted(half, half, -half, -half));
}

void FindMeterBox::restyle() {
    setPalette(look_.widgetPalette()); // a window of its own takes none from its parent
    const QSize most = parentWidget() ? parentWidget()->window()->size() * 0.96 : QSize(10000, 10000);
    resize(QSize(look_.ipx(800), look_.ipx(600)).boundedTo(most));
    layout()->setContentsMargins(look_.ipx(28), look_.ipx(24), look_.ipx(28), look_.ipx(20));
    layout()->setSpacing(look_.ipx(12));
    for (QPushButton* button : {use_, again_, close_}) button->setFont(look_.font(TextSize::text));
    list_->doItemsLayout();
}

} // namespace stillwire
