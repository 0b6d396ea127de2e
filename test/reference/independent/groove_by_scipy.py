"""Independent answers for the ski in its groove, with general-purpose tools only (numpy, scipy).

Three ways, none sharing a line with the program:
  virgin   every point meets untouched snow: a boundary value problem, solved by scipy.integrate.solve_bvp
           (collocation on an adaptive mesh) on three stretches: behind, under and ahead of the sole.
  groove   points behind meet the groove cut by the points ahead: Ritz method with Legendre polynomials for
           height and twist over 6000 quadrature points, solved by scipy.optimize.least_squares,
           the snow's rebound being hardened in steps from 30 mm to 0.2 mm.
  twisting the same with a ski that bends and twists, the boot's load shifted too: finite differences on meshes of
           halving interval (twisting_groove.py, which re-states the equations); first checked here against "groove".

Source of the equations: section "Carve: the ski in its groove" of the project's physics.
Run: python3 groove_by_scipy.py > groove-by-scipy.json, then format the json as the rest of the project
(a few minutes; made with numpy 2.4.6 and scipy 1.17.1; 1.10.1, Debian 12's python3-scipy, gives the same to 1e-12)
"""
import json
import sys

import numpy as np
from numpy.polynomial import legendre
from scipy.integrate import solve_bvp
from scipy.optimize import least_squares

import twisting_groove

SKI = dict(length=1.4, radius=12.5, waist=0.066, taper=0.013, ei=(330.0, 50.0), gj=(170.0, 30.0),
           camber=0.007, boot=0.66, sole=0.3)
L = SKI["length"]
REAR, FRONT = SKI["boot"] - SKI["sole"] / 2, SKI["boot"] + SKI["sole"] / 2


def hump(x, ends):
    return ends[1] + (ends[0] - ends[1]) * (1 - np.abs(2 * x / L - 1) ** 1.6)


def half_width(x):
    return SKI["waist"] / 2 + (x - L / 2) ** 2 / (2 * SKI["radius"]) + SKI["taper"] / 2 * (x - L / 2) / L


def snow(e, y, angle, hardness):
    """Line load and twisting moment of the section below the snow surface (angle above zero)."""
    e = np.maximum(e, 0)
    width = np.minimum(e / np.sin(angle), 2 * y)
    wedge = e <= 2 * y * np.sin(angle)
    area = np.where(wedge, e * e / (2 * np.tan(angle)), 2 * y * np.cos(angle) * (e - y * np.sin(angle)))
    moment = np.where(wedge, area * (y - width / 3), 2 / 3 * y**3 * np.sin(angle) * np.cos(angle))
    return hardness * area, hardness * moment


CAMBER_CURVATURE = -8 * SKI["camber"] / L**2


def virgin(angle, load, hardness, twists):
    spans = [(0, REAR), (REAR, FRONT), (FRONT, L)]

    def slopes(s, u):
        out = np.zeros_like(u)
        for k, (a, b) in enumerate(spans):
            x = a + (b - a) * s
            w, dw, m, v, phi, t = u[6 * k:6 * k + 6]
            y = half_width(x)
            f, moment = snow(y * np.sin(angle - phi) - w * np.cos(angle), y, angle - phi, hardness)
            boot = load / SKI["sole"] if k == 1 else 0.0
            held = k == 1 or not twists
            out[6 * k:6 * k + 6] = (b - a) * np.array([
                dw, m / hump(x, SKI["ei"]) + CAMBER_CURVATURE, v, f - boot,
                0 * x if held else t / hump(x, SKI["gj"]), 0 * x if held else -moment])
        return out

    def ends(p, q):
        rows = [p[2], p[3], q[14], q[15]]
        for k in (0, 1):
            rows += [q[6 * k + i] - p[6 * k + 6 + i] for i in range(4)]
        rows += [p[10], p[11]]
        rows += [q[4], p[5]] if twists else [p[4], p[5]]
        rows += [p[16], q[17]] if twists else [p[16], p[17]]
        return np.array(rows)

    s = np.linspace(0, 1, 60)
    guess = np.zeros((18, s.size))
    e0 = np.sqrt(2 * load / L * np.tan(angle) / hardness)
    for k, (a, b) in enumerate(spans):
        x = a + (b - a) * s
        guess[6 * k] = half_width(x) * np.tan(angle) - e0 / np.cos(angle)
        guess[6 * k + 1] = np.gradient(guess[6 * k], x)
    found = solve_bvp(slopes, ends, s, guess, tol=1e-8, max_nodes=200000)
    assert found.success, found.message

    def at(x):
        k = 0 if x < REAR else 1 if x < FRONT else 2
        a, b = spans[k]
        u = found.sol((x - a) / (b - a))[6 * k:6 * k + 6]
        y = half_width(x)
        e = y * np.sin(angle - u[4]) - u[0] * np.cos(angle)
        return u[0], e, u[4]

    return at


def groove(angle, load, hardness, twists, degree=26, twist_degree=9, points=6000):
    x = (np.arange(points) + 0.5) * L / points
    dx = L / points
    z = 2 * x / L - 1
    eye = np.eye(degree)
    shapes = np.array([legendre.legval(z, eye[k]) for k in range(degree)])
    bends = np.array([legendre.legval(z, legendre.legder(eye[k], 2)) for k in range(degree)]) * (2 / L) ** 2
    bends[:2] = 0
    ei, gj, y = hump(x, SKI["ei"]), hump(x, SKI["gj"]), half_width(x)
    boot = np.where((x > REAR) & (x < FRONT), 1.0, 0.0)
    boot *= load / (boot.sum() * dx)
    turns = []
    if twists:
        for side in (-1, 1):
            span = REAR if side < 0 else L - FRONT
            out = np.maximum(0, (REAR - x) if side < 0 else (x - FRONT)) / span
            turns += [(out**k, side * k / span * np.where(out > 0, out, 0) ** (k - 1) * (out > 0))
                      for k in range(1, twist_degree + 1)]
    twist = np.array([t[0] for t in turns]) if turns else np.zeros((0, points))
    rate = np.array([t[1] for t in turns]) if turns else np.zeros((0, points))

    # Orthonormal in the elastic energy (rigid motions in height), which spares the solver the scaling.
    stiff = (bends * ei) @ bends.T * dx
    stiff_twist = (rate * gj) @ rate.T * dx if turns else np.zeros((0, 0))
    basis = np.eye(degree)
    lower = np.linalg.cholesky(stiff[2:, 2:])
    basis[2:, 2:] = np.linalg.inv(lower)
    shapes, bends = basis @ shapes, basis @ bends
    if turns:
        turn_basis = np.linalg.inv(np.linalg.cholesky(stiff_twist))
        twist, rate = turn_basis @ twist, turn_basis @ rate

    def fields(c, rebound):
        w, phi = c[:degree] @ shapes, c[degree:] @ twist if turns else 0 * x
        e = y * np.sin(angle - phi) - w * np.cos(angle)
        if rebound == np.inf:
            f, m = snow(e, y, angle - phi, hardness)
            return w, phi, e, f, m
        deepest = np.maximum.accumulate(np.maximum(e, 0)[::-1])[::-1]
        f, m = snow(deepest, y, angle - phi, hardness)
        kept = np.maximum(0, 1 - (deepest - e) / rebound)
        return w, phi, e, f * kept, m * kept

    def residual(c, rebound):
        w, phi, e, f, m = fields(c, rebound)
        curvature = c[:degree] @ bends - CAMBER_CURVATURE
        height = bends @ (ei * curvature) * dx - shapes @ (f - boot) * dx
        if not turns:
            return height
        return np.concatenate([height, rate @ (gj * (c[degree:] @ rate)) * dx - twist @ m * dx])

    e0 = np.sqrt(2 * load / L * np.tan(angle) / hardness)
    target = y * np.tan(angle) - e0 / np.cos(angle)
    c = np.concatenate([np.linalg.lstsq(shapes.T, target, rcond=None)[0], np.zeros(len(turns))])
    rebound, solved, factor = np.inf, None, 0.75
    while True:
        found = least_squares(residual, c, args=(rebound,), jac="3-point", x_scale="jac", xtol=1e-13,
                              ftol=1e-15, gtol=1e-13, max_nfev=400 if solved is None else 40)
        worst = np.abs(found.fun).max() / load
        print(f"rebound {rebound * 1e3:.3f} mm, worst residual {worst:.1e}", file=sys.stderr)
        if worst < 1e-7:
            c, solved = found.x, rebound
            if rebound <= 0.2e-3:
                break
        else:
            factor = factor**0.6
            assert factor < 0.998
        rebound = max(0.2e-3, min(0.03, factor * solved))
    w, phi, e, f, m = fields(c, rebound)
    weight = f * (x <= SKI["boot"])
    eta = y * np.cos(angle - phi) + w * np.sin(angle)
    fit = np.polyfit(x, eta, 2, w=np.sqrt(weight))
    whole = np.polyfit(x, eta, 2, w=np.sqrt(f))
    at = lambda p: tuple(float(np.interp(p, x, a)) for a in (w, e, phi))
    return at, 1 / (2 * fit[0]), 1 / (2 * whole[0])


STATIONS = [0.02, 0.2, 0.4, 0.66, 0.9, 1.1, 1.25, 1.38]


def case(kind, degrees, load, hardness, twists):
    angle = np.radians(degrees)
    entry = dict(kind=kind, edgeDeg=degrees, loadN=load, hardnessNPerMm3=hardness, twists=twists)
    if kind == "virgin":
        at = virgin(angle, load, hardness * 1e9, twists)
    else:
        at, turn, whole = groove(angle, load, hardness * 1e9, twists)
        entry.update(rearRadiusM=turn, wholeRadiusM=whole)
    rows = [at(x) for x in STATIONS]
    entry["stations"] = [dict(x=x, penetrationMm=float(e * 1e3), twistDeg=float(np.degrees(phi)))
                         for x, (w, e, phi) in zip(STATIONS, rows)]
    return entry


def ski_of(gj):
    return dict(SKI, soleEnds=(REAR, FRONT), half_width=half_width, bending=lambda x: hump(x, SKI["ei"]),
                torsion=lambda x: hump(x, gj))


def rounded(value):
    if isinstance(value, dict):
        return {k: rounded(v) for k, v in value.items()}
    if isinstance(value, list):
        return [rounded(v) for v in value]
    return float(f"{value:.9g}") if isinstance(value, float) else value


def twisting(degrees, load, hardness, gj, speed, fore=0.0, bevel_degrees=1.0):
    """A ski soft in torsion; the speed (m/s, level ground) sets how far the resultant leans on the shelf."""
    print(f"twisting, {degrees} deg, {load} N, {hardness} N/mm3, fore {fore} m", file=sys.stderr)
    answers = twisting_groove.refined(ski_of(gj), np.radians(degrees), load, hardness * 1e9, fore, speed,
                                      np.radians(bevel_degrees), STATIONS)
    meshes = ("intervals", "rearRadiusM", "wholeRadiusM", "twistTipDeg", "twistTailDeg", "deepestMm", "holdsFromM",
              "holdsToM")
    best = {k: v for k, v in answers[-1].items() if k != "intervals"}
    return rounded(dict(edgeDeg=degrees, loadN=load, hardnessNPerMm3=hardness, gj=gj, foreM=fore, speedMPerS=speed,
                        baseBevelDeg=bevel_degrees, **best, refinement=[{k: a[k] for k in meshes} for a in answers]))


def check_twisting(degrees, load, hardness):
    """Differences and Ritz's method must agree on the ski as it is, twist and memory and all. Ritz's is the cruder:
    with 9, then 12 polynomials of twist its depth is 0.06, then 0.02 mm short of what the differences converge to."""
    angle = np.radians(degrees)
    at, _, whole = groove(angle, load, hardness * 1e9, True, twist_degree=12)
    boxes = twisting_groove.refined(ski_of(SKI["gj"]), angle, load, hardness * 1e9, 0.0, 0.0, 0.0, STATIONS,
                                    meshes=3)[-1]
    depth = max(abs(1e3 * at(p["x"])[1] - p["penetrationMm"]) for p in boxes["stations"])
    twist = max(abs(np.degrees(at(p["x"])[2]) - p["twistDeg"]) for p in boxes["stations"])
    print(f"Ritz against differences: R {whole:.6f}, {boxes['wholeRadiusM']:.6f} m; "
          f"depth within {depth:.1e} mm, twist within {twist:.1e} deg", file=sys.stderr)
    assert abs(whole / boxes["wholeRadiusM"] - 1) < 1e-4 and depth < 0.01 * boxes["deepestMm"] and twist < 0.001


if __name__ == "__main__":
    check_twisting(50, 1200, 1)
    cases = [
        case("virgin", 50, 1200, 1, False),
        case("virgin", 60, 800, 0.1, False),
        case("virgin", 45, 1200, 10, True),
        case("groove", 50, 1200, 1, False),
        case("groove", 40, 1500, 0.1, False),
    ]
    soft, softer = (80.0, 15.0), (60.0, 12.0)
    twisted = [
        twisting(45, 1200, 10, soft, 9.0),
        twisting(60, 1000, 1, soft, 9.6),
        twisting(25, 600, 30, softer, 6.8),
        twisting(35, 1000, 0.1, soft, 8.0),
        twisting(55, 1000, 0.1, soft, 9.5),
        twisting(50, 1200, 1, soft, 9.2, fore=0.08),
        twisting(65, 1500, 10, softer, 9.5, fore=-0.06),
    ]
    json.dump(dict(ski=SKI, cases=cases, twisting=twisted), sys.stdout, indent=1)
    print()
