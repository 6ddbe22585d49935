"""The reader's network: a strip of 256 x 768 RGB in, for each of 384 columns two toes as logits over 256 rows and "none"."""

import torch
from torch import nn
from torch.nn import functional as F

ROWS, COLUMNS, STEP = 256, 768, 2


def conv_norm(a, b, k=1, stride=1, groups=1, act=True):
    layers = [nn.Conv2d(a, b, k, stride, k // 2, groups=groups, bias=False), nn.BatchNorm2d(b)]
    return nn.Sequential(*layers, nn.ReLU(inplace=True)) if act else nn.Sequential(*layers)


class Inverted(nn.Module):
    def __init__(self, a, b, k=3, stride=1, grow=3):
        super().__init__()
        self.same = a == b and stride == 1
        self.body = nn.Sequential(
            conv_norm(a, a * grow),
            conv_norm(a * grow, a * grow, k, stride, a * grow),
            conv_norm(a * grow, b, act=False),
        )

    def forward(self, x):
        return x + self.body(x) if self.same else self.body(x)


class Up(nn.Module):
    def __init__(self, low, high, out):
        super().__init__()
        self.low, self.high = conv_norm(low, out, act=False), conv_norm(high, out, act=False)
        self.mix = Inverted(out, out, 3, 1, 2)

    def forward(self, low, high):
        return self.mix(F.relu(F.interpolate(self.low(low), scale_factor=2.0, mode="nearest") + self.high(high)))


class Reader(nn.Module):
    def __init__(self):
        super().__init__()
        w = [24, 32, 56, 96, 144]
        self.stem = nn.Sequential(conv_norm(3, w[0], 5, 2), Inverted(w[0], w[0], 3, 1, 2))
        self.down = nn.ModuleList(
            nn.Sequential(Inverted(a, b, 5, 2), *[Inverted(b, b, 5 if b > 40 else 3) for _ in range(n)])
            for a, b, n in zip(w, w[1:], [1, 2, 3, 3])
        )
        self.up = nn.ModuleList(Up(low, high, high) for low, high in zip(w[:0:-1], w[-2::-1]))
        self.none = nn.Sequential(nn.Conv1d(2 * w[0] + w[3], 64, 9, 1, 4), nn.ReLU(inplace=True), nn.Conv1d(64, 2, 5, 1, 2))
        # Two rows for each of the half-size map: toes above and below, and the bead's own area.
        self.head = nn.Conv2d(w[0], 6, 3, 1, 1)

    def forward(self, x):
        feats = [self.stem(x)]
        for stage in self.down:
            feats.append(stage(feats[-1]))
        y = feats[-1]
        mids = []
        for up, skip in zip(self.up, feats[-2::-1]):
            y = up(y, skip)
            mids.append(y)
        rows = self.head(y)
        b, _, h, w = rows.shape
        rows = rows.reshape(b, 3, 2, h, w).permute(0, 1, 3, 2, 4).reshape(b, 3, 2 * h, w)
        deep = F.interpolate(mids[0].mean(2), scale_factor=8.0, mode="nearest")
        none = self.none(torch.cat([y.mean(2), y.amax(2), deep], 1))
        toes = torch.cat([rows[:, :2], none[:, :, None, :]], 2)
        return toes, rows[:, 2]
