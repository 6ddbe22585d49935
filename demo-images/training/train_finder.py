"""Trains the finder. `train_finder.py PICTURES OUT SECONDS GPU`: see README.md beside this file."""

import json
import math
import os
import sys
import time

import numpy as np
import torch
from torch.nn import functional as F

from finder import Finder
from squares import Whole, square
from weather import camera, clutter

folder, out, seconds, gpu = sys.argv[1], sys.argv[2], float(sys.argv[3]), int(sys.argv[4])
dev = torch.device("cuda", gpu)
torch.cuda.set_device(dev)
torch.manual_seed(20261127)
torch.backends.cudnn.benchmark = True
gen = torch.Generator(dev).manual_seed(20261127)
train = Whole(folder, "train", 14_000_000_000, dev)
while len(train.items) < 200:
    train.grow()
    time.sleep(1)
model = Finder().to(dev, memory_format=torch.channels_last)
count = sum(p.numel() for p in model.parameters())
print("parameters", count, "pictures", len(train.items), flush=True)
opt = torch.optim.AdamW(model.parameters(), lr=1e-3, weight_decay=0.03)
mean = {k: v.detach().clone() for k, v in model.state_dict().items()}
started = grown = time.time()
step = 0
while True:
    spent = time.time() - started
    if spent > seconds:
        break
    lr = 2e-3 * min(1, step / 200) * (0.5 + 0.5 * math.cos(math.pi * min(1, spent / seconds)))
    for group in opt.param_groups:
        group["lr"] = max(lr, 2e-6)
    if time.time() - grown > 20:
        train.grow()
        grown = time.time()
    which = torch.randint(0, len(train.items), (40,), device=dev, generator=gen)
    which = torch.where(which % 25 == 0, (which + 1) % len(train.items), which)
    which = torch.where(which % 25 == 0, torch.ones_like(which), which)
    x, mask = square(train, which, gen)
    x = camera(clutter(x, gen), gen)
    with torch.autocast("cuda", torch.bfloat16):
        said = model(x.to(memory_format=torch.channels_last))
    said = said.float()
    share = torch.sigmoid(said)
    both = (share * mask).sum((1, 2))
    dice = 1 - (2 * both + 20) / (share.sum((1, 2)) + mask.sum((1, 2)) + 20)
    loss = F.binary_cross_entropy_with_logits(said, mask) + 0.3 * dice.mean()
    opt.zero_grad(set_to_none=True)
    loss.backward()
    torch.nn.utils.clip_grad_norm_(model.parameters(), 5.0)
    opt.step()
    step += 1
    keep = min(0.998, 1 - 1 / (step + 1))
    with torch.no_grad():
        for k, v in model.state_dict().items():
            mean[k].lerp_(v, 1 - keep) if v.dtype.is_floating_point else mean[k].copy_(v)
    if step % 200 == 0:
        print(f"step {step} {spent:.0f} s pictures {len(train.items)} loss {loss.item():.3f}", flush=True)
model.load_state_dict(mean)
model.eval()
kept = torch.arange(0, len(train.items), 25, device=dev)
iou = []
for part in kept.split(16):
    x, mask = square(train, part, gen, steady=True)
    with torch.no_grad():
        said = model(x) > 0
    iou += ((said & (mask > 0)).sum((1, 2)) / (said | (mask > 0)).sum((1, 2)).clamp(min=1)).tolist()
figures = {"steps": step, "pictures": len(train.items), "keptIouMedian": float(np.median(iou)), "keptIouTenth": float(np.quantile(iou, 0.1))}
torch.save({k: v.half() if v.dtype.is_floating_point else v for k, v in mean.items()}, os.path.join(out, "finder.pt"))
from export import export

digest, size = export(model, os.path.join(out, "finder.onnx"), square(train, kept[:1], gen, steady=True)[0].cpu(), whole=True)
lineage = {"parameters": count, "figures": figures, "sha256": digest, "bytes": size}
json.dump(lineage, open(os.path.join(out, "finder.json"), "w"), indent=2)
print(json.dumps(lineage), flush=True)
