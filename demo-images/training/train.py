"""Trains the reader. `train.py PICTURES OUT SECONDS [--wait PICTURES]`: see README.md beside this file."""

import argparse
import hashlib
import json
import math
import os
import time

import sys

import numpy as np
import torch
import torch.distributed as dist
from torch.nn import functional as F

from net import COLUMNS, ROWS, STEP, Reader
from strips import Pictures, lay
from weather import weather

parser = argparse.ArgumentParser()
parser.add_argument("pictures")
parser.add_argument("out")
parser.add_argument("seconds", type=float)
parser.add_argument("--wait", type=int, default=400)
parser.add_argument("--batch", type=int, default=48)
parser.add_argument("--seed", type=int, default=20261126)
parser.add_argument("--commit", default="unknown")
parser.add_argument("--start", default="", help="weights to go on from")
parser.add_argument("--rate", type=float, default=1.6e-3)
args = parser.parse_args()

rank, world = int(os.environ.get("RANK", 0)), int(os.environ.get("WORLD_SIZE", 1))
dev = torch.device("cuda", rank)
torch.cuda.set_device(dev)
if world > 1:
    dist.init_process_group("nccl")
torch.manual_seed(args.seed)
torch.backends.cudnn.benchmark = True
torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True
gen = torch.Generator(dev).manual_seed(args.seed + rank)
train = Pictures(args.pictures, "train", 14_000_000_000, dev)
while len(train.items) < args.wait:
    train.grow()
    time.sleep(1)
say = print if rank == 0 else lambda *_, **__: None
say("pictures", len(train.items), "processes", world, flush=True)

model = Reader().to(dev, memory_format=torch.channels_last)
if args.start:
    model.load_state_dict({k: v.float() if v.dtype.is_floating_point else v for k, v in torch.load(args.start, map_location=dev).items()})
count = sum(p.numel() for p in model.parameters())
say("parameters", count, flush=True)
net = torch.nn.parallel.DistributedDataParallel(model, device_ids=[rank]) if world > 1 else model
opt = torch.optim.AdamW(model.parameters(), lr=1e-3, weight_decay=0.02)
mean = {k: v.detach().clone() for k, v in model.state_dict().items()}


def soft_target(rows):
    """Gaussian over the rows about the truth, or all on "none" (the last class)."""
    r = torch.arange(ROWS, device=dev)[None, None, :, None] + 0.5
    known = ~torch.isnan(rows)
    g = torch.exp(-0.5 * ((r - torch.nan_to_num(rows, nan=-99.0)[:, :, None]) / 1.1) ** 2)
    g = g / g.sum(2, keepdim=True).clamp(min=1e-6) * known[:, :, None]
    return torch.cat([g, (~known)[:, :, None].float()], 2)


def loss_of(toes, bead, rows):
    logp = F.log_softmax(toes.float(), 2)
    target = soft_target(rows)
    ce = -(target * logp).sum(2)
    r = torch.arange(ROWS, device=dev)[None, :, None] + 0.5
    both = ~torch.isnan(rows).any(1)
    inside = ((r > torch.nan_to_num(rows[:, 0])[:, None]) & (r < torch.nan_to_num(rows[:, 1])[:, None]) & both[:, None]).float()
    area = F.binary_cross_entropy_with_logits(bead.float(), inside)
    return ce.mean() + 0.5 * area


def errors(pictures, which, span):
    """Per toe and column: error in shares of the bead's width, and how sure the network said it was."""
    off, sure, out_of, spread = [], [], [], []
    for part in which.split(32):
        x, rows, width = lay(pictures, part, gen, steady=True, span_widths=span)
        with torch.no_grad(), torch.autocast("cuda", torch.bfloat16):
            toes, _ = model(x.to(memory_format=torch.channels_last))
        p = torch.softmax(toes.float(), 2)
        best = p[:, :, :ROWS].argmax(2)
        r = torch.arange(ROWS, device=dev)[None, None, :, None]
        near = p[:, :, :ROWS] * ((r - best[:, :, None]).abs() < 0.08 * width[:, None, None, None] + 1)
        mass = near.sum(2)
        row = (near * (r + 0.5)).sum(2) / mass.clamp(min=1e-6)
        sd = ((near * (r + 0.5 - row[:, :, None]) ** 2).sum(2) / mass.clamp(min=1e-6)).sqrt()
        known = ~torch.isnan(rows)
        off.append(((row - rows) / width[:, None, None])[known].cpu())
        sure.append(mass[known].cpu())
        spread.append((sd / width[:, None, None])[known].cpu())
        out_of.append(p[:, :, ROWS][~known].cpu())
    return torch.cat(off).numpy(), torch.cat(sure).numpy(), torch.cat(spread).numpy(), torch.cat(out_of).numpy()


def report(name, pictures, which, span):
    off, sure, spread, none = errors(pictures, which, span)
    a = np.abs(off)
    q = np.quantile(sure, [0.25, 0.75])
    print(f"{name} span {span}: {len(which)} pictures, median {100*np.median(a):.2f} %, p90 {100*np.quantile(a,0.9):.1f} %, "
          f"off by a quarter {100*np.mean(a>0.25):.2f} % (lowest quarter of sure {100*np.mean(a[sure<=q[0]]>0.25):.2f}, highest {100*np.mean(a[sure>=q[1]]>0.25):.2f}), "
          f"bias {100*np.mean(off):.2f}, none where none {np.mean(none) if len(none) else float('nan'):.2f}", flush=True)
    return {"medianPercent": 100 * float(np.median(a)), "p90Percent": 100 * float(np.quantile(a, 0.9)), "offByQuarterPercent": 100 * float(np.mean(a > 0.25))}


started = time.time()
step, grown = 0, time.time()
while True:
    spent = time.time() - started
    if step % 10 == 0:
        over = torch.tensor([float(spent > args.seconds)], device=dev)
        if world > 1:
            dist.broadcast(over, 0)
        if over.item() > 0:
            break
    share = spent / args.seconds
    lr = args.rate * (1.5 if world > 1 else 1) * min(1, step / 300) * (0.5 + 0.5 * math.cos(math.pi * min(1, share)))
    for group in opt.param_groups:
        group["lr"] = max(lr, 2e-6)
    if time.time() - grown > 20:
        train.grow()
        grown = time.time()
    # The last pictures of a hundred are kept for calibration.
    which = torch.randint(0, len(train.items), (args.batch,), device=dev, generator=gen)
    which = torch.where(which % 25 == 0, (which + 1) % len(train.items), which)
    which = torch.where(which % 25 == 0, torch.ones_like(which), which)
    x, rows, width = lay(train, which, gen)
    x = weather(x, rows, width, gen)
    with torch.autocast("cuda", torch.bfloat16):
        toes, bead = net(x.to(memory_format=torch.channels_last))
    loss = loss_of(toes, bead, rows)
    opt.zero_grad(set_to_none=True)
    loss.backward()
    torch.nn.utils.clip_grad_norm_(model.parameters(), 5.0)
    opt.step()
    step += 1
    keep = min(0.998, 1 - 1 / (step + 1))
    with torch.no_grad():
        for k, v in model.state_dict().items():
            if v.dtype.is_floating_point:
                mean[k].lerp_(v, 1 - keep)
            else:
                mean[k].copy_(v)
    if step % 200 == 0:
        say(f"step {step} {spent:.0f} s pictures {len(train.items)} loss {loss.item():.3f} lr {lr:.2e}", flush=True)

if world > 1:
    dist.barrier()
    dist.destroy_process_group()
if rank != 0:
    sys.exit(0)
model.load_state_dict(mean)
model.eval()
train.grow()
figures = {"steps": step, "pictures": len(train.items)}
calibration = torch.arange(0, len(train.items), 25, device=dev)
for span in (3.0, 8.0):
    figures[f"calibration-{span}"] = report("calibration", train, calibration, span)
for kind in ("kept-street", "kept-plain"):
    kept = Pictures(args.pictures, kind, 1_500_000_000, dev)
    kept.grow()
    if len(kept.items) == 0:
        continue
    for span in (3.0, 8.0):
        figures[f"{kind}-{span}"] = report(kind, kept, torch.arange(len(kept.items), device=dev), span)
torch.save({k: v.half() if v.dtype.is_floating_point else v for k, v in mean.items()}, os.path.join(args.out, "reader.pt"))

from export import export

example = lay(train, calibration[:1], gen, steady=True, span_widths=3.0)[0].cpu()
digest, size = export(model, os.path.join(args.out, "reader.onnx"), example)
lineage = {"commit": args.commit, "seed": args.seed, "parameters": count, "figures": figures, "sha256": digest, "bytes": size,
           "torch": torch.__version__, "device": torch.cuda.get_device_name()}
json.dump(lineage, open(os.path.join(args.out, "lineage.json"), "w"), indent=2)
print(json.dumps(lineage), flush=True)
print("DONE", flush=True)
