"""Reference values of the beta distribution, written by SciPy (version in the data). Run: python3 make.py > data.json"""
import json
import random

import scipy
from scipy.special import betainc, betaincinv, gammaln
from scipy.stats import binomtest

random.seed(7)
shapes = [(random.choice([0.5, 1, 2, 3, 7.5, 20, 81, 263, 1500]), random.choice([0.5, 1, 4, 9, 33, 250])) for _ in range(40)]
rows = []
for a, b in shapes:
    x = random.random()
    p = random.choice([0.005, 0.025, 0.1, 0.5, 0.9, 0.975, 0.995])
    rows.append({"a": a, "b": b, "x": x, "incomplete": float(betainc(a, b, x)), "p": p, "quantile": float(betaincinv(a, b, p))})
gammas = [{"x": x, "log": float(gammaln(x))} for x in [0.01, 0.5, 1, 1.5, 2, 3.7, 10, 100.25, 1e4, 1e6]]
shares = []
for _ in range(40):
    n = random.choice([1, 2, 3, 5, 12, 30, 50, 200])
    k = random.randint(0, n)
    test = binomtest(k, n)
    wilson, exact = test.proportion_ci(0.95, "wilson"), test.proportion_ci(0.95, "exact")
    shares.append({"count": k, "of": n, "wilson": [wilson.low, wilson.high], "exact": [exact.low, exact.high]})
print(json.dumps({"library": "SciPy " + scipy.__version__, "seed": 7, "beta": rows, "gamma": gammas, "shares": shares}, indent=1))
