"""What light, dirt and cameras do to a strip besides what was rendered; the truth stays where it is."""

import math

import torch
from torch.nn import functional as F

from net import COLUMNS, ROWS, STEP


def cloud(b, dev, gen, rows, columns, size=(ROWS, COLUMNS)):
    return F.interpolate(torch.randn(b, 1, rows, columns, device=dev, generator=gen), size, mode="bicubic", align_corners=False)


def balls(x, gen, share):
    """Round lumps with a lit and a dark side, a few or many, and dark crumbs."""
    b, _, h, w = x.shape
    dev = x.device
    rnd = lambda *s: torch.rand(*s, device=dev, generator=gen)
    some = (rnd(b, 1, 1, 1) < share).float()
    step = float(5 + 14 * rnd(1))
    size = (max(3, int(h / step)), max(3, int(w / step)))
    field = cloud(b, dev, gen, *size, (h, w))
    level = 1.3 + 1.2 * rnd(b, 1, 1, 1)
    lump = torch.sigmoid((field - level) * 8)
    slope = field - torch.roll(field, (1, 1), (2, 3))
    tone = torch.where(rnd(b, 1, 1, 1) < 0.5, 0.35 + 0.9 * rnd(b, 1, 1, 1), 1.0 + 0 * field)
    return x * (1 - some * lump) + some * lump * (x * tone + 0.9 * slope * rnd(b, 1, 1, 1)).clamp(0, 1)


def camera(x, gen):
    """Light, exposure, colour, blur, noise and what is lost on the way into a file; any picture of 3 planes."""
    b, _, h, w = x.shape
    dev = x.device
    rnd = lambda *s: torch.rand(*s, device=dev, generator=gen)
    some = lambda share: (rnd(b, 1, 1, 1) < share).float()
    nrm = lambda *s: torch.randn(*s, device=dev, generator=gen)
    # Light that falls off over the picture.
    x = x * torch.exp(0.5 * some(0.4) * cloud(b, dev, gen, 3, 3, (h, w)).clamp(-1.5, 1.5) * rnd(b, 1, 1, 1))
    x = x * torch.exp(0.35 * nrm(b, 1, 1, 1) + 0.9 * some(0.15) * rnd(b, 1, 1, 1))
    x = x * (1 + 0.12 * nrm(b, 3, 1, 1))
    x = x.clamp(1e-4, 1) ** torch.exp(0.25 * nrm(b, 1, 1, 1))
    pivot = x.mean((1, 2, 3), keepdim=True)
    x = (pivot + (x - pivot) * torch.exp(0.25 * nrm(b, 1, 1, 1))).clamp(0, 1)
    grey = x.mean(1, keepdim=True)
    x = grey + (x - grey) * (2.0 * rnd(b, 1, 1, 1)) * (1 - some(0.1))
    # One softness for each quarter of the batch.
    parts = []
    for part in x.chunk(4):
        sigma = float(rnd(1)) ** 1.5 * 2.2
        if sigma > 0.4:
            k = torch.exp(-0.5 * (torch.arange(-5, 6, device=dev) / sigma) ** 2)
            k = (k / k.sum()).view(1, 1, 1, 11).expand(3, 1, 1, 11)
            part = F.conv2d(F.pad(part, (5, 5, 5, 5), "reflect"), k, groups=3)
            part = F.conv2d(part, k.transpose(2, 3), groups=3)
        parts.append(part)
    x = torch.cat(parts)
    x = x + nrm(*x.shape) * 0.04 * rnd(b, 1, 1, 1) * some(0.6)
    if float(rnd(1)) < 0.4:
        x = blocks(x, rnd(b, 1, 1, 1, 1, 1) ** 2 * 0.14)
    return x.clamp(0, 1)


def blocks(x, step):
    """What a file of blocks of eight loses: the cosine transform, coarser towards fine detail."""
    b, c, h, w = x.shape
    i = torch.arange(8, device=x.device, dtype=torch.float32)
    m = torch.cos((2 * i[None] + 1) * i[:, None] * math.pi / 16) * torch.where(i[:, None] == 0, 0.125**0.5, 0.5)
    y = x.reshape(b, c, h // 8, 8, w // 8, 8).permute(0, 1, 2, 4, 3, 5)
    f = m @ y @ m.T
    q = step * (1 + i[None] + i[:, None]) / 4 + 1e-4
    y = m.T @ (torch.round(f / q) * q) @ m
    return y.permute(0, 1, 2, 4, 3, 5).reshape(b, c, h, w)


def clutter(x, gen):
    """What lies on and over a whole picture."""
    b, _, h, w = x.shape
    dev = x.device
    rnd = lambda *s: torch.rand(*s, device=dev, generator=gen)
    some = lambda share: (rnd(b, 1, 1, 1) < share).float()
    grit = 0
    for step, share, most in ((1, 0.5, 0.2), (3, 0.5, 0.2), (10, 0.4, 0.2)):
        grit = grit + cloud(b, dev, gen, max(3, h // step), max(3, w // step), (h, w)) * some(share) * rnd(b, 1, 1, 1) ** 2 * most
    x = balls(x * (1 + grit).clamp(0.1, 3), gen, 0.3)
    # Straight things that are no bead: edges of plates, rules, cables.
    for _ in range(3):
        angle, off = 6.28 * rnd(b, 1, 1, 1), (rnd(b, 1, 1, 1) - 0.5) * 1.4 * h
        gx = torch.arange(w, device=dev)[None, None, None] - w / 2
        gy = torch.arange(h, device=dev)[None, None, :, None] - h / 2
        v = gx * angle.cos() + gy * angle.sin() - off
        along = gy * angle.cos() - gx * angle.sin()
        far = (along - (rnd(b, 1, 1, 1) - 0.5) * h).abs() < h * rnd(b, 1, 1, 1)
        half = 1 + 14 * rnd(b, 1, 1, 1) ** 2
        bar = torch.sigmoid(half - v.abs()) * far * some(0.3)
        x = x * (1 - bar) + bar * (rnd(b, 3, 1, 1) * 0.3 + 0.85 * rnd(b, 1, 1, 1)).clamp(0, 1).expand_as(x)
    for _ in range(2):
        cx, cy, s = rnd(b, 1, 1, 1) * w, rnd(b, 1, 1, 1) * h, 8 + 60 * rnd(b, 1, 1, 1) ** 2
        gx = torch.arange(w, device=dev)[None, None, None] - cx
        gy = torch.arange(h, device=dev)[None, None, :, None] - cy
        x = x + torch.exp(-0.5 * (gx**2 + gy**2) / s**2) * rnd(b, 1, 1, 1) * some(0.25)
    return x


def weather(x, rows, width, gen):
    b, dev = len(x), x.device
    rnd = lambda *s: torch.rand(*s, device=dev, generator=gen)
    some = lambda share: (rnd(b, 1, 1, 1) < share).float()
    full = torch.repeat_interleave(torch.nan_to_num(rows, nan=-999.0), STEP, 2)
    r = torch.arange(ROWS, device=dev)[None, :, None] + 0.5
    out_top, out_low = full[:, 0, None] - r, r - full[:, 1, None]
    known = (full[:, :1] > -900) & (full[:, 1:] > -900)
    out = torch.maximum(out_top, out_low)
    plate = ((out > 0) | ~known).float()[:, None]
    # Grit: fine and coarse, on the plate more than on the bead.
    grit = 0
    for step, share, most in ((1, 0.6, 0.16), (2, 0.6, 0.2), (5, 0.5, 0.22), (14, 0.5, 0.25), (40, 0.5, 0.3)):
        grit = grit + cloud(b, dev, gen, max(3, ROWS // step), max(3, COLUMNS // step)) * some(share) * rnd(b, 1, 1, 1) ** 2 * most
    x = x * (1 + grit * (plate + (1 - plate) * rnd(b, 1, 1, 1) * 0.7)).clamp(0.1, 3)
    # Shade along each toe, of its own width and broken; it is no toe.
    for side in (out_top, out_low):
        reach = (0.03 + 0.35 * rnd(b, 1, 1) ** 2) * width[:, None, None]
        ragged = 1 + 0.6 * cloud(b, dev, gen, 2, 60)[:, 0, :1]
        broken = (cloud(b, dev, gen, 1, 24)[:, 0, :1] > 1.6 * rnd(b, 1, 1) - 0.9).float()
        over = 0.06 * rnd(b, 1, 1) * width[:, None, None]
        soft = 0.04 * width[:, None, None] * rnd(b, 1, 1) + 0.7
        band = torch.sigmoid((side + over) / soft) * torch.sigmoid((reach * ragged - side) / soft) * broken * known
        dark = (0.25 + 0.75 * rnd(b, 1, 1, 1)) * some(0.4)
        x = x * (1 - band[:, None] * dark)
        # Temper colour outside it.
        colour = 0.55 + 0.9 * rnd(b, 3, 1, 1)
        away = reach * ragged + 0.3 * rnd(b, 1, 1) * width[:, None, None]
        heat = torch.sigmoid((side - reach) / soft) * torch.sigmoid((away - side) / soft) * known
        x = x * (1 + heat[:, None] * some(0.35) * (colour - 1))
    # Lamps in the metal: long and round blown places.
    for _ in range(2):
        cx, cy = rnd(b, 1, 1, 1) * COLUMNS, rnd(b, 1, 1, 1) * ROWS
        sx, sy = 15 + 260 * rnd(b, 1, 1, 1) ** 2, 6 + 80 * rnd(b, 1, 1, 1) ** 2
        gx = torch.arange(COLUMNS, device=dev)[None, None, None] - cx
        gy = torch.arange(ROWS, device=dev)[None, None, :, None] - cy
        blob = torch.exp(-0.5 * ((gx / sx) ** 2 + ((gy + 0.3 * (rnd(b, 1, 1, 1) - 0.5) * gx) / sy) ** 2))
        rough = (1 + 0.5 * cloud(b, dev, gen, 40, 120)).clamp(0, 3)
        lit = x.mean(1, keepdim=True) * 2 + 0.25
        x = x + blob * rough * lit * rnd(b, 1, 1, 1) ** 2 * 2.2 * some(0.35)
    # Balls of spatter and rests of slag, also across a toe.
    x = balls(x, gen, 0.35)
    x = camera(x, gen)
    # Something lies over part of it.
    c0, r0 = rnd(b, 1, 1, 1) * COLUMNS, rnd(b, 1, 1, 1) * ROWS
    cover = ((torch.arange(COLUMNS, device=dev) - c0).abs() < 4 + 40 * rnd(b, 1, 1, 1)) & (
        (torch.arange(ROWS, device=dev)[:, None] - r0).abs() < 4 + 50 * rnd(b, 1, 1, 1)
    )
    x = torch.where(cover & (some(0.12) > 0), rnd(b, 3, 1, 1).expand_as(x), x)
    return x.clamp(0, 1)
