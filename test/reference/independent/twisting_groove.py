"""The ski that bends and twists in a groove with memory: finite differences, independent of the program.

Source: section "Carve: the ski in its groove" of the project's physics, re-stated. x runs from the rear contact
point (0) to the front one (L); w is the base's height (towards the skier), phi the twist that lowers the edge angle:

  (EI (w'' - k0))'' = f - q          free ends; k0 = -8 camber/L^2; q the boot's load over the sole, varying evenly
                                     from heel to toe so that its centre is `fore` ahead of the boot centre
  (GJ phi')'        = -m             phi = 0 on the sole, free ends
  e                 = y sin(theta - phi) - w cos(theta)            depth of the edge under the snow surface
  D(x)              = max(0, e over x and everything ahead of it)  what the forebody leaves for the tail
  f, m              = kept * (line load and its moment about the midline of the section pressed to depth D)
  kept              = max(0, 1 - (D - e)/r)                        1 where the ski cuts deeper; rebound r = 0.2 mm

The section's snow pushes back in proportion to its depth under the surface, so f = H_V * (area displaced) and the
moment acts at the pressed section's centroid; both are integrated across the base by Gauss's points here, not
taken from the closed forms.

Method: the six first-order equations in w, w', M, V, phi, T by the box scheme (trapezoidal rule) on even intervals,
D a seventh unknown at every point (D = max(D ahead, e), a sparse equation); Newton's iteration with scipy's sparse LU.
The rebound is hardened in steps from that of snow without memory, on the coarsest mesh; each mesh of half the
interval starts from the one before, until the answers themselves no longer move.

Made with numpy 2.4.6 and scipy 1.17.1; Debian 12's python3-scipy 1.10.1 gives the same to 1e-12. Called by
groove_by_scipy.py.
"""
import sys

import numpy as np
from scipy.sparse import bmat, coo_matrix, csc_matrix, csr_matrix, diags, eye, vstack
from scipy.sparse.linalg import splu

REBOUND = 0.2e-3
GAUSS_AT, GAUSS_WEIGHT = np.polynomial.legendre.leggauss(3)


def section(depth, y, angle):
    """Area and first moment about the midline of the snow pushed out at an edge depth, by integrating over the base."""
    rising = np.sin(angle)
    # The base is under the surface where depth - t*rising > 0, t from the edge: all of it, or one side of a root.
    root = np.clip(depth / np.where(rising == 0, 1e-300, rising), 0, 2 * y)
    first = np.where((rising < 0) & (depth <= 0), root, 0)
    last = np.where(rising < 0, 2 * y, np.where(depth > 0, root, 0))
    area = moment = 0
    for at, weight in zip(GAUSS_AT, GAUSS_WEIGHT):
        t = first + (last - first) * (1 + at) / 2
        pressed = weight / 2 * (last - first) * (depth - t * rising) * np.cos(angle)
        area, moment = area + pressed, moment + pressed * (y - t)
    return area, moment


class Boxes:
    """The equations on one even mesh. Unknowns: w, w', M, V, phi, T, D, each at all points in turn."""

    def __init__(self, ski, angle, load, hardness, fore, intervals):
        n = intervals
        length, (sole_from, sole_to) = ski["length"], ski["soleEnds"]
        self.angle, self.load, self.hardness, self.points = angle, load, hardness, n + 1
        self.x = x = np.linspace(0, length, n + 1)
        self.y = ski["half_width"](x)
        h = length / n
        rear, front = round(sole_from / h), round(sole_to / h)
        assert abs(x[rear] - sole_from) < 1e-9 and abs(x[front] - sole_to) < 1e-9, "the sole must end on points"
        here, ahead = eye(n, n + 1, format="csr"), eye(n, n + 1, k=1, format="csr")
        rise, mean = ahead - here, h / 2 * (ahead + here)
        middle = (x[1:] + x[:-1]) / 2
        sole = sole_to - sole_from
        lever = 12 * fore * (middle - (sole_from + sole_to) / 2) / sole**2
        boot = np.where((middle > sole_from) & (middle < sole_to), load / sole * (1 + lever), 0)
        camber = -8 * ski["camber"] / length**2
        bent = mean @ diags(1 / ski["bending"](x))
        turned = csr_matrix(mean @ diags(1 / ski["torsion"](x)))
        free = np.r_[0:rear, front:n]
        twists, torques = rise[free], mean[free]
        point = lambda rows: coo_matrix((np.ones(len(rows)), (np.arange(len(rows)), rows)), (len(rows), n + 1))
        ends, held = point([0, n]), np.arange(rear, front + 1)
        inside = held[1:-1]
        zero = np.zeros
        # Each row block: coefficients of the seven unknowns, of f and of m, and the right-hand side.
        rows = [
            ([rise, -mean, None, None, None, None, None, None, None], zero(n)),
            ([None, rise, -bent, None, None, None, None, None, None], zero(n) + h * camber),
            ([None, None, rise, -mean, None, None, None, None, None], zero(n)),
            ([None, None, None, rise, None, None, None, -mean, None], -h * boot),
            ([None, None, None, None, twists, -turned[free], None, None, None], zero(len(free))),
            ([None, None, None, None, None, twists, None, None, torques], zero(len(free))),
            ([None, None, ends, None, None, None, None, None, None], zero(2)),
            ([None, None, None, ends, None, None, None, None, None], zero(2)),
            ([None, None, None, None, None, ends, None, None, None], zero(2)),
            ([None, None, None, None, point(held), None, None, None, None], zero(len(held))),
            ([None, None, None, None, None, point(inside), None, None, None], zero(len(inside))),
        ]
        whole = csc_matrix(vstack([self._row(blocks) for blocks, _ in rows]))
        self.linear, self.by_snow = whole[:, :7 * (n + 1)], whole[:, 7 * (n + 1):]
        self.right = np.concatenate([right for _, right in rows])

    def _row(self, blocks):
        height = next(b.shape[0] for b in blocks if b is not None)
        return bmat([[coo_matrix((height, self.points)) if b is None else b for b in blocks]])

    def depth(self, w, phi):
        return self.y * np.sin(self.angle - phi) - w * np.cos(self.angle)

    def snow(self, w, phi, deepest, rebound):
        e = self.depth(w, phi)
        pressed = np.maximum(e, 0) if rebound == np.inf else deepest
        kept = 1.0 if rebound == np.inf else np.clip(1 - (deepest - e) / rebound, 0, 1)
        area, moment = section(pressed, self.y, self.angle - phi)
        return self.hardness * kept * area, self.hardness * kept * moment

    def remember(self, u):
        """Sets D to what the present w and phi leave."""
        parts = u.reshape(7, -1)
        parts[6] = np.maximum.accumulate(np.maximum(self.depth(parts[0], parts[4]), 0)[::-1])[::-1]

    def residual(self, u, rebound):
        parts = u.reshape(7, -1)
        f, m = self.snow(parts[0], parts[4], parts[6], rebound)
        return self.linear @ u + self.by_snow @ np.concatenate([f, m]) - self.right

    def jacobian(self, u, rebound):
        """Snow answers to w, phi and D of its own point only; its slopes by central differences."""
        parts, n = u.reshape(7, -1), self.points
        slopes = {}
        for column, small in ((0, 1e-9), (4, 1e-8), (6, 1e-9)):
            sides = []
            for side in (-small, small):
                moved = parts.copy()
                moved[column] += side
                sides.append(np.array(self.snow(moved[0], moved[4], moved[6], rebound)))
            slopes[column] = (sides[1] - sides[0]) / (2 * small)
        local = bmat([[diags(slopes[c][k]) if c in slopes else coo_matrix((n, n)) for c in range(7)]
                      for k in (0, 1)])
        # D = e where the point cuts deeper than those ahead, else D of the point ahead.
        e = self.depth(parts[0], parts[4])
        ahead = np.append(parts[6][1:], 0)
        cuts = e > ahead
        pass_on = diags(np.where(cuts, 0, 1.0)[:-1], offsets=1, shape=(n, n))
        by_w = diags(np.where(cuts, np.cos(self.angle), 0))
        by_phi = diags(np.where(cuts, self.y * np.cos(self.angle - parts[4]), 0))
        none = coo_matrix((n, n))
        memory = bmat([[by_w, none, none, none, by_phi, none, eye(n) - pass_on]])
        return csc_matrix(vstack([self.linear + self.by_snow @ local, memory]))

    def newton(self, u, rebound, most=40):
        """Damped by the size of the residual. Returns the solution and its residual over the load."""
        u = u.copy()
        self.remember(u)
        size = np.linalg.norm(r := self.residual(u, rebound))
        for _ in range(most):
            step = splu(self.jacobian(u, rebound)).solve(np.append(r, np.zeros(self.points)))
            taken = 1.0
            while True:
                trial = u - taken * step
                self.remember(trial)
                r_trial = self.residual(trial, rebound)
                if np.linalg.norm(r_trial) < (1 - 0.1 * taken) * size or taken < 1e-3:
                    break
                taken /= 2
            moved = np.abs(trial[:self.points] - u[:self.points]).max()
            u, r, size = trial, r_trial, np.linalg.norm(r_trial)
            if np.abs(r).max() < 1e-11 * self.load and moved < 1e-10:
                return u, np.abs(r).max() / self.load
        return None, np.abs(r).max() / self.load


def start_evenly(boxes, length):
    """Pressed evenly, the whole width of the base counted once it is in; no bending moment, no twist."""
    low, high = np.zeros(boxes.points), np.ones(boxes.points)
    for _ in range(60):
        e = (low + high) / 2
        enough = boxes.hardness * section(e, boxes.y, boxes.angle)[0] > boxes.load / length
        low, high = np.where(enough, low, e), np.where(enough, e, high)
    u = np.zeros((7, boxes.points))
    u[0] = (boxes.y * np.sin(boxes.angle) - e) / np.cos(boxes.angle)
    u[1] = np.gradient(u[0], boxes.x)
    return u.ravel()


def harden(boxes, u):
    """From snow without memory to the full groove."""
    u, worst = boxes.newton(u, np.inf, 200)
    assert u is not None, f"snow without memory did not balance: {worst:.1e}"
    rebound, factor = 0.05, 0.7
    while True:
        found, worst = boxes.newton(u, rebound)
        if found is not None:
            u, solved = found, rebound
            if rebound == REBOUND:
                return u
        else:
            factor = factor**0.5
            assert factor < 0.999, f"stuck at a rebound of {rebound * 1e3:.3f} mm: {worst:.1e}"
        rebound = max(REBOUND, factor * solved)


def read(boxes, u, ski, lean_speed, bevel, stations):
    """What the program also tells of the balanced ski. The lean of the resultant is that of a level turn at a speed."""
    w, _, _, _, phi, _, deepest = u.reshape(7, -1)
    x, angle, length = boxes.x, boxes.angle, ski["length"]
    h = x[1] - x[0]
    f, _ = boxes.snow(w, phi, deepest, REBOUND)
    share = np.full(x.size, h)
    share[[0, -1]] /= 2
    force = f * share
    eta = boxes.y * np.cos(angle - phi) + w * np.sin(angle)
    e = boxes.depth(w, phi)
    # The point at a border counts half on either side of it.
    behind = lambda border: np.clip((border - x) / h + 0.5, 0, 1)

    def fit(part, values):
        return np.polyfit(x, values, 2, w=np.sqrt(force * part))

    def told(part):
        """Share of the length over which an even load says as much about a curvature: its fourth power is 180 times
        the weighted variance of x^2 left after a straight line, over L^4."""
        weight = force * part
        line = np.polyfit(x, x**2, 1, w=np.sqrt(weight))
        return (180 * np.average((x**2 - np.polyval(line, x))**2, weights=weight)) ** 0.25 / length

    rear, front = behind(ski["boot"]), 1 - behind(ski["boot"])
    whole = 1 / (2 * fit(1, eta)[0])
    lean = np.arctan(lean_speed**2 / (9.81 * whole))
    hold = np.degrees(angle - phi - bevel - lean)
    sole_from, sole_to = ski["soleEnds"]
    slips = np.flatnonzero(hold <= 0)
    lost_behind, lost_ahead = slips[x[slips] < sole_from], slips[x[slips] > sole_to]
    where = lambda k: x[k] + h * hold[k] / (hold[k] - hold[k + 1])
    return dict(
        rearRadiusM=1 / (2 * fit(rear, eta)[0]), rearTold=told(rear),
        frontRadiusM=1 / (2 * fit(front, eta)[0]), frontTold=told(front),
        wholeRadiusM=whole, deepestMm=1e3 * e.max(),
        twistTipDeg=np.degrees(phi[-1]), twistTailDeg=np.degrees(phi[0]),
        loadBehindSole=force @ behind(sole_from) / boxes.load, loadAheadOfSole=1 - force @ behind(sole_to) / boxes.load,
        leanDeg=np.degrees(lean), holdTipDeg=hold[-1], holdTailDeg=hold[0],
        holdsFromM=where(lost_behind[-1]) if lost_behind.size else 0.0,
        holdsToM=where(lost_ahead[0] - 1) if lost_ahead.size else length,
        stations=[dict(x=p, penetrationMm=1e3 * np.interp(p, x, e), grooveMm=1e3 * np.interp(p, x, deepest),
                       twistDeg=np.degrees(np.interp(p, x, phi))) for p in stations])


def refined(ski, angle, load, hardness, fore, lean_speed, bevel, stations, intervals=560, meshes=4):
    """The answers on meshes of halving interval, the last the best."""
    answers, u, before = [], None, None
    for mesh in range(meshes):
        boxes = Boxes(ski, angle, load, hardness, fore, intervals * 2**mesh)
        if u is None:
            u = harden(boxes, start_evenly(boxes, ski["length"]))
        else:
            u = np.concatenate([np.interp(boxes.x, before, part) for part in u.reshape(7, -1)])
            u, worst = boxes.newton(u, REBOUND, 100)
            assert u is not None, f"{boxes.points} points did not balance: {worst:.1e}"
        before = boxes.x
        answer = read(boxes, u, ski, lean_speed, bevel, stations)
        print(f"{boxes.points - 1} intervals: R {answer['wholeRadiusM']:.6f} m, deepest {answer['deepestMm']:.6f} mm, "
              f"tip {answer['twistTipDeg']:.6f} deg, tail {answer['twistTailDeg']:.6f} deg", file=sys.stderr)
        answers.append(dict(intervals=boxes.points - 1, **answer))
    return answers
