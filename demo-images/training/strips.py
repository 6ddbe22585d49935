"""Pictures on the accelerator, and strips laid on them with their truth: everything in one batch, nothing on the processor."""

import json
import math
import os

import numpy as np
import torch
from torch.nn import functional as F

from net import COLUMNS, ROWS, STEP

MARGIN = 64
POINTS = 160


def resample(line, n=POINTS):
    return np.stack([np.interp(np.linspace(0, len(line) - 1, n), np.arange(len(line)), line[:, i]) for i in (0, 1)], 1)


class Pictures:
    """A growing heap of pictures: renderers append to their files while training goes on."""

    def __init__(self, folder, kind, room_bytes, device):
        self.folder, self.kind, self.device = folder, kind, device
        self.heap = torch.empty(room_bytes, dtype=torch.uint8, device=device)
        self.used, self.done, self.at = 0, {}, {}
        self.items, self.names = [], []
        self.tensors = None

    def grow(self):
        before = len(self.items)
        for name in sorted(os.listdir(self.folder)):
            if not (name.startswith(self.kind + "-") and name.endswith(".jsonl")):
                continue
            lines = open(os.path.join(self.folder, name)).read().split("\n")
            lines = [line for line in lines if line.endswith("}")]
            start = self.done.get(name, 0)
            with open(os.path.join(self.folder, name.replace(".jsonl", ".rgb")), "rb") as file:
                file.seek(self.at.get(name, 0))
                for line in lines[start:]:
                    truth = json.loads(line)
                    size = truth["widthPx"] * truth["heightPx"] * 3
                    pixels = file.read(size)
                    if self.used + size > len(self.heap):
                        return len(self.items) - before
                    self.add(truth, pixels)
                    self.at[name] = self.at.get(name, 0) + size
                    self.done[name] = self.done.get(name, 0) + 1
        if len(self.items) > before:
            self.pack()
        return len(self.items) - before

    def add(self, truth, pixels):
        left, right = np.array(truth["leftToePx"], float), np.array(truth["rightToePx"], float)
        if len(left) < 8:
            self.used += 0
        size = len(pixels)
        raw = torch.frombuffer(bytearray(pixels), dtype=torch.uint8)
        self.heap[self.used : self.used + size] = raw.to(self.device)
        middle = (left + right) / 2
        width = np.hypot(*(left - right).T)
        w, h = truth["widthPx"], truth["heightPx"]
        seen = (middle[:, 0] > 2) & (middle[:, 1] > 2) & (middle[:, 0] < w - 2) & (middle[:, 1] < h - 2)
        index = np.nonzero(seen)[0]
        typical = float(np.median(width[seen])) if seen.any() else 0.0
        if len(left) >= 8 and len(index) >= 8 and typical > 14:
            self.items.append((self.used, w, h, index[0] / (len(left) - 1), index[-1] / (len(left) - 1), typical,
                               len(index) / len(left), truth["beads"], resample(left), resample(right)))
            self.names.append((truth["scenario"], truth["seed"], truth["plain"]))
        self.used += size

    def pack(self):
        cols = list(zip(*self.items))
        t = lambda values, dtype=torch.float32: torch.tensor(np.array(values), dtype=dtype, device=self.device)
        self.tensors = dict(offset=t(cols[0], torch.int64), w=t(cols[1]), h=t(cols[2]), first=t(cols[3]), last=t(cols[4]),
                            width=t(cols[5]), beads=t(cols[7]), left=t(cols[8]), right=t(cols[9]))


def at(line, share):
    """Points of polylines (B, POINTS, 2) at a share 0..1 of their length in points."""
    f = (share * (POINTS - 1)).clamp(0, POINTS - 1.001)
    i = f.long()
    take = lambda j: torch.gather(line, 1, j[:, :, None].expand(-1, -1, 2))
    return take(i) + (take(i + 1) - take(i)) * (f - i)[:, :, None]


def rows_of(line, a, t, n, length, span, bend):
    """Rows of a toe in each kept column, NaN where it is not; `bend` is the strip's own sideways course in px per column."""
    d = line - a[:, None]
    u = (d * t[:, None]).sum(2)
    v = (d * n[:, None]).sum(2)
    columns = MARGIN + u / length[:, None] * (COLUMNS - 2 * MARGIN)
    out = torch.full((len(line), COLUMNS // STEP), float("nan"), device=line.device)
    centre = torch.arange(COLUMNS // STEP, device=line.device) * STEP + STEP / 2
    c0, c1, v0, v1 = columns[:, :-1], columns[:, 1:], v[:, :-1], v[:, 1:]
    inside = (centre[None, :, None] >= torch.minimum(c0, c1)[:, None]) & (centre[None, :, None] < torch.maximum(c0, c1)[:, None])
    hit = inside.any(2)
    k = inside.float().argmax(2)
    g = lambda x: torch.gather(x, 1, k)
    share = (centre[None] - g(c0)) / (g(c1) - g(c0)).where(g(c1) != g(c0), torch.ones_like(g(c0)))
    value = g(v0) + (g(v1) - g(v0)) * share
    across = value - bend
    row = ROWS / 2 + across / span[:, None] * ROWS
    return torch.where(hit, row, out)


def lay(pictures, which, gen, steady=False, span_widths=None):
    """Strips (B, 3, ROWS, COLUMNS) 0..1, and the truth rows (B, 2, COLUMNS / STEP), NaN for none."""
    p = {k: v[which] for k, v in pictures.tensors.items()}
    b = len(which)
    dev = which.device
    rnd = lambda *s: torch.rand(*s, device=dev, generator=gen)
    nrm = lambda *s: torch.randn(*s, device=dev, generator=gen)
    first, last = p["first"], p["last"]
    whole = rnd(b) < (1.0 if steady else 0.6)
    share = torch.where(whole, torch.ones(b, device=dev), 0.25 + 0.75 * rnd(b))
    start = first + (last - first) * (1 - share) * rnd(b)
    end = start + (last - first) * share
    slip = 0.0 if steady else 0.04
    start = start + slip * nrm(b) * (last - first)
    end = end + slip * nrm(b) * (last - first)
    middle = (p["left"] + p["right"]) / 2
    ends = at(middle, torch.stack([start, end], 1).clamp(0, 1))
    aside = 0.0 if steady else 0.22
    a, z = ends[:, 0], ends[:, 1]
    t = F.normalize(z - a, dim=1)
    n = torch.stack([-t[:, 1], t[:, 0]], 1)
    push = (aside * nrm(b, 2)).clamp(-0.5, 0.5) * p["width"][:, None]
    a, z = a + n * push[:, :1], z + n * push[:, 1:]
    flip = rnd(b) < (0.0 if steady else 0.5)
    a, z = torch.where(flip[:, None], z, a), torch.where(flip[:, None], a, z)
    length = (z - a).norm(dim=1).clamp(min=20)
    # Some lines lie where there is no bead: the answer there is none.
    astray = torch.zeros(b, dtype=torch.bool, device=dev) if steady else (rnd(b) < 0.09) & (p["beads"] == 1)
    t = F.normalize(z - a, dim=1)
    n = torch.stack([-t[:, 1], t[:, 0]], 1)
    off = (1.6 + 2.5 * rnd(b)) * p["width"] * torch.where(rnd(b) < 0.5, 1.0, -1.0)
    a = torch.where(astray[:, None], a + n * off[:, None], a)
    wide = torch.exp(math.log(2.3) + rnd(b) * math.log(4.6 / 2.3))
    wider = torch.exp(math.log(4.6) + rnd(b) * math.log(16 / 4.6))
    k = torch.where(rnd(b) < 0.62, wide, wider) if span_widths is None else torch.full((b,), float(span_widths), device=dev)
    span = k * p["width"]
    full = torch.arange(COLUMNS, device=dev) + 0.5
    s = (full - MARGIN) / (COLUMNS - 2 * MARGIN)
    bend = torch.zeros(b, COLUMNS, device=dev)
    if not steady:
        size = (nrm(b, 3) * torch.tensor([0.18, 0.1, 0.06], device=dev)) * p["width"][:, None]
        for i in range(3):
            bend = bend + size[:, i : i + 1] * torch.sin((i + 1) * math.pi * s[None] + 6.28 * rnd(b, 1) * (i > 0))
    mirror = torch.where(rnd(b) < (0.0 if steady else 0.5), -1.0, 1.0)
    n = n * mirror[:, None]
    half = bend.reshape(b, -1, STEP).mean(2)
    one = rows_of(p["left"], a, t, n, length, span, half)
    two = rows_of(p["right"], a, t, n, length, span, half)
    rows = torch.stack([torch.minimum(one, two), torch.maximum(one, two)], 1)
    rows = torch.where(astray[:, None, None], torch.full_like(rows, float("nan")), rows)
    r = ((torch.arange(ROWS, device=dev) + 0.5) / ROWS - 0.5)[None, :, None] * span[:, None, None] + bend[:, None, :]
    x = a[:, 0, None, None] + t[:, 0, None, None] * (s * length[:, None])[:, None] + n[:, 0, None, None] * r
    y = a[:, 1, None, None] + t[:, 1, None, None] * (s * length[:, None])[:, None] + n[:, 1, None, None] * r
    strip, inside = sample(pictures.heap, p, x, y)
    # A toe outside the picture is not seen.
    cols = torch.arange(COLUMNS // STEP, device=dev) * STEP + 1
    safe = torch.nan_to_num(rows, nan=0.0).long().clamp(0, ROWS - 1)
    seen = torch.gather(inside[:, :, cols], 1, safe)
    rows = torch.where(seen & (rows > 0) & (rows < ROWS), rows, torch.full_like(rows, float("nan")))
    return strip, rows, p["width"] / span * ROWS


def sample(heap, p, x, y):
    w, h = p["w"][:, None, None], p["h"][:, None, None]
    inside = (x > 0.5) & (y > 0.5) & (x < w - 0.5) & (y < h - 0.5)
    fx, fy = torch.minimum((x - 0.5).clamp(min=0), w - 1.001), torch.minimum((y - 0.5).clamp(min=0), h - 1.001)
    i, j = fx.long(), fy.long()
    u, v = (fx - i)[..., None], (fy - j)[..., None]
    base = p["offset"][:, None, None] + (j * w.long() + i) * 3
    c = torch.arange(3, device=x.device)
    get = lambda o: heap[(base + o)[..., None] + c].float()
    down = w.long() * 3
    top = get(torch.zeros_like(base)) * (1 - u) + get(torch.full_like(base, 3)) * u
    low = get(down.expand_as(base)) * (1 - u) + get(down.expand_as(base) + 3) * u
    out = (top * (1 - v) + low * v) / 255
    out = torch.where(inside[..., None], out, torch.full_like(out, 0.5))
    return out.permute(0, 3, 1, 2).contiguous(), inside
