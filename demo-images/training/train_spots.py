"""Trains the finder of holes and spatter. `train_spots.py PICTURES OUT SECONDS`: see README.md beside this file."""

import argparse
import json
import math
import os
import time

import torch

from export import export
from spots import Spots
from tiles import Near, loss_of, tiles
from weather import camera, cloud

parser = argparse.ArgumentParser()
parser.add_argument("pictures")
parser.add_argument("out")
parser.add_argument("seconds", type=float)
parser.add_argument("--wait", type=int, default=200)
parser.add_argument("--batch", type=int, default=96)
parser.add_argument("--steps", type=int, default=10**9)
parser.add_argument("--device", default="cuda")
parser.add_argument("--room", type=int, default=12_000_000_000)
parser.add_argument("--start", default="", help="weights to go on from")
parser.add_argument("--rate", type=float, default=3e-3)
parser.add_argument("--commit", default="unknown")
args = parser.parse_args()

SEED = 20261128
dev = torch.device(args.device)
torch.manual_seed(SEED)
torch.backends.cudnn.benchmark = True
torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True
gen = torch.Generator(dev).manual_seed(SEED)
near = Near(args.pictures, args.room, dev)
while len(near.items) < args.wait:
    near.grow()
    time.sleep(1)
model = Spots().to(dev, memory_format=torch.channels_last)
if args.start:
    model.load_state_dict({k: v.float() if v.dtype.is_floating_point else v for k, v in torch.load(args.start, map_location=dev).items()})
count = sum(p.numel() for p in model.parameters())
print("parameters", count, "pictures", len(near.items), flush=True)
opt = torch.optim.AdamW(model.parameters(), lr=1e-3, weight_decay=0.02)
mean = {k: v.detach().clone() for k, v in model.state_dict().items()}
half = dev.type == "cuda"


def grit(x):
    """Grain of every size, and lamps that blow out part of the picture; nothing round of the size of a ball."""
    b, _, h, w = x.shape
    rnd = lambda *s: torch.rand(*s, device=dev, generator=gen)
    some = lambda share: (rnd(b, 1, 1, 1) < share).float()
    grain = 0
    for step, share, most in ((1, 0.5, 0.12), (2, 0.4, 0.12), (40, 0.4, 0.3)):
        grain = grain + cloud(b, dev, gen, max(3, h // step), max(3, w // step), (h, w)) * some(share) * rnd(b, 1, 1, 1) ** 2 * most
    x = x * (1 + grain).clamp(0.1, 3)
    cx, cy, s = rnd(b, 1, 1, 1) * w, rnd(b, 1, 1, 1) * h, 30 + 90 * rnd(b, 1, 1, 1)
    gx = torch.arange(w, device=dev)[None, None, None] - cx
    gy = torch.arange(h, device=dev)[None, None, :, None] - cy
    return x + torch.exp(-0.5 * (gx**2 + gy**2) / s**2) * 0.6 * rnd(b, 1, 1, 1) ** 2 * some(0.2)


started = grown = time.time()
step = 0
while step < args.steps:
    spent = time.time() - started
    if spent > args.seconds:
        break
    share = spent / args.seconds if args.steps > 10**8 else step / args.steps
    lr = args.rate * min(1, (step + 1) / 150) * (0.5 + 0.5 * math.cos(math.pi * min(1, share)))
    for group in opt.param_groups:
        group["lr"] = max(lr, 2e-6)
    if time.time() - grown > 15:
        near.grow()
        grown = time.time()
    # Every 25th picture is kept for the figures below.
    which = torch.randint(0, len(near.items), (args.batch,), device=dev, generator=gen)
    which = torch.where(which % 25 == 0, (which + 1) % len(near.items), which)
    which = torch.where(which % 25 == 0, torch.ones_like(which), which)
    with torch.no_grad():
        x, *truth = tiles(near, which, gen)
        x = camera(grit(x), gen)
    with torch.autocast(dev.type, torch.bfloat16, enabled=half):
        said = model(x.to(memory_format=torch.channels_last))
    loss, far = loss_of(said, *truth)
    opt.zero_grad(set_to_none=True)
    loss.backward()
    torch.nn.utils.clip_grad_norm_(model.parameters(), 5.0)
    opt.step()
    step += 1
    keep = min(0.998, 1 - 1 / (step + 1))
    with torch.no_grad():
        for k, v in model.state_dict().items():
            mean[k].lerp_(v, 1 - keep) if v.dtype.is_floating_point else mean[k].copy_(v)
    if step % 200 == 0 or args.steps < 1000:
        print(f"step {step} {spent:.0f} s pictures {len(near.items)} loss {loss.item():.3f} radius {far.item():.3f}", flush=True)
model.load_state_dict(mean)
model.eval()
kept = torch.arange(0, len(near.items), 25, device=dev)
losses = []
with torch.no_grad():
    for part in kept.split(16):
        x, *truth = tiles(near, part, gen, steady=True)
        losses.append(loss_of(model(x), *truth)[0].item())
figures = {"steps": step, "batch": args.batch, "pictures": len(near.items), "keptLoss": sum(losses) / len(losses)}
torch.save({k: v.half() if v.dtype.is_floating_point else v for k, v in mean.items()}, os.path.join(args.out, "spots.pt"))
digest, size = export(model, os.path.join(args.out, "spots.onnx"), tiles(near, kept[:1], gen, steady=True)[0].cpu(), names=("tile", "spots"))
lineage = {"commit": args.commit, "seed": SEED, "parameters": count, "figures": figures, "sha256": digest, "bytes": size,
           "torch": torch.__version__, "device": torch.cuda.get_device_name() if half else "cpu"}
json.dump(lineage, open(os.path.join(args.out, "spots.json"), "w"), indent=2)
print(json.dumps(lineage), flush=True)
