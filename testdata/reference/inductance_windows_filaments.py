"""Mutual inductance of windings in any position by Neumann's sum over filaments: see inductance_windows.py."""
import math

import numpy as np

MU0 = 4e-7 * math.pi


class Filaments:
    """Two windings in any position, the second turned about the axis of the vector and then shifted."""

    def __init__(self, a, b, shift, turn):
        self.a, self.b, self.shift, self.turn = a, b, np.array(shift), np.array(turn)

    def mutual(self, fine, coarse):
        values = [self.summed(n) for n in (fine, coarse)]
        return values[0], abs(values[0] - values[1]) / abs(values[0]) + 2e-8

    def placed(self, n):
        rotation = rodrigues(self.turn)
        at, along = filaments(self.b, n)
        return at @ rotation.T + self.shift, along @ rotation.T

    def summed(self, n):
        (p, dp), (q, dq) = filaments(self.a, n), self.placed(n)
        total = 0.0
        for i in range(0, len(p), 200):
            near = np.sqrt(sum((p[i:i + 200, None, c] - q[None, :, c]) ** 2 for c in range(3)))
            total += np.sum((dp[i:i + 200] @ dq.T) / near)
        return MU0 / (4 * math.pi) * total

    def clearance(self):
        p, q = filaments(self.a, 9)[0], self.placed(9)[0]
        return min(np.sqrt(np.min(np.sum((p[i:i + 200, None, :] - q[None, :, :]) ** 2, axis=2))) for i in range(0, len(p), 200))


def rodrigues(turn):
    angle = np.linalg.norm(turn)
    if angle == 0:
        return np.eye(3)
    x, y, z = turn / angle
    cross = np.array([[0, -z, y], [z, 0, -x], [-y, x, 0]])
    return np.eye(3) + math.sin(angle) * cross + (1 - math.cos(angle)) * cross @ cross


def filaments(w, n):
    """Points and vectors of Gauss points: n for 12 mm of height or build, twice n for 25 mm along a side, n on a corner."""
    rule = lambda size, unit, least: np.polynomial.legendre.leggauss(max(least, math.ceil(n * size / unit)))
    at, along = [], []
    corners, sides = w.pieces()
    (xt, wt), (xz, wz) = rule(w.c, 0.012, n // 2), rule(w.h, 0.012, n // 2)
    for t, weight_t in zip((xt + 1) / 2 * w.c, wt / 2):
        for z, weight_z in zip(xz / 2 * w.h, wz / 2):
            weight, radius = weight_t * weight_z, w.r + t
            for x, y, length, phi in sides:
                s, ws = rule(length, 0.0125, n)
                cos, sin = math.cos(phi), math.sin(phi)
                for k, wk in zip(s / 2 * length, ws / 2 * length):
                    at.append((x + radius * cos - k * sin, y + radius * sin + k * cos, z))
                    along.append((-sin * wk * weight, cos * wk * weight, 0))
            s, ws = rule(radius, 0.01, n)
            for x, y, phi in corners:
                for k, wk in zip(phi + (s + 1) * math.pi / 4, ws * math.pi / 4 * radius):
                    cos, sin = math.cos(k), math.sin(k)
                    at.append((x + radius * cos, y + radius * sin, z))
                    along.append((-sin * wk * weight, cos * wk * weight, 0))
    return np.array(at), np.array(along)
