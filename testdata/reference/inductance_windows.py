"""Makes inductance_windows_self.csv and inductance_windows_pair.csv. Needs Python 3 and numpy.

    OMP_NUM_THREADS=1 nice python3 inductance_windows.py self > inductance_windows_self.csv
    OMP_NUM_THREADS=1 nice python3 inductance_windows.py pair > inductance_windows_pair.csv

Two numbers behind self or pair choose some of the rows. It takes about half an hour.

A winding is a window of height h and build c around a rounded-rectangle core (length, width, corner radius r). The turn
at depth t, from 0 to c, keeps the straight sides and has the corner radius r + t. One ampere-turn flows evenly through
the window. The mutual inductance is Neumann's double integral, averaged over both windows; mu0 = 4e-7 pi.

Parallel axes: slices. The plane spectrum of 1/sqrt(rho^2 + z^2) is 2 pi exp(-k|z|)/k. Taken in polar form, Neumann's
integral becomes an average over directions of line integrals in one dimension,

    M = mu0/(4 pi^2) * integral over theta from 0 to pi of  Q(theta),
    Q = double integral of  G1(p) G2(q) kappa(p - q)  over p and q,

where n = (cos theta, sin theta), e = (-sin theta, cos theta), G(p) is the current along e that crosses the line x.n = p,
per length of p, and kappa(u) is |z|/(z^2 + u^2) averaged over both heights. G is elementary: a straight side of all
depths gives a trapezoid, and a corner gives p/c * (arcosh(rho2/|p|) - arcosh(rho1/|p|)) between the radii rho1 and rho2
at which the line crosses it. Distance in space, and with it the singular 1/R, does not occur; what is left is a
logarithm in u where both windows overlap in z.

Q is taken by the trapezoidal rule in a variable in which the breaks of G are ends of panels with vanishing derivatives
(R. Kress, Numer. Math. 58, 1990), with the diagonal corrected for ln|u| and |u| by Euler and Maclaurin's formula. The
integral over theta is that of Gauss and Kronrod, 7 and 15 points, on intervals halved until it holds.

Tilted axes, and pairs 2 mm and more apart: Neumann's sum over filaments at Gauss points in depth and height, with Gauss
points along sides and corners. It converges fast since the windows are apart.

The relative error of a row is the difference of its value to one with about two thirds of the points in every direction,
plus the estimate of the rule over theta, and 2e-8 for the arithmetic and the printed figures. Circular coils come out
within 6e-8 of the Bessel integrals in inductance_circular_cases.csv, and slices within 2e-7 of filaments 3 mm apart.
"""
import csv
import math
import random
import sys

import numpy as np

from inductance_windows_filaments import Filaments
from inductance_windows_slices import Parallel


class Window:
    """Core length and width, corner radius, height and build in metres."""

    def __init__(self, length, width, radius, height, build):
        self.size = (length, width, radius, height, build)
        self.r, self.h, self.c = radius, height, build
        self.a, self.b = (0 if s < 1e-12 else s for s in (length - 2 * radius, width - 2 * radius))

    def pieces(self):
        """Four corners (centre, first angle) and four sides (middle of the skeleton's side, length, angle of the normal)."""
        corners = [(self.a / 2 * x, self.b / 2 * y, i * math.pi / 2) for i, (x, y) in enumerate([(1, 1), (-1, 1), (-1, -1), (1, -1)])]
        sides = [(self.a / 2 * x, self.b / 2 * y, length, i * math.pi / 2)
                 for i, (x, y, length) in enumerate([(1, 0, self.b), (0, 1, self.a), (-1, 0, self.b), (0, -1, self.a)]) if length > 0]
        return corners, sides


def drawn(random, low, high):
    """A length between two in millimetres, evenly in its logarithm, in metres to 0.02 mm."""
    return round(50 * low * (high / low) ** random.random()) / 50e3


def draw(random, shape, form):
    """A window of a shape (circle, racetrack, square, sharp, rounded) and form (any, deep, thin)."""
    width = drawn(random, 3, 30)
    length = max(drawn(random, 8, 95), width)
    if shape in ("circle", "square"):
        length = width = drawn(random, 8, 30)
    radius = {"circle": width / 2, "racetrack": width / 2, "sharp": 0}.get(shape, round(random.random() * width / 2, 5))
    height, build = {"any": ((1, 18), (0.3, 9)), "deep": ((1, 1.6), (6, 9)), "thin": ((14, 18), (0.3, 0.6))}[form]
    return Window(length, width, round(radius, 5), drawn(random, *height), drawn(random, *build))


SHAPES = ["rounded", "racetrack", "circle", "sharp", "rounded", "square"]


def self_rows():
    source = random.Random(1)
    for i in range(60):
        shape = SHAPES[i % len(SHAPES)]
        form = {0: "deep", 1: "thin"}.get(i // len(SHAPES) % 5, "any")
        w = draw(source, shape, form)
        yield [f"{i + 1:02d}_{shape}_{form}"], w, Parallel(w, w, (0, 0, 0))


SIZES = ["core_length_m", "core_width_m", "corner_radius_m", "height_m", "build_m"]


UPRIGHT = (0.0, 0.0, 0.0)


def stacked(a, b, gap):
    return a, b, (0.0, 0.0, round((a.h + b.h) / 2 + gap, 6)), UPRIGHT


def around(source, a, gap, parallel):
    """Another winding around one, with corners that are parallel or rounder or sharper, and of another height and place."""
    length, width, radius, height, build = a.size
    room = build + gap
    outside = radius + room if parallel else round(source.random() * (radius + room), 5)
    b = draw(source, "rounded", "any")
    b = Window(round(length + 2 * room, 6), round(width + 2 * room, 6), round(outside, 6), b.h if not parallel else height, b.c)
    return a, b, (0.0, 0.0, 0.0 if parallel else round(source.random() * a.h / 2, 5)), UPRIGHT


def aside(source, a, b, gap, way):
    """Two beside each other along the width, plain, or along the length and raised, or along the width and moved along."""
    side = 0 if way == "raised" else 1
    apart = (a.size[side] + b.size[side]) / 2 + a.c + b.c + gap
    shift = [0.0, 0.0, round(source.random() * a.h, 5) if way == "raised" else 0.0]
    shift[side] = round(apart, 6)
    if way == "moved":
        shift[0] = round(source.random() * a.size[0] / 2, 5)
    return a, b, tuple(shift), UPRIGHT


def turned(source, a, b, gap, along):
    """Stacked, turned about the axis and moved."""
    a, b, (_, _, z), _ = stacked(a, b, gap)
    return a, b, (round(along * a.size[0], 5), round(along * a.size[1], 5), z), (0.0, 0.0, round(source.uniform(-1.5, 1.5), 3))


def tilted(source, a, b):
    """A turn about any axis, and a way up or aside, of unit length."""
    turn = tuple(round(source.uniform(-1, 1), 3) for _ in range(3))
    way = np.array([source.uniform(-1, 1) * 0.6, source.uniform(-1, 1), source.choice([0.3, 1.0])])
    return a, b, way / np.linalg.norm(way), turn


def approached(a, b, way, turn):
    """As near along the way as leaves 3 mm between."""
    near, far = 0, 50  # in steps of 2 mm
    while far - near > 1:
        middle = (near + far) // 2
        clear = Filaments(a, b, 0.002 * middle * way, turn).clearance() > 0.003
        near, far = (near, middle) if clear else (middle, far)
    return tuple(float(round(x, 5)) for x in 0.002 * far * way)


NEAR = 0.0019  # from this gap on filaments do as well


def pair_rows():
    source = random.Random(2)
    shapes = lambda i: SHAPES[i % len(SHAPES)]
    any_shape = lambda i, form="any": draw(source, shapes(i), form)
    forms = ["any", "any", "deep", "any", "thin", "any"]
    for i, gap in enumerate([0, 0, 0, 0.1, 0.2, 0.3, 0.5, 0.7, 1, 1.5, 3, 4, 6, 9, 14, 20]):
        w = any_shape(i, forms[i % 5])
        yield "stacked_alike", gap / 1e3, stacked(w, w, gap / 1e3)
    for i, gap in enumerate([0, 0, 0.3, 1, 2.5, 5, 10, 20]):
        yield "stacked_unlike", gap / 1e3, stacked(any_shape(i), any_shape(i + 2), gap / 1e3)
    for i, gap in enumerate([0, 0, 0, 0, 0.1, 0.3, 1, 2.5, 4]):
        yield "around", gap / 1e3, around(source, any_shape(i), gap / 1e3, i % 2 == 0)
    for i, gap in enumerate([0, 0, 0, 0.2, 0.5, 1, 3, 5, 8]):
        way = ["plain", "moved", "raised"][i % 3]
        yield "aside_" + way, gap / 1e3, aside(source, any_shape(i), any_shape(i + 1), gap / 1e3, way)
    for i in range(8):
        yield "tilted", 0.003, tilted(source, any_shape(i), any_shape(i + 1))
    for i, gap in enumerate([0, 0.5, 1, 3]):
        yield "turned", gap / 1e3, turned(source, any_shape(i), any_shape(i + 3), gap / 1e3, 0.2 * (i % 2))


def pair_case(gap, a, b, shift, turn):
    if turn[:2] == (0, 0) and gap < NEAR:
        return Parallel(a, b, shift, turn[2]), (20, 14)
    return Filaments(a, b, shift, turn), (12, 8)


def figures(numbers):
    return [f"{x:.6g}" for x in numbers]


def write_self(out, first, last):
    out.writerow(["case_id"] + SIZES + ["inductance_H", "relative_error"])
    for i, (names, w, case) in enumerate(self_rows()):
        if first <= i < last:
            value, error = case.mutual(24, 18)
            out.writerow(names + figures(w.size) + [f"{value:.9e}", f"{error:.1e}"])
            sys.stdout.flush()


def write_pair(out, first, last):
    places = [name + "_" + axis for name in ("shift", "turn") for axis in "xyz"]
    out.writerow(["case_id"] + ["a_" + x for x in SIZES] + ["b_" + x for x in SIZES] + places + ["mutual_H", "relative_error"])
    for i, (name, gap, (a, b, shift, turn)) in enumerate(pair_rows()):
        if first <= i < last:
            if name == "tilted":
                shift = approached(a, b, shift, turn)
            case, points = pair_case(gap, a, b, shift, turn)
            value, error = case.mutual(*points)
            row = [f"{i + 1:02d}_{name}_{1e3 * gap:g}mm"] + figures(a.size) + figures(b.size)
            out.writerow(row + figures(shift) + figures(turn) + [f"{value:.9e}", f"{error:.1e}"])
            sys.stdout.flush()


if __name__ == "__main__":
    kind, first, last = (sys.argv[1:] + [0, 1000])[:3]
    {"self": write_self, "pair": write_pair}[kind](csv.writer(sys.stdout, lineterminator="\n"), int(first), int(last))
