"""The best single pattern for a stick: worth most (`best_pattern`) or fullest (`fullest`).

Both exact, except that a branch and bound takes its best so far after `NODES` nodes: it is used where a table over the
length would be too large.
"""

from __future__ import annotations

from collections.abc import Sequence

from setout.plan.cutting.search.meter import Meter

NODES = 100_000
QUICK = 1000  # nodes tried before a table is made
TABLE = 20_000_000  # cells of the largest table


def best_pattern(
    sizes: Sequence[int], demand: Sequence[int], length: int, price: Sequence[float], wanted: float, meter: Meter
) -> tuple[float, list[int], bool]:
    """Rows (with repeats) that fit in `length`, at most `demand` of each, of the highest total price, or of any price
    over `wanted` when that is found sooner; and whether no pattern has a higher one."""
    rows = [row for row, p in enumerate(price) if p > 1e-9 and demand[row] and sizes[row] <= length]
    if not rows:
        return 0.0, [], True
    units = [row for row in rows for _ in range(min(demand[row], length // sizes[row]))]
    rows.sort(key=lambda row: (-price[row] / sizes[row], row))
    small = len(units) * length <= TABLE
    quick = max(QUICK, len(units) * length // 1000)  # nodes that take about as long as the table
    size, worth, most = [sizes[r] for r in rows], [price[r] for r in rows], [demand[r] for r in rows]
    value, chosen, proved = _by_branches(size, worth, most, rows, length, quick if small or wanted else NODES, meter)
    if wanted and not proved and value <= wanted and not small:
        value, chosen, proved = _by_branches(size, worth, most, rows, length, NODES, meter)
    if not proved and small and (value <= wanted or not wanted):
        meter.work += 1 + len(units) * (5 + length // 2000) // 5
        return (*_by_table([sizes[u] for u in units], [price[u] for u in units], units, length), True)
    return value, chosen, proved


def _by_table(size: list[int], worth: list[float], units: list[int], length: int) -> tuple[float, list[int]]:
    """The classic recursion over lengths, one unit after the other."""
    import numpy

    table = numpy.zeros(length + 1)
    better = []
    for s, w in zip(size, worth):
        with_it = table[: length + 1 - s] + w
        better.append(with_it > table[s:] + 1e-12)
        numpy.maximum(table[s:], with_it, out=table[s:])
    rest, chosen = length, []
    for n in range(len(units) - 1, -1, -1):
        if rest >= size[n] and better[n][rest - size[n]]:
            chosen.append(units[n])
            rest -= size[n]
    return float(table[length]), sorted(chosen)


def _by_branches(
    size: list[int], worth: list[float], most: list[int], rows: list[int], length: int, limit: int, meter: Meter
) -> tuple[float, list[int], bool]:
    """Rows in order of price for a length; the bound fills what is left with the next row, fractionally."""
    ratio = [w / s for w, s in zip(worth, size)] + [0.0]
    smallest = list(size) + [length + 1]
    for n in range(len(rows) - 1, -1, -1):
        smallest[n] = min(size[n], smallest[n + 1])
    best, choice = 0.0, []
    taken: list[list[int]] = []  # [place in rows, how many]
    n, rest, value, nodes, end = 0, length, 0.0, 0, len(rows)
    while True:
        while n < end and rest >= smallest[n] and value + rest * ratio[n] > best + 1e-9:
            count = rest // size[n]
            if count:
                if count > most[n]:
                    count = most[n]
                taken.append([n, count])
                rest -= count * size[n]
                value += count * worth[n]
            n += 1
            nodes += 1
        if value > best + 1e-9:
            best, choice = value, [tuple(pair) for pair in taken]
        if not taken or nodes > limit:
            break
        n = taken[-1][0]
        taken[-1][1] -= 1
        rest += size[n]
        value -= worth[n]
        if not taken[-1][1]:
            taken.pop()
        n += 1
    meter.work += 1 + nodes // 4
    return best, sorted(rows[n] for n, count in choice for _ in range(count)), not taken


def fullest(sizes: Sequence[int], demand: Sequence[int], length: int, meter: Meter) -> list[int]:
    """Rows that fill `length` as far as they can, the longest first among equally full ones.

    The lengths that can be reached are the bits of a whole number, one such number for every unit added.
    """
    units = [
        row
        for row, n in enumerate(demand)
        if n and 0 < sizes[row] <= length
        for _ in range(min(n, length // sizes[row]))
    ]
    units.sort(key=lambda row: sizes[row])
    mask = (1 << (length + 1)) - 1
    reached = [1]
    for row in units:
        bits = reached[-1]
        reached.append((bits | bits << sizes[row]) & mask)
    meter.work += 1 + len(units) * (1 + length // 100_000) // 4
    rest = reached[-1].bit_length() - 1
    chosen = []
    for n in range(len(units) - 1, -1, -1):
        size = sizes[units[n]]
        if rest >= size and reached[n] >> (rest - size) & 1:
            chosen.append(units[n])
            rest -= size
    return sorted(chosen)
