"""The same sets with numpy: the nodal matrices of a set solved in one call, and each chain's own
formula worked out by hand and evaluated in whole arrays. Checks that both agree, prints seconds."""
import sys
import time

import numpy as np

F = 20 * 1000 ** (np.arange(2000) / 1999)
S = 2j * np.pi * F


def level(v):
    return 20 * np.log10(np.abs(v))


def controls_values(i):
    return 2 + 0.001 * i, 300e-12 + 0.5e-12 * i, 50e3 + 400 * i


def controls_matrices(i):
    inductance, cable, tone = controls_values(i)
    a = np.zeros((2000, 4, 4), complex)  # hot, t, wiper, current of the coil
    a[:, 0, 0] = S * 100e-12 + 1 / tone + 1 / 150e3
    a[:, 0, 1] = a[:, 1, 0] = -1 / tone
    a[:, 1, 1] = 1 / tone + S * 22e-9
    a[:, 0, 2] = a[:, 2, 0] = -1 / 150e3
    a[:, 2, 2] = 1 / 150e3 + 1 / 350e3 + 1e-6 + S * cable
    a[:, 0, 3] = a[:, 3, 0] = 1
    a[:, 3, 3] = -(6000 + S * inductance)
    b = np.zeros((2000, 4, 1), complex)
    b[:, 3, 0] = 1
    return a, b, 2


def controls_formula(i):
    inductance, cable, tone = controls_values(i)
    below = 1 / 350e3 + 1e-6 + S * cable
    through = 1 + 150e3 * below
    load = below / through + S * 100e-12 + S * 22e-9 / (1 + S * (22e-9 * tone))
    return 1 / ((1 + (6000 + S * inductance) * load) * through)


MUTUAL = 0.999 * np.sqrt(0.8 * 80)


def step_up_values(i):
    return 8e-3 + 4e-6 * i, 300e-12 + 0.5e-12 * i, 30 + 0.02 * i


def step_up_matrices(i):
    inductance, cable, resistance = step_up_values(i)
    a = np.zeros((2000, 6, 6), complex)  # hot, sec, wiper, currents of coil, primary, secondary
    a[:, 0, 0] = S * 200e-12
    a[:, 0, 3] = -1
    a[:, 0, 4] = 1
    a[:, 1, 1] = S * 150e-12 + 1 / 75e3
    a[:, 1, 2] = a[:, 2, 1] = -1 / 75e3
    a[:, 1, 5] = 1
    a[:, 2, 2] = 1 / 75e3 + 1 / 175e3 + 1e-6 + S * cable
    a[:, 3, 0] = 1
    a[:, 3, 3] = resistance + S * inductance
    a[:, 4, 0] = a[:, 5, 1] = 1
    a[:, 4, 4] = -(12 + S * 0.8)
    a[:, 4, 5] = a[:, 5, 4] = -S * MUTUAL
    a[:, 5, 5] = -(900 + S * 80)
    b = np.zeros((2000, 6, 1), complex)
    b[:, 3, 0] = 1
    return a, b, 2


def step_up_formula(i):
    inductance, cable, resistance = step_up_values(i)
    below = 1 / 175e3 + 1e-6 + S * cable
    through = 1 + 75e3 * below
    secondary = 1 / (below / through + S * 150e-12)  # load of the secondary winding
    loop = 900 + S * 80 + secondary
    primary = 12 + S * 0.8 - (S * MUTUAL) ** 2 / loop
    shunt = 1 / (1 / primary + S * 200e-12)
    hot = shunt / (shunt + resistance + S * inductance)
    return hot / primary * (S * MUTUAL) / loop * secondary / through


def timed(job):
    start = time.perf_counter()
    for i in range(1000):
        job(i)
    return time.perf_counter() - start


def main(chain):
    matrices, formula = globals()[chain + "_matrices"], globals()[chain + "_formula"]

    def solved(i):
        a, b, row = matrices(i)
        return level(np.linalg.solve(a, b)[:, row, 0])

    for i in (0, 500, 999):
        if not np.allclose(solved(i), level(formula(i)), atol=1e-7):
            sys.exit("matrices and formula disagree")
    print(f"{timed(solved):.3f} {timed(lambda i: level(formula(i))):.3f}")


main(sys.argv[1])
