// SPDX-License-Identifier: GPL-3.0-or-later
#include "meters/link/serial_link.hpp"

#include "meters/link/clock.hpp"
#include "meters/link/port_lock.hpp"

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <cstdio>
#include <cstring>
#include <poll.h>
#include <unistd.h>

#include <libserialport.h>

namespace stillwire {

namespace {

std::string textOf(const char* text) { return text != nullptr ? text : ""; }

std::optional<UsbIdentity> usbOf(sp_port* port) {
    UsbIdentity out;
    if (sp_get_port_transport(port) != SP_TRANSPORT_USB ||
        sp_get_port_usb_vid_pid(port, &out.vendor, &out.product) != SP_OK)
        return std::nullopt;
    out.serial = textOf(sp_get_port_usb_serial(port));
    return out;
}

sp_parity parityOf(Parity parity) {
    return parity == Parity::odd ? SP_PARITY_ODD : parity == Parity::even ? SP_PARITY_EVEN : SP_PARITY_NONE;
}

sp_flowcontrol flowOf(FlowControl flow) {
    return flow == FlowControl::hardware   ? SP_FLOWCONTROL_RTSCTS
           : flow == FlowControl::software ? SP_FLOWCONTROL_XONXOFF
                                           : SP_FLOWCONTROL_NONE;
}

class SerialLink final : public Link {
public:
    SerialLink(std::string port, LinkSettings settings)
        : name_(std::move(port)), settings_(std::move(settings)), usb_(parseUsbIdentity(name_)) {}
    ~SerialLink() override { close(); }
    SerialLink(const SerialLink&) = delete;
    SerialLink& operator=(const SerialLink&) = delete;

    Status open() override {
        close();
        if (usb_ && !findAgain()) return portError(name_, ENODEV);
        if (sp_get_port_by_name(name_.c_str(), &port_) != SP_OK) return fail(portError(name_, ENOENT));
        if (const std::string holder = lockFileHolder(name_); !holder.empty())
            return fail(portError(name_, EBUSY, holder));
        if (sp_open(port_, SP_MODE_READ_WRITE) != SP_OK) return fail(portError(name_, sp_last_error_code()));
        open_ = true;
        if (sp_get_port_handle(port_, &descriptor_) != SP_OK) return fail(portError(name_, EIO));
        if (!claimPort(descriptor_)) return fail(portError(name_, EBUSY));
        if (const Sentence refused = applySettings(); !refused.empty())
            return fail(
                Error{.where = name_, .what = refused, .mend = "correct [link] there, or use another adapter"});
        sp_flush(port_, SP_BUF_INPUT); // what came before is torn and has no time
        usb_ = usbOf(port_);
        seen_ = true;
        return Done{};
    }

    int descriptor() const override { return descriptor_; }
    Time now() const override { return bootTime(); }
    Time nextDue() const override { return Time(-1); }
    std::string name() const override { return name_; }

    LinkEvent read(std::span<std::uint8_t> buffer) override {
        if (descriptor_ < 0) return {.kind = LinkEvent::Kind::lost, .arrived = now()};
        pollfd waiting{descriptor_, POLLIN, 0};
        // Not ready means no data, and nothing else: a read would return 0 both then and after a loss.
        if (poll(&waiting, 1, 0) <= 0) return {.kind = LinkEvent::Kind::nothing, .arrived = now()};
        const int count = sp_nonblocking_read(port_, buffer.data(), buffer.size());
        const Time arrived = now();
        if (count > 0) return {LinkEvent::Kind::bytes, static_cast<std::size_t>(count), arrived};
        close(); // held any longer, the old descriptor would keep the adapter's name taken
        return {.kind = LinkEvent::Kind::lost, .arrived = arrived};
    }

    Status write(std::span<const std::uint8_t> bytes) override {
        const int written = descriptor_ < 0 ? -1 : sp_nonblocking_write(port_, bytes.data(), bytes.size());
        if (written == static_cast<int>(bytes.size())) return Done{};
        return Error{
            .where = name_, .what = "the meter does not take commands", .mend = "check the cable and flow control"};
    }

private:
    Error fail(Error error) {
        close();
        return error;
    }

    void close() {
        if (open_) sp_close(port_);
        if (port_ != nullptr) sp_free_port(port_);
        port_ = nullptr;
        open_ = false;
        descriptor_ = -1;
    }

    // False: it is not there. Another adapter may have its name now, and must not be taken for it.
    bool findAgain() {
        const auto found = portOf(*usb_, listPorts(), name_, !seen_ && usb_->serial.empty());
        if (found) name_ = *found;
        return found.has_value();
    }

    // That the port refuses one of them; empty: none.
    Sentence applySettings() {
        if (sp_set_flowcontrol(port_, flowOf(settings_.flow)) != SP_OK)
            return "the port refuses the flow control of the meter description";
        if (sp_set_baudrate(port_, settings_.baud) != SP_OK)
            return "the port refuses the baud rate of the meter description";
        if (sp_set_bits(port_, settings_.bits) != SP_OK)
            return "the port refuses the data bits of the meter description";
        if (sp_set_parity(port_, parityOf(settings_.parity)) != SP_OK)
            return "the port refuses the parity of the meter description";
        if (sp_set_stopbits(port_, settings_.stopBits) != SP_OK)
            return "the port refuses the stop bits of the meter description";
        if (sp_set_dtr(port_, settings_.dtr ? SP_DTR_ON : SP_DTR_OFF) != SP_OK)
            return "the port refuses the DTR level of the meter description";
        // With hardware flow control RTS is the driver's.
        if (settings_.flow != FlowControl::hardware &&
            sp_set_rts(port_, settings_.rts ? SP_RTS_ON : SP_RTS_OFF) != SP_OK)
            return "the port refuses the RTS level of the meter description";
        return {};
    }

    std::string name_;
    LinkSettings settings_;
    std::optional<UsbIdentity> usb_; // of the adapter that was opened, or is to be
    bool seen_ = false;              // it was opened once
    sp_port* port_ = nullptr;
    bool open_ = false;
    int descriptor_ = -1;
};

} // namespace

std::string UsbIdentity::text() const {
    char numbers[16];
    std::snprintf(numbers, sizeof numbers, "%04x:%04x", static_cast<unsigned>(vendor) & 0xFFFF,
                  static_cast<unsigned>(product) & 0xFFFF);
    return numbers + (serial.empty() ? "" : ":" + serial);
}

std::optional<UsbIdentity> parseUsbIdentity(std::string_view text) {
    constexpr std::size_t kDigits = 4;
    const auto number = [&text](std::size_t at) -> std::optional<int> {
        int value = 0;
        if (text.size() < at + kDigits) return std::nullopt;
        const auto [end, fault] = std::from_chars(text.data() + at, text.data() + at + kDigits, value, 16);
        if (fault != std::errc{} || end != text.data() + at + kDigits || text[at] == '-') return std::nullopt;
        return value;
    };
    const auto vendor = number(0), product = number(kDigits + 1);
    constexpr std::size_t kBoth = 2 * kDigits + 1;
    if (!vendor || !product || text[kDigits] != ':') return std::nullopt;
    if (text.size() == kBoth) return UsbIdentity{*vendor, *product, {}};
    if (text[kBoth] != ':' || text.size() == kBoth + 1) return std::nullopt;
    return UsbIdentity{*vendor, *product, std::string(text.substr(kBoth + 1))};
}

std::optional<std::string> portOf(const UsbIdentity& identity, const std::vector<PortInfo>& ports,
                                  const std::string& preferred, bool anySerial) {
    const PortInfo* found = nullptr;
    for (const PortInfo& port : ports) {
        if (!port.usb || port.usb->vendor != identity.vendor || port.usb->product != identity.product) continue;
        if (!anySerial && port.usb->serial != identity.serial) continue;
        if (found == nullptr || port.name == preferred) found = &port;
    }
    if (found == nullptr) return std::nullopt;
    return found->name;
}

std::vector<PortInfo> listPorts() {
    std::vector<PortInfo> out;
    sp_port** ports = nullptr;
    if (sp_list_ports(&ports) != SP_OK) return out;
    for (sp_port** port = ports; *port != nullptr; ++port)
        out.push_back({textOf(sp_get_port_name(*port)), textOf(sp_get_port_description(*port)), usbOf(*port)});
    sp_free_port_list(ports);
    std::sort(out.begin(), out.end(), [](const PortInfo& a, const PortInfo& b) { return a.name < b.name; });
    return out;
}

std::unique_ptr<Link> makeSerialLink(std::string port, LinkSettings settings) {
    return std::make_unique<SerialLink>(std::move(port), std::move(settings));
}

Error portError(const std::string& port, int cause, const std::string& busyWith) {
    switch (cause) {
    case ENOENT:
    case ENODEV:
    case ENXIO:
        return {.where = port,
                .what = "there is no such port",
                .mend = "plug the adapter in; \"stillwire ports\" lists what is there"};
    case EBUSY:
        return {.where = port,
                .what = busyWith.empty() ? Sentence{"another program holds the port"}
                                         : Sentence{"another program holds the port (%1)", {busyWith}},
                .mend = {"close it; \"sudo fuser -v %1\" names it", {port}}};
    case EACCES:
    case EPERM:
        return {.where = port,
                .what = "you may not open the port",
                .mend = "add yourself to the dialout group: sudo usermod -aG dialout $USER, then log in again"};
    default:
        return {.where = port,
                .what = {"the port does not open: %1", {std::strerror(cause)}},
                .mend = "unplug the adapter, plug it in again and retry"};
    }
}

} // namespace stillwire
