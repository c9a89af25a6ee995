// SPDX-License-Identifier: GPL-3.0-or-later
// Exact probabilities: what a few events in a few trials allow one to say.
#pragma once

namespace stillwire {

// Standard normal distribution function.
[[nodiscard]] double normalCdf(double z);

// Probability that the true value lies in [low, high] when y with standard uncertainty u was measured, normal
// distribution, no prior knowledge (JCGM 106:2012, 7.2 to 7.4). u == 0 gives 0 or 1 (limits belong to the window).
[[nodiscard]] double probabilityInside(double y, double u, double low, double high);

// One-sided Clopper-Pearson upper bound for the event probability, k events in n trials; 1 if n == 0 or k == n.
[[nodiscard]] double rateUpperBound(int k, int n, double confidence = 0.95);

// Trials needed to see at least one event of probability p: ceil(ln(1-confidence) / ln(1-p)); 0 < p < 1.
[[nodiscard]] int trialsToSeeOne(double p, double confidence = 0.95);

// Exact binomial test, two-sided (sums all outcomes not more probable than the observed one), 0 < p < 1.
[[nodiscard]] double binomialTest(int k, int n, double p);

// Are two rates equal? k1 events in exposure n1 against k2 in n2, conditional on k1 + k2; two-sided p, 1 without
// events.
[[nodiscard]] double equalRatesTest(int k1, double n1, int k2, double n2);
// The same one-sided: p that the first rate is not greater than the second.
[[nodiscard]] double greaterRateTest(int k1, double n1, int k2, double n2);

} // namespace stillwire
