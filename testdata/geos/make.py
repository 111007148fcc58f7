#!/usr/bin/env python3
"""Writes outlines.csv and values.csv beside itself: twelve outlines and what GEOS says of them.

Needs Debian 12's python3-shapely (Shapely 1.8.5 on GEOS 3.11.1). Shapely 2 names the same calls alike.
"""
import csv
import math
import os

from shapely.geometry import JOIN_STYLE, Polygon

DIRECTIONS = 256  # as many as a slice of the program has, so that nothing is lost on the way


def superellipse(a, b, n):
    return lambda t: (abs(math.cos(t) / a) ** n + abs(math.sin(t) / b) ** n) ** (-1 / n)


def lobed(a, b, deep, narrow):
    """An ellipse with a hollow in front, as between two bust points."""
    oval = superellipse(a, b, 2)
    return lambda t: oval(t) - deep * math.exp(-((t - math.pi / 2) / narrow) ** 2)


SHAPES = {
    "circle": superellipse(100, 100, 2),
    "oval": superellipse(150, 110, 2),
    "flat oval": superellipse(170, 70, 2),
    "waist": superellipse(122, 84, 2.8),
    "hip": superellipse(177, 116, 3.7),
    "tight waist": superellipse(78, 70, 2.2),
    "egg": lambda t: superellipse(140, 105, 2)(t) * (1 + 0.08 * math.sin(t) + 0.03 * math.cos(t)),
    "three sides": lambda t: 120 + 8 * math.cos(3 * t + 0.4),
    "two lobes": lobed(140, 115, 12, 0.35),
    "two deep lobes": lobed(150, 130, 45, 0.4),
    "bean": lambda t: superellipse(160, 90, 2)(t) - 30 * math.exp(-((t - 3 * math.pi / 2) / 0.6) ** 2),
    "crooked bean": lambda t: superellipse(150, 95, 2.4)(t) * (1 + 0.05 * math.cos(t)) - 25 * math.exp(-((t - 4.4) / 0.4) ** 2),
}

# Distances in mm: half an ease of 15 mm in radius, a sheet, two sheets, and inward.
DISTANCES = [2.4, 6, 12.7, -5]


def ring(radius):
    points = []
    for j in range(DIRECTIONS):
        t = 2 * math.pi * j / DIRECTIONS
        points.append((round(radius(t) * math.cos(t), 6), round(radius(t) * math.sin(t), 6)))
    return points


def values(p):
    hull = p.convex_hull
    yield "outline", 0, p
    yield "hull", 0, hull
    for d in DISTANCES:
        # Round corners, a quarter turn in 64 chords: a chord misses its arc by less than d / 13,000.
        yield "parallel of the hull", d, hull.buffer(d, 64)
    for d in DISTANCES[:-1]:
        # Pointed corners, as at the edge of a seam allowance.
        yield "pointed parallel", d, p.buffer(d, join_style=JOIN_STYLE.mitre, mitre_limit=2)


def main():
    here = os.path.dirname(os.path.abspath(__file__))
    with open(os.path.join(here, "outlines.csv"), "w", newline="") as f:
        w = csv.writer(f, lineterminator="\n")
        w.writerow(["shape", "x", "y"])
        for name, radius in SHAPES.items():
            w.writerows([name, x, y] for x, y in ring(radius))
    with open(os.path.join(here, "values.csv"), "w", newline="") as f:
        w = csv.writer(f, lineterminator="\n")
        w.writerow(["shape", "what", "distance", "area", "length"])
        for name, radius in SHAPES.items():
            p = Polygon(ring(radius))
            assert p.is_valid and p.exterior.is_ccw, name
            for what, d, q in values(p):
                w.writerow([name, what, d, round(q.area, 4), round(q.length, 5)])


if __name__ == "__main__":
    main()
