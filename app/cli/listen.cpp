// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/byte_rows.hpp"
#include "app/cli/commands.hpp"
#include "app/cli/stop_key.hpp"
#include "app/shared/resources.hpp"
#include "meters/find/likeness.hpp"
#include "meters/link/serial_link.hpp"
#include "meters/session/meter_line.hpp"

#include <algorithm>
#include <iostream>

namespace stillwire {

namespace {

constexpr int kLook_ms = 100;
constexpr std::size_t kBlock = 4096;

void tellSum(ByteRows& rows, std::size_t bytes) {
    std::cout << rows.finish() << "\n"
              << bytes << " bytes, " << rows.readings() << " readings, " << rows.droppedBytes()
              << " bytes dropped. It looks like " << likenessSays(likenessOf(rows.heard())).english() << ".\n";
}

// Prints what comes; the line decodes for itself too, for its polls.
class Listening final : public Input::Listener {
public:
    explicit Listening(ByteRows& rows) : rows_(rows) {}
    void inputBytes(Input&, std::span<const std::uint8_t> bytes, Time at) override {
        count_ += bytes.size();
        newest_ = at;
        std::cout << rows_.take(bytes, at);
    }
    void inputReading(Input&, const Reading&) override {}
    void inputMark(Input&, Mark) override {}
    void inputLost(Input&, Time) override {}
    void inputChanged(bool) override {}

    void tick(const MeterLine& line) {
        if (line.now() - newest_ > std::chrono::milliseconds(kLook_ms)) std::cout << rows_.finish();
        const std::string says = line.says(line.now()).english();
        if (says != said_ && !says.empty()) std::cout << "  " << says << "\n";
        said_ = says;
        std::cout.flush();
    }
    [[nodiscard]] std::size_t count() const { return count_; }

private:
    ByteRows& rows_;
    std::string said_;
    Time newest_{0};
    std::size_t count_ = 0;
};

Status listenOnPort(const Options& o, const MeterDescription& meter, ByteRows& rows) {
    auto link = makeSerialLink(o.port, meter.link);
    if (const Status opened = link->open(); !opened) return opened.error();
    MeterLine line({std::move(link), meter});
    line.begin(line.clock());
    std::cout << "On " << line.name() << " at " << meter.link.baud << " " << framingText(meter.link)
              << ". The key q ends it.\n";
    StopKey key;
    Listening listening(rows);
    line.greet();
    const auto wait_ms = [&line] {
        return static_cast<int>(line.wait(std::chrono::milliseconds(kLook_ms)).count() / 1000 + 1);
    };
    while (!key.pressed(wait_ms(), line.descriptor())) {
        line.serve(listening);
        listening.tick(line);
        if (o.duration_s > 0 && toSeconds(line.now()) >= o.duration_s) break;
    }
    line.leave();
    tellSum(rows, listening.count());
    return Done{};
}

Status listenToFile(const Options& o, ByteRows& rows) {
    auto text = readText(o.file);
    if (!text) return text.error();
    const auto* begin = reinterpret_cast<const std::uint8_t*>(text->data());
    for (std::size_t at = 0; at < text->size(); at += kBlock)
        std::cout << rows.take({begin + at, std::min(kBlock, text->size() - at)}, Time(0));
    tellSum(rows, text->size());
    return Done{};
}

} // namespace

Status runListen(const Options& o) {
    if (o.port.empty() && o.file.empty())
        return Error{.kind = Error::Kind::wrongUsage,
                     .where = "listen",
                     .what = "there is nothing to listen to",
                     .mend = "name a port with --port (`stillwire ports` lists them), or a file of bytes"};
    MeterDescription meter;
    if (!o.meter.empty()) {
        auto loaded = loadDescription(o.meter);
        if (!loaded) return loaded.error();
        meter = std::move(*loaded);
    }
    // Without a description there is nothing to decode by: the bytes alone.
    ByteRows rows(o.meter.empty() ? nullptr : makeDecoder(meter));
    return o.port.empty() ? listenToFile(o, rows) : listenOnPort(o, meter, rows);
}

} // namespace stillwire
