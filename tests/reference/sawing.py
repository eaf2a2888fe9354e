"""Small saw shops, solved with every pattern by a general solver of mixed-integer programs.

The answers in sawing.json were made with HiGHS (highspy 1.x) and `--store`; without it the stored
answers are compared with fresh ones. It shares no code with the program: all ways of sawing a plank
are listed, n pieces with n - 1 cuts between them, and the solver chooses among them, with no gap.
"""

import json
import pathlib
import random
import sys

import highspy

STORE = pathlib.Path(__file__).with_name("sawing.json")


def shop(seed):
    """A shop of one to three kinds of plank and two to five kinds of blank, in millimetres."""
    dice = random.Random(seed)
    lengths = dice.sample(range(11, 26), 3)
    return {
        "seed": seed,
        "crosscut_kerf": dice.randint(0, 3),
        "rip_kerf": dice.randint(0, 2),
        "planks": [
            {
                "length": dice.randint(40, 60),
                "width": dice.randint(8, 15),
                "thickness": dice.randint(5, 8),
                "end_trim": dice.randint(0, 2),
                "edge_trim": dice.randint(0, 1),
                "price": dice.randint(20, 60),
            }
            for _ in range(dice.randint(1, 3))
        ],
        "blanks": [
            {
                "length": dice.choice(lengths),
                "width": dice.randint(2, 5),
                "thickness": dice.randint(3, 8),
                "demand": dice.randint(1, 40),
            }
            for _ in range(dice.randint(2, 5))
        ],
    }


def sections(shop, plank):
    """All ways to rip a section, with its length."""
    width = plank["width"] - 2 * plank["edge_trim"]
    kinds = shop["blanks"]
    found = []

    def more(at, counts, pieces, across):
        if at == len(kinds):
            if pieces:
                length = next(kinds[i]["length"] for i, n in enumerate(counts) if n)
                found.append((length, tuple(counts)))
            return
        kind = kinds[at]
        fits = kind["width"] <= plank["thickness"] and all(
            kinds[i]["length"] == kind["length"] for i, n in enumerate(counts) if n
        )
        n = 0
        while True:
            total, all_pieces = across + n * kind["thickness"], pieces + n
            if n and (not fits or total + (all_pieces - 1) * shop["rip_kerf"] > width):
                break
            more(at + 1, counts + [n], all_pieces, total)
            n += 1

    more(0, [], 0, 0)
    return found


def patterns(shop, plank):
    """All that can come of a plank and cannot come with more of one kind beside."""
    length = plank["length"] - 2 * plank["end_trim"]
    kinds = sections(shop, plank)
    found = set()

    def more(at, made, used, cut):
        found.add(made)
        for i in range(at, len(kinds)):
            section, counts = kinds[i]
            if used + section + cut * shop["crosscut_kerf"] <= length:
                more(i, tuple(a + b for a, b in zip(made, counts)), used + section, cut + 1)

    more(0, (0,) * len(shop["blanks"]), 0, 0)
    found.discard((0,) * len(shop["blanks"]))
    return [
        one
        for one in found
        if not any(one != other and all(a <= b for a, b in zip(one, other)) for other in found)
    ]


def solve(shop):
    """Least price, or nothing where a blank fits no plank."""
    columns = [(plank["price"], made) for plank in shop["planks"] for made in patterns(shop, plank)]
    if not all(any(made[i] for _, made in columns) for i in range(len(shop["blanks"]))):
        return None
    model = highspy.Highs()
    model.setOptionValue("output_flag", False)
    model.setOptionValue("mip_rel_gap", 0.0)
    model.setOptionValue("mip_abs_gap", 0.0)
    planks = [model.addIntegral(lb=0, obj=price) for price, _ in columns]
    for i, blank in enumerate(shop["blanks"]):
        made = sum(made[i] * x for x, (_, made) in zip(planks, columns) if made[i])
        model.addConstr(made >= blank["demand"])
    model.run()
    assert model.getModelStatus() == highspy.HighsModelStatus.kOptimal
    return round(model.getInfo().objective_function_value)


def main():
    shops, seed = [], 0
    while len(shops) < 60:
        seed += 1
        one = shop(seed)
        least = solve(one)
        if least is not None:
            shops.append(one | {"least": least})
    if "--store" in sys.argv:
        rows = ",\n".join(" " + json.dumps(one) for one in shops)
        STORE.write_text(f"[\n{rows}\n]\n")
    else:
        assert json.loads(STORE.read_text()) == shops
        print(f"{len(shops)} shops as stored")


if __name__ == "__main__":
    main()
