"""Writes a netlist that holds a thousand copies of a chain, each with its own part values."""
import sys

PARTS = {
    "controls": """V1 hot x1 AC 1
R1 x1 x2 6000
L1 x2 0 {0}
C1 hot 0 100p
R2 hot t {2}
C2 t 0 22n
R3 hot wiper 150k
R4 wiper 0 350k
C3 wiper 0 {1}
R5 wiper 0 1meg""",
    "step_up": """V1 hot x1 AC 1
R1 x1 x2 {2}
L1 x2 0 {0}
C1 hot 0 200p
R2 hot p 12
L2 p 0 0.8
L3 s 0 80
K1 L2 L3 0.999
R3 s sec 900
C2 sec 0 150p
R4 sec wiper 75k
R5 wiper 0 175k
C3 wiper 0 {1}
R6 wiper 0 1meg""",
}
VALUES = {
    "controls": lambda i: (2 + 0.001 * i, 300e-12 + 0.5e-12 * i, 50e3 + 400 * i),
    "step_up": lambda i: (8e-3 + 4e-6 * i, 300e-12 + 0.5e-12 * i, 30 + 0.02 * i),
}
chain = sys.argv[1]
print("* a thousand copies of one chain")
print(".subckt chain wiper l1=1 c3=1 v=1")
print(PARTS[chain].format("{l1}", "{c3}", "{v}"))
print(".ends")
for i in range(1000):
    l, c, v = VALUES[chain](i)
    print(f"X{i} w{i} chain l1={l:.9g} c3={c:.9g} v={v:.9g}")
print(".save " + " ".join(f"v(w{i})" for i in range(1000)))
print(".control\nac dec 667 20 20k\nquit 0\n.endc\n.end")
