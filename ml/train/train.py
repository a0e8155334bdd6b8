"""Trains the network on rendered photographs of designs.

    python3 train.py --designs DIR --out DIR --seconds 530 --start 0 --end 0.5
    python3 train.py --designs DIR --out DIR --seconds 530 --start 0.5 --end 1 --resume DIR/state.pt

Each step renders two photographs of each of 2,048 designs and asks the network to find the pairs
(a symmetric contrastive loss with a learnt temperature). A quarter of each batch is near twins,
so that telling variants apart is part of every step. One network is asked for little rotation only:
a query is turned twelve times when it is looked up.

`--start` and `--end` say which part of the whole schedule this run is: the learning rate follows one
cosine from 0 to 1, and severity grows during the first half. DIR/state.pt holds everything to go on
from; DIR/marks.pt holds the weights alone in half precision.
"""

import argparse
import math
import os
import time

import torch
import torch.nn.functional as F

import measure
from designs import load, unpack, WEIGHTS
from network import MarkNetwork
from render import photograph, standardise

TWIN_SHARE = 0.25
WARM_UP = 200
PEAK = 2e-3


def parsed():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--designs", required=True)
    parser.add_argument("--out", required=True)
    parser.add_argument("--keep", help="folder for state.pt, if not --out")
    parser.add_argument("--seconds", type=float, required=True)
    parser.add_argument("--start", type=float, default=0.0)
    parser.add_argument("--end", type=float, default=1.0)
    parser.add_argument("--resume")
    parser.add_argument("--batch", type=int, default=2048)
    parser.add_argument("--chunk", type=int, default=1024, help="photographs rendered at once")
    parser.add_argument("--twins", type=int, default=0, help="how many of the first training designs are twin pairs")
    parser.add_argument("--rotation", type=float, default=0.7, help="radians, either way")
    parser.add_argument("--compile", default="", help="'render', 'network' or 'render,network': torch.compile these")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--steps", type=int, default=0, help="stop after so many steps (for checks)")
    parser.add_argument("--skip-figures", action="store_true")
    return parser.parse_args()


def mirrored(packed):
    """The designs seen in a looking glass: other designs, for nothing."""
    bits = torch.tensor(WEIGHTS, device=packed.device, dtype=torch.uint8)
    m = unpack(packed).flip(-1).view(len(packed), -1, 8).to(torch.uint8)
    return (m * bits).sum(-1).to(torch.uint8)


def drawn(count: int, twins: int, batch: int, device):
    """Which designs this batch holds: a share in twin pairs, side by side, the rest from anywhere."""
    pairs = int(batch * TWIN_SHARE) // 2 if twins else 0
    first = torch.randint(max(twins // 2, 1), (pairs,), device=device) * 2
    rest = torch.randint(count, (batch - 2 * pairs,), device=device)
    return torch.cat([torch.stack([first, first + 1], 1).flatten(), rest])


class Photographer:
    """Renders batches in chunks, with the renderer compiled if that was asked for and works."""

    def __init__(self, chunk: int, compiled: bool):
        self.chunk = chunk
        self.render = torch.compile(photograph, dynamic=False) if compiled else photograph

    def __call__(self, packed, severity, rotation):
        parts = zip(packed.split(self.chunk), severity.split(self.chunk), rotation.split(self.chunk))
        return torch.cat([standardise(self.render(*part)) for part in parts])


def views(shoot, packed, hardest: float, rotation: float):
    """Two photographs of each design: one turned and harsh, one nearly upright and half the time good."""
    n, device = len(packed), packed.device
    rand = lambda: torch.rand(n, 1, 1, 1, device=device)
    a = shoot(packed, hardest * (0.5 + 0.5 * rand()), torch.full((n, 1, 1, 1), rotation, device=device))
    harsh = torch.where(rand() < 0.5, torch.full_like(rand(), 0.35), hardest * (0.5 + 0.5 * rand()))
    b = shoot(packed, harsh, torch.full((n, 1, 1, 1), 0.25, device=device))
    return torch.cat([a, b])


def contrastive(za, zb, scale, index):
    logits = scale * za @ zb.t()
    again = index[:, None] == index[None]
    again.fill_diagonal_(False)
    logits = logits.masked_fill(again, -1e4)
    target = torch.arange(len(index), device=index.device)
    loss = (F.cross_entropy(logits, target) + F.cross_entropy(logits.t(), target)) / 2
    return loss, (logits.argmax(1) == target).float().mean()


def main() -> None:
    options = parsed()
    began = time.time()
    device = "cuda" if torch.cuda.is_available() else "cpu"
    torch.manual_seed(options.seed + int(1000 * options.start))
    torch.backends.cuda.matmul.allow_tf32 = True
    torch.backends.cudnn.allow_tf32 = True
    torch.backends.cudnn.benchmark = True

    designs = load(os.path.join(options.designs, "train.bin.gz"), device)
    network = MarkNetwork().to(device).to(memory_format=torch.channels_last)
    scale = torch.nn.Parameter(torch.tensor(math.log(20.0), device=device))
    groups = [{"params": list(network.parameters())}, {"params": [scale], "weight_decay": 0.0}]
    optimiser = torch.optim.AdamW(groups, lr=PEAK, weight_decay=0.02)
    step = 0
    if options.resume:
        state = torch.load(options.resume, map_location=device)
        network.load_state_dict({k: v.float() for k, v in state["network"].items()})
        scale.data.fill_(float(state["scale"]))
        if "optimiser" in state:
            optimiser.load_state_dict(state["optimiser"])
            step = state["step"]
    resumed_at = step if "optimiser" in (state if options.resume else {}) else 0
    shoot = Photographer(options.chunk, "render" in options.compile)
    forward = torch.compile(network) if "network" in options.compile else network
    print(f"{len(designs)} designs, {sum(p.numel() for p in network.parameters()) / 1e6:.2f} M parameters, {device}", flush=True)

    network.train()
    first, since, at = step, time.time(), step
    while True:
        elapsed = time.time() - began
        if elapsed > options.seconds or (options.steps and step - first >= options.steps):
            break
        part = options.start + (options.end - options.start) * elapsed / options.seconds
        warm = 1.0 if resumed_at else min(1.0, (step - first + 1) / WARM_UP)
        for group in optimiser.param_groups:
            group["lr"] = PEAK * warm * (0.5 + 0.5 * math.cos(math.pi * part)) + 1e-6
        index = drawn(len(designs), options.twins, options.batch, device)
        packed = designs[index]
        with torch.no_grad():
            if step % 2:
                packed = torch.cat([mirrored(p) for p in packed.split(512)])
            pictures = views(shoot, packed, min(1.0, 0.35 + 1.3 * part), options.rotation)
        pictures = pictures.contiguous(memory_format=torch.channels_last)
        with torch.autocast(device, torch.bfloat16, enabled=device == "cuda"):
            z = forward(pictures)
        loss, accuracy = contrastive(*z.float().split(options.batch), scale.exp().clamp(max=100), index)
        optimiser.zero_grad(set_to_none=True)
        loss.backward()
        torch.nn.utils.clip_grad_norm_(network.parameters(), 1.0)
        optimiser.step()
        step += 1
        if step - at >= 100 or step - first in (1, 2, 5, 20):
            rate = 2 * options.batch * (step - at) / (time.time() - since)
            print(f"{step} {elapsed:.0f} s loss {loss.item():.3f} right {accuracy.item():.3f} "
                  f"scale {scale.exp().item():.1f} {rate:.0f} photographs/s", flush=True)
            since, at = time.time(), step

    os.makedirs(options.out, exist_ok=True)
    keep = options.keep or options.out
    os.makedirs(keep, exist_ok=True)
    state = {"network": network.state_dict(), "scale": scale.detach(), "optimiser": optimiser.state_dict(), "step": step}
    torch.save(state, os.path.join(keep, "state.pt"))
    half = {k: v.half() if v.is_floating_point() else v for k, v in network.state_dict().items()}
    torch.save({"network": half, "scale": scale.item()}, os.path.join(options.out, "marks.pt"))
    print(f"{step} steps in {time.time() - began:.0f} s", flush=True)
    if not options.skip_figures:
        network.eval()
        for split in ("validation", "test"):
            packed = load(os.path.join(options.designs, f"{split}.bin.gz"), device)
            print(split, measure.figures(network, packed), flush=True)


if __name__ == "__main__":
    main()
