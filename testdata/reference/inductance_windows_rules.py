"""The quadratures of inductance_windows.py."""
import heapq
import math

import numpy as np

POWER = 5


def bend(s):
    """Kress's map of 0..1 to itself, with derivatives that vanish at the ends, and its derivative."""
    v = lambda s: (1 / POWER - 0.5) * (1 - 2 * s) ** 3 + (2 * s - 1) / POWER + 0.5
    dv = lambda s: -6 * (1 / POWER - 0.5) * (1 - 2 * s) ** 2 + 2 / POWER
    a, b = v(s), v(1 - s)
    low, high = a ** POWER, b ** POWER
    return low / (low + high), POWER * (a * b) ** (POWER - 1) * (dv(s) * b + a * dv(1 - s)) / (low + high) ** 2


def nodes(breaks, least, scale):
    """Points and weights on panels between the breaks, more on panels longer than the scale of the kernel."""
    points, weights = [], []
    for low, high in zip(breaks, breaks[1:]):
        n = least + int(least * 0.3 * (high - low) / scale)
        x, w = bend(np.arange(n) / n)
        # what is near the upper end is measured from there
        points.append(np.where(x < 0.5, low + (high - low) * x, high - (high - low) * bend(1 - np.arange(n) / n)[0]))
        weights.append((high - low) * w / n)
    return np.concatenate(points), np.concatenate(weights)


def distinct(breaks):
    breaks = sorted(breaks)
    size = breaks[-1] - breaks[0]
    kept = [breaks[0]]
    for b in breaks[1:]:
        if b - kept[-1] > 1e-10 * size:
            kept.append(b)
    return kept


ZETA2, ZETA4 = -0.0304484570583933, 0.00798381145026862  # Riemann's zeta' at -2 and -4


def second_difference(g):
    d = -2 * g
    d[1:] += g[:-1]
    d[:-1] += g[1:]
    return d


def third_difference(f, g, p):
    """Of (p - p_i) g, about every i."""
    total = 0
    for step, times in ((2, 0.5), (1, -1)):
        rise = p[step:] - p[:-step]
        total += times * (f[:-step] @ (rise * g[step:]) + f[step:] @ (rise * g[:-step]))
    return total


# Gauss and Kronrod's rule of 7 and 15 points on -1..1, from 0 upwards (QUADPACK, R. Piessens and others, 1983).
KRONROD = [(0.000000000000000, 0.209482141084728, 0.417959183673469), (0.207784955007898, 0.204432940075298, 0),
           (0.405845151377397, 0.190350578064785, 0.381830050505119), (0.586087235467691, 0.169004726639267, 0),
           (0.741531185599394, 0.140653259715525, 0.279705391489277), (0.864864423359769, 0.104790010322250, 0),
           (0.949107912342759, 0.063092092629979, 0.129484966168870), (0.991455371120813, 0.022935322010529, 0)]


def kronrod(function, low, high):
    """Integrals of a function with several values: by 15 points, and the difference to 7 points."""
    middle, half = (low + high) / 2, (high - low) / 2
    fine = coarse = 0
    for x, w15, w7 in KRONROD:
        for s in {x, -x}:
            value = function(middle + half * s)
            fine, coarse = fine + half * w15 * value, coarse + half * w7 * value
    return fine, abs(fine - coarse)[0]


def adaptive(function, breaks, relative):
    """The integral over intervals that are halved where the rule's estimate is greatest."""
    heap = []
    for low, high in zip(breaks, breaks[1:]):
        value, error = kronrod(function, low, high)
        heapq.heappush(heap, (-error, low, high, value))
    while True:
        value, error = sum(x[3] for x in heap), -sum(x[0] for x in heap)
        if error < relative * abs(value[0]) or len(heap) > 60:
            return value, error
        _, low, high, _ = heapq.heappop(heap)
        for a, b in ((low, (low + high) / 2), ((low + high) / 2, high)):
            v, e = kronrod(function, a, b)
            heapq.heappush(heap, (-e, a, b, v))
