"""Whole pictures laid into squares for the finder, with the map of where beads lie."""

import math

import numpy as np
import torch
from torch.nn import functional as F

from finder import ANSWER, SIDE
from strips import Pictures, resample, sample

RING = 32
MOST = 4


class Whole(Pictures):
    """Pictures with the toes of every bead in them."""

    def __init__(self, *args):
        super().__init__(*args)
        self.rings = []

    def add(self, truth, pixels):
        before = len(self.items)
        if truth.get("plain"):
            # Of those it is not known what else lies in them.
            self.used += len(pixels)
            return
        super().add(truth, pixels)
        if len(self.items) == before:
            return
        rings = []
        for left, right in [(truth["leftToePx"], truth["rightToePx"])] + truth.get("before", []):
            if len(left) > 3:
                rings.append(np.concatenate([resample(np.array(left, float), RING), resample(np.array(right, float), RING)[::-1]]))
        while len(rings) < MOST:
            rings.append(np.full((2 * RING, 2), -1e6))
        self.rings.append(np.stack(rings[:MOST]))

    def pack(self):
        super().pack()
        self.tensors["rings"] = torch.tensor(np.stack(self.rings), dtype=torch.float32, device=self.device)


def inside(rings, x, y):
    """Whether places (B, N) lie in any of the rings (B, MOST, 2 RING, 2), by the parity of crossings."""
    out = torch.zeros_like(x, dtype=torch.bool)
    for m in range(rings.shape[1]):
        if bool((rings[:, m, 0, 0] < -1e5).all()):
            continue
        a, b = rings[:, m], rings[:, m].roll(-1, 1)
        odd = torch.zeros_like(out)
        for i in range(rings.shape[2]):
            ax, ay, bx, by = (v[:, None] for v in (a[:, i, 0], a[:, i, 1], b[:, i, 0], b[:, i, 1]))
            cross = (ay > y) != (by > y)
            at = ax + (y - ay) / torch.where(by == ay, torch.ones_like(by), by - ay) * (bx - ax)
            odd ^= cross & (x < at)
        out |= odd
    return out


def square(pictures, which, gen, steady=False):
    """Squares (B, 3, SIDE, SIDE) 0..1 and the map (B, ANSWER, ANSWER)."""
    p = {k: v[which] for k, v in pictures.tensors.items()}
    b, dev = len(which), which.device
    rnd = lambda *s: torch.rand(*s, device=dev, generator=gen)
    most = torch.maximum(p["w"], p["h"])
    if steady:
        zoom, turn, mirror = torch.ones(b, device=dev), torch.zeros(b, device=dev), torch.ones(b, device=dev)
        cx, cy = most / 2, most / 2
    else:
        zoom = torch.exp(-0.25 + 0.9 * rnd(b))
        turn = (rnd(b) * 4).floor() * math.pi / 2 + 0.15 * torch.randn(b, device=dev, generator=gen) + (rnd(b) < 0.3) * rnd(b) * 6.28
        mirror = torch.where(rnd(b) < 0.5, -1.0, 1.0)
        cx, cy = p["w"] * (0.5 + 0.5 * (rnd(b) - 0.5)), p["h"] * (0.5 + 0.5 * (rnd(b) - 0.5))
    px = (most / SIDE / zoom)[:, None, None]

    def places(n, per):
        u = (torch.arange(n, device=dev) + 0.5) / per - SIDE / 2
        ux, uy = u[None, None, :] * mirror[:, None, None], u[None, :, None].expand(b, -1, -1)
        c, s = turn.cos()[:, None, None], turn.sin()[:, None, None]
        return cx[:, None, None] + px * (c * ux - s * uy), cy[:, None, None] + px * (s * ux + c * uy)

    fine = 3
    picture, there = sample(pictures.heap, p, *places(SIDE * fine, fine))
    picture = F.avg_pool2d(picture, fine)
    x, y = places(ANSWER, ANSWER / SIDE)
    mask = inside(p["rings"], x.reshape(b, -1), y.reshape(b, -1)).reshape(b, ANSWER, ANSWER)
    seen = (x > 0) & (y > 0) & (x < p["w"][:, None, None]) & (y < p["h"][:, None, None])
    return picture, (mask & seen).float()
