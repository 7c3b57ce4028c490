"""The same thousand sets by numpy: all matrices of a set solved in one call."""
import sys
import time

try:
    import numpy as np
except ImportError:
    sys.exit("numpy is not installed")

f = 20 * 1000 ** (np.arange(2000) / 1999)
s = 2j * np.pi * f
start = time.perf_counter()
for i in range(1000):
    inductance, cable, tone = 2 + 0.001 * i, 300e-12 + 0.5e-12 * i, 50e3 + 400 * i
    a = np.zeros((2000, 4, 4), complex)  # hot, t, wiper, current of the coil
    a[:, 0, 0] = s * 100e-12 + 1 / tone + 1 / 150e3
    a[:, 0, 1] = a[:, 1, 0] = -1 / tone
    a[:, 1, 1] = 1 / tone + s * 22e-9
    a[:, 0, 2] = a[:, 2, 0] = -1 / 150e3
    a[:, 2, 2] = 1 / 150e3 + 1 / 350e3 + 1e-6 + s * cable
    a[:, 0, 3] = a[:, 3, 0] = 1
    a[:, 3, 3] = -(6000 + s * inductance)
    b = np.zeros((2000, 4, 1), complex)
    b[:, 3, 0] = 1
    level = 20 * np.log10(np.abs(np.linalg.solve(a, b)[:, 2, 0]))
print(f"{time.perf_counter() - start:.2f}")
