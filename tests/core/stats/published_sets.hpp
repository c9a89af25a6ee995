// SPDX-License-Identifier: GPL-3.0-or-later
// Data sets with published figures. Sources stand beside each; figures marked "recomputed" were printed by R 4.2.
#pragma once

#include <vector>

namespace stillwire::test {

// NIST StRD, univariate: NumAcc2 to NumAcc4 are one value and 500 pairs around it; certified mean `middle` and
// standard deviation 0.1.
inline std::vector<double> numAcc(double middle, double low, double high) {
    std::vector<double> out{middle};
    for (int i = 0; i < 500; ++i) out.insert(out.end(), {low, high});
    return out;
}

// NIST StRD, univariate, Mavro: certified mean 2.001856, standard deviation 0.000429123454003053.
inline std::vector<double> mavro() {
    return {2.00180, 2.00170, 2.00180, 2.00190, 2.00180, 2.00170, 2.00150, 2.00140, 2.00150, 2.00150,
            2.00170, 2.00180, 2.00180, 2.00190, 2.00190, 2.00210, 2.00200, 2.00160, 2.00140, 2.00130,
            2.00130, 2.00150, 2.00150, 2.00160, 2.00150, 2.00140, 2.00130, 2.00140, 2.00150, 2.00140,
            2.00150, 2.00160, 2.00150, 2.00160, 2.00190, 2.00200, 2.00200, 2.00210, 2.00220, 2.00230,
            2.00240, 2.00250, 2.00270, 2.00260, 2.00260, 2.00260, 2.00270, 2.00260, 2.00250, 2.00240};
}

// NIST StRD, univariate, Michelso, as 1000·(value - 299): certified mean 852.4, standard deviation 79.0105478190518.
inline std::vector<double> michelso() {
    return {850, 740, 900, 1070, 930, 850, 950, 980, 980, 880, 1000, 980, 930, 650, 760, 810, 1000, 1000, 960, 960,
            960, 940, 960, 940,  880, 800, 850, 880, 900, 840, 830,  790, 810, 880, 880, 830, 800,  790,  760, 800,
            880, 880, 880, 860,  720, 720, 620, 860, 970, 950, 880,  910, 850, 870, 840, 840, 850,  840,  840, 840,
            890, 810, 810, 820,  800, 770, 760, 740, 750, 760, 910,  920, 890, 860, 880, 720, 840,  850,  850, 780,
            890, 840, 780, 810,  760, 810, 790, 810, 820, 850, 870,  870, 810, 740, 810, 940, 950,  800,  810, 870};
}

// Annual flow of the Nile at Aswan, 1871 to 1970 (R, datasets::Nile, public domain). One change of mean, by least
// squares, after observation 28; mean 919.35, median 893.5, 1.4826·MAD 179.3946 (recomputed).
inline std::vector<double> nile() {
    return {1120, 1160, 963,  1210, 1160, 1160, 813,  1230, 1370, 1140, 995,  935,  1110, 994, 1020, 960,  1180,
            799,  958,  1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774,  840,  874, 694,  940,  833,
            701,  916,  692,  1020, 1050, 969,  831,  726,  456,  824,  702,  1120, 1100, 832, 764,  821,  768,
            845,  864,  862,  698,  845,  744,  796,  1040, 759,  781,  865,  845,  944,  984, 897,  822,  1010,
            771,  676,  649,  846,  812,  742,  801,  1040, 860,  874,  848,  890,  744,  749, 838,  1050, 918,
            986,  797,  923,  975,  815,  1020, 906,  901,  1170, 912,  746,  919,  718,  714, 740};
}

// Rosner 1983, NIST/SEMATECH e-Handbook 1.3.5.17.3: three outliers, 6.01, 5.42 and 5.34; median 2.095, MAD 0.545
// (recomputed).
inline std::vector<double> rosner() {
    return {-0.25, 0.68, 0.94, 1.15, 1.20, 1.26, 1.26, 1.34, 1.38, 1.43, 1.49, 1.49, 1.55, 1.56,
            1.58,  1.65, 1.69, 1.70, 1.76, 1.77, 1.81, 1.91, 1.94, 1.96, 1.99, 2.06, 2.09, 2.10,
            2.14,  2.15, 2.23, 2.24, 2.26, 2.35, 2.37, 2.40, 2.47, 2.54, 2.62, 2.64, 2.90, 2.92,
            2.92,  2.93, 3.21, 3.26, 3.30, 3.59, 3.68, 4.30, 4.64, 5.34, 5.42, 6.01};
}

// NIST/SEMATECH e-Handbook 1.3.5.17.1 (Tietjen & Moore 1972): 245.57 is an outlier.
inline std::vector<double> tietjenMoore() { return {199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57}; }

// NIST/SEMATECH e-Handbook 6.3.2.3: twenty means, target 325; the tabular CUSUM first signals at the 14th.
inline std::vector<double> cusumMeans() {
    return {324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600,
            324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350};
}

} // namespace stillwire::test
