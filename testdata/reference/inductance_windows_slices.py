"""Mutual inductance of windings with parallel axes by slices: see inductance_windows.py."""
import math

import numpy as np

from inductance_windows_rules import ZETA2, ZETA4, adaptive, distinct, nodes, second_difference, third_difference

MU0 = 4e-7 * math.pi


def slices(w, theta, shift):
    """The parts of G for one direction: (breaks, function) of each."""
    nx, ny = math.cos(theta), math.sin(theta)
    offset = shift[0] * nx + shift[1] * ny
    corners, sides = w.pieces()
    parts = []
    for x, y, length, phi in sides:
        f = phi - theta  # of the normal; the tangent's part along e is cos f, along n it is -sin f
        along, across = length * abs(math.sin(f)) / 2, w.c * abs(math.cos(f)) / 2
        middle = x * nx + y * ny + (w.r + w.c / 2) * math.cos(f) + offset
        parts.append(trapezoid(middle, along, across, length * math.cos(f)))
    for x, y, phi in corners:
        centre = x * nx + y * ny + offset
        parts += arc(w, centre, phi - theta)
    return parts


def trapezoid(middle, along, across, total):
    outer, inner = along + across, min(along, across)

    def value(p):
        return total / (4 * along * across) * np.clip(outer - np.abs(p - middle), 0, 2 * inner)

    edge = abs(along - across)
    return [middle - outer, middle - edge, middle + edge, middle + outer], value


def arc(w, centre, start):
    """A quarter of a turn from the angle start to the line's normal, cut where its cosine or sine changes sign."""
    parts, end = [], start + math.pi / 2
    cut = math.ceil(start / (math.pi / 2) - 1e-12) * math.pi / 2
    for first, last in ((start, cut), (cut, end)):
        if last - first > 1e-13:
            parts.append(sector(w, centre, first, last))
    return parts


def sector(w, centre, first, last):
    sign = 1 if math.cos((first + last) / 2) > 0 else -1
    near, far = sorted((min(1, abs(math.cos(first))), min(1, abs(math.cos(last)))))
    r, outer = w.r, w.r + w.c

    def value(p):
        q = sign * (p - centre)
        inside = q > 0
        q = np.where(inside, q, 1)
        low = np.maximum(r, q / far)
        high = np.minimum(outer, q / max(near, 1e-300))
        high = np.maximum(high, low)
        return np.where(inside, sign * q / w.c * (arcosh(high / q) - arcosh(low / q)), 0)

    return [centre + sign * f * rho for f in (near, far) for rho in (r, outer)], value


def arcosh(x):
    return np.arccosh(np.maximum(x, 1))


def distances(d, ha, hb):
    """The ends of both heights, seen from each other, and the sign of their double antiderivative."""
    total = {}
    for z, sign in ((d + (ha + hb) / 2, 1), (d - (ha + hb) / 2, 1), (d + (ha - hb) / 2, -1), (d - (ha - hb) / 2, -1)):
        key = round(abs(z), 13)
        if key > 0:
            total[key] = total.get(key, 0) + sign
    return total.items()


def kernel(u, d, ha, hb):
    """|z|/(z^2+u^2) averaged over two heights with the centres d apart."""
    u = np.maximum(u, 1e-18)
    apart = abs(d) > (ha + hb) / 2 * (1 - 1e-12)
    total = 0
    for z, times in distances(d, ha, hb):
        log = np.log(z * z + u * u) if apart else np.log1p((z / u) ** 2)
        total = total + times * (0.5 * z * log + u * np.arctan(z / u) - z)
    return total / (ha * hb)


def singular(d, ha, hb):
    """The factors of -ln|u| and of |u| in the kernel near 0."""
    ends = distances(d, ha, hb)
    return sum(times * z for z, times in ends) / (ha * hb), sum(times for _, times in ends) * math.pi / 2 / (ha * hb)


def gathered(parts, p):
    total = np.zeros_like(p)
    for _, value in parts:
        total += value(p)
    return total


class Parallel:
    """Q of two windings with parallel axes, the second shifted and turned about its axis."""

    def __init__(self, a, b, shift, turn=0.0):
        self.a, self.b, self.shift, self.turn = a, b, shift, turn
        self.one = a is b and shift == (0, 0, 0) and turn == 0
        self.odd = shift[0] == shift[1] == 0  # G is odd, so that half of the line is enough
        self.quarter = turn == 0 and (shift[0] == 0 or shift[1] == 0)  # Q is the same for theta and -theta
        gap = abs(shift[2]) - (a.h + b.h) / 2
        self.log, self.line = singular(shift[2], a.h, b.h)
        if gap > -1e-12:
            self.log = 0
            self.line *= gap < 1e-12
        self.scale = min(a.h, b.h) if gap < 1e-12 else max(gap, min(a.h, b.h, a.c, b.c))

    def kernel(self, u):
        return kernel(u, self.shift[2], self.a.h, self.b.h)

    def at(self, theta, least):
        first = slices(self.a, theta, (0, 0))
        second = first if self.one else slices(self.b, theta - self.turn, self.turned_shift())
        breaks = [x for part, _ in first + second for x in part]
        if self.odd:
            breaks = [0] + [x for x in breaks if x > 0]
        p, w = nodes(distinct(breaks), least, self.scale)
        f = w * gathered(first, p)
        g = f if self.one else w * gathered(second, p)
        value = self.summed(p, f, g, lambda x, y: np.abs(x - y)) + self.diagonal(p, w, f, g)
        if self.odd:
            value = 2 * (value - self.summed(p, f, g, lambda x, y: x + y))
        return value

    def turned_shift(self):
        cos, sin = math.cos(self.turn), math.sin(self.turn)
        x, y, _ = self.shift
        return x * cos + y * sin, y * cos - x * sin

    def summed(self, p, f, g, distance):
        """The plain double sum; a distance of 0 counts nothing."""
        i, j = f != 0, g != 0
        x, y = p[i], p[j]
        total = 0.0
        for part in range(0, len(x), 256):
            u = distance(x[part:part + 256, None], y[None, :])
            total += f[i][part:part + 256] @ np.where(u == 0, 0, self.kernel(u)) @ g[j]
        return total

    def diagonal(self, p, w, f, g):
        """What the trapezoidal rule lacks on the diagonal, where the kernel is regular - log ln|u| + line |u|."""
        tiny = 1e-9 * self.scale
        regular = self.kernel(np.array([tiny]))[0] + self.log * math.log(tiny) - self.line * tiny
        at_zero = regular - self.log * np.log(np.maximum(w, 1e-30) / (2 * math.pi)) + self.line * w / 6
        second = second_difference(g)
        return (f @ (at_zero * g) - self.log * (ZETA2 * f @ second + (ZETA4 - ZETA2) / 12 * f @ second_difference(second))
                - self.line / 360 * third_difference(f, g, p))

    def mutual(self, fine, coarse):
        """For one turn each, with the relative error."""
        end = math.pi / 2 if self.quarter else math.pi
        value, error = adaptive(lambda theta: np.array([self.at(theta, n) for n in (fine, coarse)]), self.intervals(end), 2e-7)
        times = MU0 / (4 * math.pi ** 2) * math.pi / end
        return times * value[0], (abs(value[0] - value[1]) + error) / abs(value[0]) + 2e-8

    def intervals(self, end):
        """Ends of intervals, closer where sides lie nearly along the lines."""
        if self.a.a == self.a.b == self.b.a == self.b.b == self.shift[0] == self.shift[1] == 0:
            return [0, end]  # circles with one axis
        small = min(self.a.c, self.b.c) / max(self.a.size[0], self.a.size[1], self.b.size[0], self.b.size[1])
        marks = set()
        for middle in {0, math.pi / 2, math.pi, self.turn % math.pi, (self.turn + math.pi / 2) % math.pi}:
            for x in (0, small, 5 * small, 25 * small):
                marks |= {middle - min(x, 0.5), middle + min(x, 0.5)}
        return distinct([x for x in marks if 0 <= x <= end + 1e-12] + [0, end])
