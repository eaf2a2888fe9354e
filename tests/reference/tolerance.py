"""Good pencils from tolerances, once more, with vectors of numpy.

The same model as `solver::tolerance`, written from its definition: every error is thrown by itself,
the row is laid out here, and the wall is that of a hexagon or a circle. Nothing is shared with the
solver but the definition.

    python3 tolerance.py < case.json      one case; the answer is printed as JSON
    python3 tolerance.py --store FILE     every case of a file, whose answers are written into it

Lengths are in mm. A case has: shape (hexagonal or round), size, corner, coat, turn in degrees (a
multiple of 30), lead, slat_width, clearance, land, edge, wall, eccentricity; errors, one standard
deviation for each name in ERRORS; offsets top_width, bottom_width and bottom_thickness; sandwiches
and seed.
"""

import json
import sys
import time

import numpy as np

ERRORS = [
    "groove_position",
    "shaping_position",
    "lead_diameter",
    "groove_head",
    "groove_depth",
    "slat_width",
    "bottom_thickness",
    "glue_shift",
    "shaping_across",
    "shaping_up",
]
CHUNK = 8192
SLACK = 1e-9


def outline(case):
    """Flat faces (normal, distance) and corners (centre, radius) of the bare outline, and its
    half width. A corner is nearest only where the lead lies beyond the normals of its faces."""
    half = case["size"] / 2 - case["coat"]
    if case["shape"] == "round":
        return [], [(0.0, 0.0, half)], half
    radius = max(case["corner"] - case["coat"], 0.0)
    turn = np.radians(case["turn"])
    # Standing on a face: normals at 30°, 90°, …, corners at 0°, 60°, …
    normals = turn + np.radians(30 + 60 * np.arange(6))
    faces = [(np.cos(a), np.sin(a), half) for a in normals]
    away = (half - radius) * 2 / np.sqrt(3)
    corners = [(away * np.cos(a), away * np.sin(a), radius) for a in turn + np.radians(60 * np.arange(6))]
    width = max(x + radius for x, _, _ in corners)
    return faces, corners, width


def distance(shape, faces, corners, x, y):
    """From a point to the outline, below 0 outside; the outline is convex."""
    if shape == "round":
        return corners[0][2] - np.hypot(x, y)
    least = np.min([f - nx * x - ny * y for nx, ny, f in faces], axis=0)
    for cx, cy, radius in corners:
        # Beyond the centre of the corner as seen along both faces beside it.
        size = np.hypot(cx, cy)
        ux, uy = cx / size, cy / size
        along, beside = (x - cx) * ux + (y - cy) * uy, (y - cy) * ux - (x - cx) * uy
        beyond = np.abs(beside) <= along * np.tan(np.pi / 6)
        least = np.where(beyond, radius - np.hypot(x - cx, y - cy), least)
    return least


def run(case):
    errors = {name: case["errors"][name] for name in ERRORS}
    offsets = case["offsets"]
    faces, corners, reach = outline(case)
    box, width = 2 * reach, case["slat_width"]
    pitch = box + case["land"]
    count = int(np.floor((width - 2 * case["edge"] - box + SLACK) / pitch)) + 1
    first = (width - box - pitch * (count - 1)) / 2 + reach
    places = first + pitch * np.arange(count)
    radius = case["lead"] / 2 + case["clearance"]
    random = np.random.default_rng(case["seed"])

    sandwiches = case["sandwiches"]
    histogram = np.zeros(count + 1, dtype=np.int64)
    good_at = np.zeros(count, dtype=np.int64)
    faults = np.zeros(4, dtype=np.int64)
    start = time.perf_counter()
    for begin in range(0, sandwiches, CHUNK):
        size = min(CHUNK, sandwiches - begin)

        def each(name):
            return errors[name] * random.standard_normal((size, count))

        def common(name):
            return errors[name] * random.standard_normal((size, 1))

        shift, shaping = common("glue_shift"), common("shaping_across")
        groove_bottom = each("groove_position") + common("groove_head")
        groove_top = each("groove_position") + common("groove_head") + shift
        depth_bottom, depth_top = common("groove_depth"), common("groove_depth")
        cutter = each("shaping_position") + shaping
        lead = case["lead"] + each("lead_diameter")
        width_bottom = width + offsets["bottom_width"] + common("slat_width")
        width_top = width + offsets["top_width"] + common("slat_width")
        thicker = offsets["bottom_thickness"] + common("bottom_thickness")

        x = (groove_bottom + groove_top) / 2 - cutter
        y = thicker + (depth_top - depth_bottom) / 2 - common("shaping_up")
        y = np.broadcast_to(y, x.shape)
        eccentric = np.hypot(x, y) > case["eccentricity"] + SLACK
        wall = distance(case["shape"], faces, corners, x, y)
        thin = wall < radius + case["wall"] - SLACK
        tight = lead > 2 * radius - np.abs(groove_top - groove_bottom) + SLACK
        tight |= lead > 2 * radius + depth_top + depth_bottom + SLACK
        incomplete = np.zeros_like(tight)
        left, right = places[0] + cutter[:, :1] - reach, places[-1] + cutter[:, -1:] + reach
        incomplete[:, :1] |= left < np.maximum(0, shift) - SLACK
        incomplete[:, -1:] |= right > np.minimum(width_bottom, width_top + shift) + SLACK

        good = ~(eccentric | thin | tight | incomplete)
        histogram += np.bincount(good.sum(axis=1), minlength=count + 1)
        good_at += good.sum(axis=0)
        faults += [kind.sum() for kind in (eccentric, thin, tight, incomplete)]
    seconds = time.perf_counter() - start

    numbers = np.arange(count + 1)
    mean = (histogram * numbers).sum() / sandwiches
    variance = (histogram * (numbers - mean) ** 2).sum() / (sandwiches - 1)
    return {
        "across": count,
        "good": mean,
        "error": float(np.sqrt(variance / sandwiches)),
        "histogram": histogram.tolist(),
        "good_at": good_at.tolist(),
        "faults": faults.tolist(),
        "sandwiches_a_second": round(sandwiches / seconds),
    }


def store(name):
    with open(name, encoding="utf-8") as file:
        stored = json.load(file)
    stored["made"] = f"python3 tolerance.py --store, numpy {np.__version__}"
    for case in stored["cases"]:
        case["answer"] = run(case)
        del case["answer"]["sandwiches_a_second"]
    with open(name, "w", encoding="utf-8") as file:
        json.dump(stored, file, indent=1)
        file.write("\n")


if __name__ == "__main__":
    if sys.argv[1:2] == ["--store"]:
        store(sys.argv[2])
    else:
        print(json.dumps(run(json.load(sys.stdin))))
