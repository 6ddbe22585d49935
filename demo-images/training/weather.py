"""What light, dirt and cameras do to a strip besides what was rendered; the truth stays where it is."""

import torch
from torch.nn import functional as F

from net import COLUMNS, ROWS, STEP


def cloud(b, dev, gen, rows, columns):
    return F.interpolate(torch.randn(b, 1, rows, columns, device=dev, generator=gen), (ROWS, COLUMNS), mode="bicubic", align_corners=False)


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
    # Light and the camera's own ways with it.
    x = x * torch.exp(0.3 * torch.randn(b, 1, 1, 1, device=dev, generator=gen))
    x = x * (1 + 0.1 * torch.randn(b, 3, 1, 1, device=dev, generator=gen))
    x = x.clamp(1e-4, 1) ** torch.exp(0.22 * torch.randn(b, 1, 1, 1, device=dev, generator=gen))
    grey = x.mean(1, keepdim=True)
    x = grey + (x - grey) * (2.0 * rnd(b, 1, 1, 1)) * (1 - some(0.08))
    sigma = float(rnd(1)) * 1.6
    if sigma > 0.4:
        k = torch.exp(-0.5 * (torch.arange(-4, 5, device=dev) / sigma) ** 2)
        k = (k / k.sum()).view(1, 1, 1, 9).expand(3, 1, 1, 9)
        x = F.conv2d(F.pad(x, (4, 4, 4, 4), "reflect"), k, groups=3)
        x = F.conv2d(x, k.transpose(2, 3), groups=3)
    x = x + torch.randn(x.shape, device=dev, generator=gen) * 0.03 * rnd(b, 1, 1, 1) * some(0.6)
    # Something lies over part of it.
    c0, r0 = rnd(b, 1, 1, 1) * COLUMNS, rnd(b, 1, 1, 1) * ROWS
    cover = ((torch.arange(COLUMNS, device=dev) - c0).abs() < 4 + 40 * rnd(b, 1, 1, 1)) & (
        (torch.arange(ROWS, device=dev)[:, None] - r0).abs() < 4 + 50 * rnd(b, 1, 1, 1)
    )
    x = torch.where(cover & (some(0.12) > 0), rnd(b, 3, 1, 1).expand_as(x), x)
    return x.clamp(0, 1)
