"""Order plans, stated once more for a general solver of mixed-integer programs.

The answers in orders.json were made with HiGHS (highspy 1.x) and `--store`; without it the stored
answers are compared with fresh ones. Given the program `orders` (`cargo build --profile bench -p tests
--bin orders`) and sizes such as 20x3x12, it plans invented books with both in turn and prints seconds,
costs and gaps:

    python3 orders.py target/release/orders 20x3x1 50x6x1 --seconds 20

It shares no code with the program: all is whole, and nothing is left out beforehand.
"""

import json
import math
import pathlib
import random
import subprocess
import sys
import time

import highspy

STORE = pathlib.Path(__file__).with_name("orders.json")


def book(seed):
    """A small order book in the form of the draft, in which all that is planned matters."""
    dice = random.Random(seed)
    periods, pencils, stocks = dice.randint(1, 4), dice.randint(2, 4), dice.randint(1, 3)

    def tiers():
        price = dice.randint(300, 900)
        breaks = sorted(dice.sample(range(2, 12), dice.randint(0, 2)))
        return [[1, price]] + [
            [start, price * (100 - 7 * (n + 1)) // 100] for n, start in enumerate(breaks)
        ]

    return {
        "seed": seed,
        "periods": periods,
        "pencils": [
            {
                "due": [dice.choice([0, dice.randint(20, 300)]) for _ in range(periods)],
                "on_hand": dice.choice([0, 40]),
                "holding": dice.randint(0, 900),
            }
            for _ in range(pencils)
        ],
        "stocks": [
            {
                "on_hand": dice.choice([0, dice.randint(1, 60)]),
                "holding": dice.randint(0, 500),
                "usable": dice.choice([1_000_000, 950_000]),
                "cubic_millimetres": dice.randint(60_000, 75_000),
            }
            for _ in range(stocks)
        ],
        "setups": [
            {
                "laid": [
                    {
                        "pencil": n % pencils,
                        "leads": dice.randint(6, 10),
                        "good": dice.randint(850_000, 1_000_000),
                    }
                ],
                "bottom": dice.randrange(stocks),
                "top": dice.randrange(stocks),
                "milliseconds": dice.randint(500, 3_000),
                "changeover_cost": [dice.randint(0, 900)] * periods,
                "changeover_seconds": dice.randint(0, 60),
                "credit": 0,
            }
            for n in range(pencils + dice.randint(0, 4))
        ],
        "offers": [
            {
                "stock": n % stocks,
                "pack_slats": dice.randint(10, 40),
                "tiers": tiers(),
                "incremental": dice.random() < 0.4,
                "order_cost": dice.choice([0, dice.randint(50, 600)]),
                "least_packs": dice.randint(0, 3),
                "most_packs": dice.randint(4, 15),
                "lead_periods": 1 if n >= stocks and dice.random() < 0.3 else 0,
            }
            for n in range(stocks + dice.randint(0, 2))
        ],
        "hour_cost": dice.randint(0, 5_000),
        "seconds": [dice.choice([None, dice.randint(100, 400)]) for _ in range(periods)],
        "stages": [1_000_000, 995_000, 990_000, 990_000, 1_000_000, 980_000],
        "leads": dice.randint(0, 3_000),
        "glued": dice.randint(0, 1_000),
        "coated": dice.randint(0, 1_000),
    }


def good_pencils(book, laid):
    """Millionths, rounded down, with twelve more digits on the way."""
    left = laid["leads"] * laid["good"] * 10**12
    for stage in book["stages"]:
        left = left * stage // 10**6
    return left // 10**12


def machine_cost(book, milliseconds):
    """Thousandths of a hundredth, to the nearest."""
    return (milliseconds * book["hour_cost"] + 1_800) // 3_600


def materials(book, leads):
    """Leads, glue and coat of a sandwich, thousandths of a hundredth, to the nearest."""
    laying, gluing, shaping = book["stages"][:3]
    whole = 10**18
    total = (
        leads * book["leads"] * whole
        + book["glued"] * laying * 10**12
        + leads * book["coated"] * laying * gluing * shaping
    )
    return (total + whole // 2) // whole


class Model:
    """Rows and columns; costs in hundredths."""

    def __init__(self):
        self.solver = highspy.Highs()
        self.solver.setOptionValue("output_flag", False)
        self.solver.setOptionValue("threads", 1)
        self.columns = 0

    def add(self, cost, most, whole):
        self.solver.addVar(0, most)
        self.solver.changeColCost(self.columns, cost)
        if whole:
            self.solver.changeColIntegrality(self.columns, highspy.HighsVarType.kInteger)
        self.columns += 1
        return self.columns - 1

    def row(self, least, most, terms):
        sums = {}
        for column, value in terms:
            sums[column] = sums.get(column, 0) + value
        self.solver.addRow(least, most, len(sums), list(sums), list(sums.values()))


def model(book, whole):
    """The model of the book; runs and stores are fractions where `whole` is false."""
    built, periods, far = Model(), book["periods"], highspy.kHighsInf
    due = []
    for pencil in book["pencils"]:
        left, row = pencil["on_hand"], []
        for wanted in pencil["due"]:
            served = min(wanted, left)
            left -= served
            row.append(wanted - served)
        due.append(row)
    good = [
        {laid["pencil"]: good_pencils(book, laid) / 1e6 for laid in setup["laid"]}
        for setup in book["setups"]
    ]
    run, opened, slats = {}, {}, [[[] for _ in range(periods)] for _ in book["stocks"]]
    for j, setup in enumerate(book["setups"]):
        leads = sum(laid["leads"] for laid in setup["laid"])
        sandwich = machine_cost(book, setup["milliseconds"]) + materials(book, leads)
        change = machine_cost(book, 1_000 * setup["changeover_seconds"])
        for t in range(periods):
            useful = [math.ceil(sum(due[i][t:]) / each) for i, each in good[j].items() if each > 0]
            most = max(useful, default=0)
            run[j, t] = built.add((sandwich - setup["credit"]) / 1e3, most, whole)
            opened[j, t] = built.add(setup["changeover_cost"][t] + change / 1e3, 1, True)
            built.row(-far, 0, [(run[j, t], 1), (opened[j, t], -most)])
            for stock in (setup["bottom"], setup["top"]):
                slats[stock][t].append((run[j, t], -1))
    for i, pencil in enumerate(book["pencils"]):
        before = None
        for t in range(periods):
            terms = [(run[j, t], each[i]) for j, each in enumerate(good) if i in each]
            if before is not None:
                terms.append((before, 1))
            before = built.add(pencil["holding"] / 1e3, far, whole)
            built.row(due[i][t], far, terms + [(before, -1)])
    for offer in book["offers"]:
        stock, lead = offer["stock"], offer["lead_periods"]
        pack = offer["pack_slats"] * book["stocks"][stock]["usable"] // 10**6
        for t in range(periods - lead):
            base, chosen = offer["order_cost"], []
            for r, (start, price) in enumerate(offer["tiers"]):
                if offer["incremental"] and r:
                    base += (offer["tiers"][r - 1][1] - price) * (start - 1)
                least, most = max(start, offer["least_packs"]), offer["most_packs"]
                if r + 1 < len(offer["tiers"]):
                    most = min(most, offer["tiers"][r + 1][0] - 1)
                if least > most:
                    continue
                packs, order = built.add(price, most, True), built.add(base, 1, True)
                built.row(-far, 0, [(packs, 1), (order, -most)])
                built.row(0, far, [(packs, 1), (order, -least)])
                slats[stock][t + lead].append((packs, pack))
                chosen.append((order, 1))
            if chosen:
                built.row(-far, 1, chosen)
    for k, stock in enumerate(book["stocks"]):
        before = None
        for t in range(periods):
            there = stock["on_hand"] if t == 0 else 0
            terms = slats[k][t] + ([] if before is None else [(before, 1)])
            before = built.add(stock["holding"] / 1e3, far, whole)
            built.row(-there, far, terms + [(before, -1)])
    for t, seconds in enumerate(book["seconds"]):
        if seconds is not None:
            terms = []
            for j, setup in enumerate(book["setups"]):
                terms.append((run[j, t], setup["milliseconds"] / 1e3))
                terms.append((opened[j, t], setup["changeover_seconds"]))
            built.row(-far, seconds, terms)
    return built.solver


def least_cost(book):
    """Least cost in hundredths; nothing where there is no plan."""
    solver = model(book, True)
    solver.setOptionValue("mip_rel_gap", 0.0)
    solver.setOptionValue("mip_abs_gap", 0.0)
    solver.setOptionValue("time_limit", 60.0)
    solver.run()
    status = solver.getModelStatus()
    if status == highspy.HighsModelStatus.kInfeasible:
        return "none"
    if status != highspy.HighsModelStatus.kOptimal:
        return None
    return round(solver.getInfo().objective_function_value, 3)


def beside(program, size, seed, seconds):
    """One invented book with both, runs and stores as fractions in the general solver."""
    made = json.loads(subprocess.check_output([program, size, str(seed)]))
    solver = model(made, False)
    solver.setOptionValue("time_limit", seconds)
    begun = time.time()
    solver.run()
    took, info = time.time() - begun, solver.getInfo()
    theirs = (info.objective_function_value, info.mip_dual_bound)
    command = [program, size, str(seed), "100000000", str(math.ceil(seconds))]
    lines = subprocess.check_output(command, text=True).splitlines()
    ours_took, word, cost, bound = lines[-1].split()[:4]
    cost, bound = int(cost) / 1e3, int(bound) / 1e3
    best = min(cost, theirs[0])
    soon = [line.split() for line in lines[:-1] if "Some" in line]
    soon = [word[0] for word in soon if int(word[1][5:-1]) / 1e3 <= 1.005 * best]
    near = [line.split()[0] for line in lines[:-1] if float(line.split()[3]) <= 1e-4]
    print(
        f"{size} {seed}: general {took:.2f} s, {theirs[0]:.0f}, gap {info.mip_gap:.5f}; "
        f"ours {ours_took} s, {cost:.0f}, gap {1 - bound / cost:.5f}, {word}; "
        f"gap 0.0001 after {near[0] if near else '-'} s; "
        f"cost within 0.5 % of the better after {soon[0] if soon else '-'} s",
        flush=True,
    )


def main():
    words = sys.argv[1:]
    if words and words[0] != "--store":
        seconds = float(words[words.index("--seconds") + 1]) if "--seconds" in words else 20.0
        for size in [word for word in words[1:] if "x" in word]:
            for seed in (1, 2, 3):
                beside(words[0], size, seed, seconds)
        return
    books, seed = [], 0
    while len(books) < 60:
        seed += 1
        one = book(seed)
        least = least_cost(one)
        if least is not None:
            books.append(one | {"least": least})
    if words:
        rows = ",\n".join(" " + json.dumps(one) for one in books)
        STORE.write_text(f"[\n{rows}\n]\n")
    else:
        assert json.loads(STORE.read_text()) == books
        print(f"{len(books)} books as stored")


if __name__ == "__main__":
    main()
