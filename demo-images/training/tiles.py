"""Near pictures on the accelerator, and tiles laid on them with the maps of what is in them."""

import json
import math
import os

import numpy as np
import torch
from torch.nn import functional as F

from spots import ANSWER, BEAD, SIDE

MOST = 256
# Balls and holes with a radius below this, in pixels of the tile, are neither asked for nor held against an answer.
LEAST = 2.6


class Near:
    """A growing heap of pictures: renderers append to their files while training goes on."""

    def __init__(self, folder, room_bytes, device):
        self.folder, self.device = folder, device
        self.heap = torch.empty(room_bytes, dtype=torch.uint8, device=device)
        self.used, self.done, self.at = 0, {}, {}
        self.items, self.scenarios = [], []
        self.tensors = None

    def grow(self):
        before = len(self.items)
        for name in sorted(os.listdir(self.folder)):
            if not (name.startswith("spots-") and name.endswith(".jsonl")):
                continue
            lines = [line for line in open(os.path.join(self.folder, name)).read().split("\n") if line.endswith("}")]
            with open(os.path.join(self.folder, name.replace(".jsonl", ".rgb")), "rb") as file:
                file.seek(self.at.get(name, 0))
                for line in lines[self.done.get(name, 0) :]:
                    truth = json.loads(line)
                    size = truth["widthPx"] * truth["heightPx"] * 3
                    pixels = file.read(size)
                    if len(pixels) < size or self.used + size > len(self.heap):
                        break
                    self.add(truth, pixels)
                    self.at[name] = self.at.get(name, 0) + size
                    self.done[name] = self.done.get(name, 0) + 1
        if len(self.items) > before:
            self.pack()
        return len(self.items) - before

    def add(self, truth, pixels):
        size = len(pixels)
        w, h = truth["widthPx"], truth["heightPx"]
        left, right = np.array(truth["leftToePx"], float).reshape(-1, 2), np.array(truth["rightToePx"], float).reshape(-1, 2)
        middle, width = (left + right) / 2, np.hypot(*(left - right).T)
        seen = (middle[:, 0] > 0) & (middle[:, 1] > 0) & (middle[:, 0] < w) & (middle[:, 1] < h)
        if seen.sum() >= 6:
            self.heap[self.used : self.used + size] = torch.frombuffer(bytearray(pixels), dtype=torch.uint8).to(self.device)
            spots = np.full((MOST, 4), -1e6)
            rows = np.array(truth["spots"], float).reshape(-1, 4)[:MOST]
            spots[: len(rows)] = rows
            ends = np.stack([middle[seen][0], middle[seen][-1]])
            self.items.append((self.used, w, h, float(np.median(width[seen])), len(rows), int((rows[:, 0] == 0).sum()), spots, ends))
            self.scenarios.append(truth["scenario"])
            self.used += size

    def pack(self):
        cols = list(zip(*self.items))
        t = lambda values, dtype=torch.float32: torch.tensor(np.array(values), dtype=dtype, device=self.device)
        self.tensors = dict(offset=t(cols[0], torch.int64), w=t(cols[1]), h=t(cols[2]), width=t(cols[3]), count=t(cols[4]),
                            holes=t(cols[5]), spots=t(cols[6]), ends=t(cols[7]))


def sample(heap, p, x, y):
    """Bilinear, 0..1, at places (B, H, W) of the pictures; 0.5 off them."""
    w, h = p["w"][:, None, None], p["h"][:, None, None]
    inside = (x >= 0) & (y >= 0) & (x <= w) & (y <= h)
    fx = torch.minimum((x - 0.5).clamp(min=0), w - 1.001)
    fy = torch.minimum((y - 0.5).clamp(min=0), h - 1.001)
    i, j = fx.long(), fy.long()
    u, v = (fx - i)[:, None], (fy - j)[:, None]
    wide = p["w"].long()[:, None, None]
    at = p["offset"][:, None, None] + 3 * (j * wide + i)
    c = torch.arange(3, device=x.device)[None, :, None, None]
    take = lambda k: heap[k[:, None] + c].float() / 255
    top = take(at) * (1 - u) + take(at + 3) * u
    low = take(at + 3 * wide) * (1 - u) + take(at + 3 * wide + 3) * u
    return torch.where(inside[:, None], top * (1 - v) + low * v, torch.full_like(top, 0.5))


def tiles(pictures, which, gen, steady=False):
    """Tiles (B, 3, SIDE, SIDE) 0..1, heat (B, 2, ANSWER, ANSWER), log radius and where it counts, and what is not asked."""
    p = {k: v[which] for k, v in pictures.tensors.items()}
    b, dev = len(which), which.device
    rnd = lambda *s: torch.rand(*s, device=dev, generator=gen)
    goal = torch.minimum(70 * (180 / 70) ** rnd(b), p["width"] * 1.15)
    if steady:
        goal = torch.minimum(torch.full((b,), float(BEAD), device=dev), p["width"])
    zoom = goal / p["width"]
    turn = torch.zeros(b, device=dev) if steady else (rnd(b) * 4).floor() * math.pi / 2 + 0.3 * torch.randn(b, device=dev, generator=gen)
    mirror = torch.ones(b, device=dev) if steady else torch.where(rnd(b) < 0.5, -1.0, 1.0)
    # About some place along the bead, or about one of the spots; holes before balls, there are fewer of them.
    along = rnd(b)[:, None]
    centre = p["ends"][:, 0] * (1 - along) + p["ends"][:, 1] * along
    pick = (rnd(b) * torch.where((rnd(b) < 0.5) & (p["holes"] > 0), p["holes"], p["count"].clamp(min=1))).long()
    order = torch.argsort(p["spots"][:, :, 0] + 1e9 * (p["spots"][:, :, 0] < 0), dim=1, stable=True)
    spot = torch.gather(p["spots"], 1, torch.gather(order, 1, pick[:, None])[:, :, None].expand(-1, -1, 4))[:, 0]
    about = (rnd(b) < 0.6) & (p["count"] > 0)
    centre = torch.where(about[:, None], spot[:, 1:3], centre)
    reach = torch.where(about, 0.4, 0.9) * SIDE / zoom
    centre = centre + (rnd(b, 2) - 0.5) * reach[:, None]
    c, s = turn.cos()[:, None, None], turn.sin()[:, None, None]
    fine = 2
    grid = (torch.arange(SIDE * fine, device=dev) + 0.5) / fine - SIDE / 2
    ux, uy = grid[None, None, :] * mirror[:, None, None], grid[None, :, None].expand(b, -1, -1)
    px = (1 / zoom)[:, None, None]
    x = centre[:, 0, None, None] + px * (c * ux - s * uy)
    y = centre[:, 1, None, None] + px * (s * ux + c * uy)
    picture = F.avg_pool2d(sample(pictures.heap, p, x, y), fine)
    # The spots in the tile's own pixels.
    kind = p["spots"][:, :, 0]
    dx, dy = p["spots"][:, :, 1] - centre[:, :1], p["spots"][:, :, 2] - centre[:, 1:]
    tx = (c[:, :, 0] * dx + s[:, :, 0] * dy) * zoom[:, None] * mirror[:, None] + SIDE / 2
    ty = (c[:, :, 0] * dy - s[:, :, 0] * dx) * zoom[:, None] + SIDE / 2
    radius = p["spots"][:, :, 3] * zoom[:, None]
    return picture, *maps(kind, tx, ty, radius)


def maps(kind, tx, ty, radius):
    dev = tx.device
    b = len(tx)
    cell = SIDE / ANSWER
    heat = torch.zeros(b, 2, ANSWER, ANSWER, device=dev)
    known = torch.ones(b, 2, ANSWER, ANSWER, device=dev)
    size = torch.zeros(b, ANSWER, ANSWER, device=dev)
    weight = torch.zeros(b, ANSWER, ANSWER, device=dev)
    there = (kind >= 0) & (tx > -8) & (ty > -8) & (tx < SIDE + 8) & (ty < SIDE + 8)
    which, n = torch.nonzero(there, as_tuple=True)
    k, x, y, r = kind[which, n].long(), tx[which, n] / cell, ty[which, n] / cell, radius[which, n]
    w = 15
    o = torch.arange(-w, w + 1, device=dev)
    i, j = x.floor().long()[:, None, None] + o[None, None, :], y.floor().long()[:, None, None] + o[None, :, None]
    i, j = i.expand(-1, 2 * w + 1, -1), j.expand(-1, -1, 2 * w + 1)
    ok = (i >= 0) & (j >= 0) & (i < ANSWER) & (j < ANSWER)
    far = torch.hypot(i + 0.5 - x[:, None, None], j + 0.5 - y[:, None, None])
    rc = (r / cell)[:, None, None]
    sigma = (0.35 * rc).clamp(0.7, 4)
    g = torch.exp(-0.5 * (far / sigma) ** 2)
    # The cell that holds the middle is one.
    g = torch.where((o[None, None, :] == 0) & (o[None, :, None] == 0), torch.ones_like(g), g) * (g > 1e-3)
    large = (r >= LEAST)[:, None, None].expand_as(g)
    flat = ((which[:, None, None] * 2 + k[:, None, None]) * ANSWER + j) * ANSWER + i
    use = ok & large & (g > 0)
    heat.view(-1).scatter_reduce_(0, flat[use], g[use], "amax")
    small = ok & ~large & (far < rc + 1.5)
    known.view(-1)[flat[small]] = 0
    near = ok & large & (far < (0.5 * rc).clamp(min=1.0))
    plane = (which[:, None, None] * ANSWER + j) * ANSWER + i
    size.view(-1)[plane[near]] = r.clamp(min=1e-3).log()[:, None, None].expand_as(g)[near]
    weight.view(-1)[plane[near]] = 1
    known = torch.where(heat > 0, torch.ones_like(known), known)
    return heat, size, weight, known


def loss_of(said, heat, size, weight, known):
    said = said.float()
    p = torch.sigmoid(said[:, :2]).clamp(1e-5, 1 - 1e-5)
    top = (heat > 0.999).float()
    count = top.sum().clamp(min=1)
    hit = -((1 - p) ** 2 * p.log() * top)
    miss = -((1 - heat) ** 4 * p**2 * (1 - p).log() * (1 - top) * known)
    far = (F.smooth_l1_loss(said[:, 2], size, reduction="none", beta=0.1) * weight).sum() / weight.sum().clamp(min=1)
    return (hit.sum() + miss.sum()) / count + 0.5 * far, far
