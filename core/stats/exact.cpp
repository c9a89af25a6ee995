// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stats/exact.hpp"

#include <cmath>

#include <boost/math/distributions/beta.hpp>
#include <boost/math/distributions/binomial.hpp>

namespace stillwire {

double normalCdf(double z) { return 0.5 * std::erfc(-z / std::sqrt(2.0)); }

double probabilityInside(double y, double u, double low, double high) {
    if (!(u > 0)) return y >= low && y <= high ? 1.0 : 0.0;
    return normalCdf((high - y) / u) - normalCdf((low - y) / u);
}

double rateUpperBound(int k, int n, double confidence) {
    if (n <= 0 || k >= n) return 1.0;
    return boost::math::quantile(boost::math::beta_distribution<>(k + 1.0, static_cast<double>(n - k)), confidence);
}

int trialsToSeeOne(double p, double confidence) {
    return static_cast<int>(std::ceil(std::log1p(-confidence) / std::log1p(-p)));
}

double binomialTest(int k, int n, double p) {
    if (n <= 0) return 1.0;
    const boost::math::binomial_distribution<> law(n, p);
    // Equal probabilities must count as equal though they were reached by different sums.
    const double observed = boost::math::pdf(law, k) * (1.0 + 1e-7);
    double sum = 0;
    for (int i = 0; i <= n; ++i) {
        const double mass = boost::math::pdf(law, i);
        if (mass <= observed) sum += mass;
    }
    return sum < 1.0 ? sum : 1.0;
}

double equalRatesTest(int k1, double n1, int k2, double n2) {
    if (k1 + k2 == 0 || n1 <= 0 || n2 <= 0) return 1.0;
    return binomialTest(k1, k1 + k2, n1 / (n1 + n2));
}

double greaterRateTest(int k1, double n1, int k2, double n2) {
    if (k1 == 0 || n1 <= 0 || n2 <= 0) return 1.0;
    const boost::math::binomial_distribution<> law(k1 + k2, n1 / (n1 + n2));
    return boost::math::cdf(boost::math::complement(law, k1 - 1));
}

} // namespace stillwire
