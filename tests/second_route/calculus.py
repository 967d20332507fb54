"""Numerical roots and integrals, so that an inverse or an area doesn't use the closed form that it checks."""
import math


def root(function, low, high):
    """Where a monotone function is 0, by halving [low, high] down to neighbouring numbers."""
    rising = function(high) > function(low)
    if (function(low) > 0) == (function(high) > 0) and function(low) and function(high):
        raise ValueError(f"no root between {low} and {high}")
    while True:
        middle = (low + high) / 2
        if middle in (low, high):
            return middle
        if (function(middle) > 0) == rising:
            high = middle
        else:
            low = middle


def _legendre(order, x):
    """The Legendre polynomial of that order and its derivative, by the three-term recurrence."""
    before, now = 1.0, x
    for k in range(2, order + 1):
        before, now = now, ((2 * k - 1) * x * now - (k - 1) * before) / k
    return now, order * (x * now - before) / (x * x - 1)


def _gauss_rule(order):
    """Nodes and weights of Gauss's rule on [-1, 1]: Newton from the cosine guess."""
    rule = []
    for k in range(order):
        x = math.cos(math.pi * (k + 0.75) / (order + 0.5))
        for _ in range(20):
            value, slope = _legendre(order, x)
            x -= value / slope
        rule.append((x, 2 / ((1 - x * x) * _legendre(order, x)[1] ** 2)))
    return rule


_RULE = _gauss_rule(20)


def integral(function, low, high, pieces=1):
    """Gauss's rule of 20 points on each of `pieces` equal parts."""
    width, total = (high - low) / pieces, 0.0
    for piece in range(pieces):
        middle = low + (piece + 0.5) * width
        total += sum(weight * function(middle + x * width / 2) for x, weight in _RULE)
    return total * width / 2


def slope(function, at, step):
    """Central difference."""
    return (function(at + step) - function(at - step)) / (2 * step)
