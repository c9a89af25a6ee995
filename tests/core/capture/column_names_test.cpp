// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/capture/column_names.hpp"

#include <gtest/gtest.h>

namespace stillwire {

TEST(ColumnNames, AreReadInEveryLanguageThatIsKnown) {
    for (const char* name : {"Time", "Zeitstempel", "Hora", "Horodatage", "Tijd", "Tid", "CZAS", "Elapsed Time (s)"})
        EXPECT_TRUE(readColumnName(name).has(Says::time)) << name;
    for (const char* name : {"Voltage", "Tensi\xC3\xB3n", "TENSI\xC3\x93N", "Sp\xC3\xA4nning",
                             "Napi\xC4\x99"
                             "cie",
                             "U1", "Tens\xC3\xA3o"})
        EXPECT_TRUE(readColumnName(name).has(Says::volts)) << name;
    for (const char* name : {"Max (V)", "AC Voltage", "Setpoint", "Sollwert (V)", "Battery (V)", "Range"})
        EXPECT_TRUE(readColumnName(name).has(Says::other)) << name;
    EXPECT_TRUE(readColumnName("Mittelwert").has(Says::mean));
    EXPECT_TRUE(readColumnName("Vref").has(Says::reference));
    EXPECT_EQ(readColumnName("Pressure of the tyre").says & ~static_cast<std::uint32_t>(Says::other), 0U);
}

TEST(ColumnNames, UnitsStandInBracketsOrBehindASign) {
    for (const char* name : {"t (ms)", "t [ms]", "t_ms", "t/ms", "t in ms", "ms", "t, ms", "Milliseconds"}) {
        EXPECT_EQ(readColumnName(name).unit.of, ColumnUnit::Of::time) << name;
        EXPECT_EQ(readColumnName(name).unit.time_us, 1'000) << name;
    }
    for (const char* name : {"U (mV)", "u_mv", "mV DC", "Voltage [mV dc]", "DC mV"}) {
        EXPECT_EQ(readColumnName(name).unit.of, ColumnUnit::Of::volts) << name;
        EXPECT_EQ(readColumnName(name).unit.exponent, -3) << name;
    }
    for (const char* name : {"U (V AC)", "I (mA)", "R [Ohm]",
                             "T (\xC2\xB0"
                             "C)"})
        EXPECT_EQ(readColumnName(name).unit.of, ColumnUnit::Of::other) << name;
    EXPECT_EQ(readColumnName("Voltage (channel 1)").unit.of, ColumnUnit::Of::nothing);
}

} // namespace stillwire
