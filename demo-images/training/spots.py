"""The network that finds holes and spatter: a tile of 256 RGB in, for 128 x 128 cells a logit for a hole, one for a ball and log radius out."""

import torch
from torch import nn
from torch.nn import functional as F

from net import Inverted, Up, conv_norm

SIDE, ANSWER, BEAD = 256, 128, 160


class Spots(nn.Module):
    def __init__(self):
        super().__init__()
        w = [16, 24, 40, 72]
        self.stem = nn.Sequential(conv_norm(3, w[0], 5, 2), Inverted(w[0], w[0], 3, 1, 2))
        self.down = nn.ModuleList(
            nn.Sequential(Inverted(a, b, 5, 2), *[Inverted(b, b, 5 if b > 30 else 3) for _ in range(n)])
            for a, b, n in zip(w, w[1:], [2, 2, 3])
        )
        self.up = nn.ModuleList(Up(low, high, high) for low, high in zip(w[:0:-1], w[-2::-1]))
        self.mix = Inverted(w[0], w[0], 3, 1, 2)
        self.head = nn.Conv2d(w[0], 3, 3, 1, 1)
        with torch.no_grad():
            self.head.bias.copy_(torch.tensor([-4.0, -4.0, 1.8]))

    def forward(self, x):
        feats = [self.stem(x)]
        for stage in self.down:
            feats.append(stage(feats[-1]))
        y = feats[-1]
        for up, skip in zip(self.up, feats[-2::-1]):
            y = up(y, skip)
        return self.head(self.mix(y))
