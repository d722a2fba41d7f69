# Fits the Wood curves handed to it on standard input by scipy's curve_fit, and says how long that took.
import json
import sys
import time

import numpy as np
import scipy
from scipy.optimize import curve_fit


def curve(t, a, b, c):
    return a * np.exp(b * np.log(t) - c * t)


def slopes(t, a, b, c):
    shape = np.exp(b * np.log(t) - c * t)
    return np.column_stack((shape, a * shape * np.log(t), -a * shape * t))


def start(t, y):
    design = np.column_stack((np.ones_like(t), np.log(t), -t))
    height, b, c = np.linalg.lstsq(design, np.log(y), rcond=None)[0]
    return np.exp(height), b, c


def fit(t, y, **options):
    parameters, covariance = curve_fit(curve, t, y, p0=start(t, y), **options)
    return [*parameters, *np.sqrt(np.diag(covariance))]


asked = json.load(sys.stdin)
series = [(np.array(one["t"], float), np.array(one["y"], float)) for one in asked["series"]]
answer = {"version": scipy.__version__}
for name, options in (("plain", {}), ("withSlopes", {"jac": slopes})):
    best = float("inf")
    for _ in range(asked["runs"]):
        begin = time.perf_counter()
        fits = [fit(t, y, **options) for t, y in series]
        best = min(best, time.perf_counter() - begin)
    answer[name] = {"ms": best * 1000, "fits": fits}
json.dump(answer, sys.stdout)
