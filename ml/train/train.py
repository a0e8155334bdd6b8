"""Trains both networks on rendered photographs of designs.

    python3 train.py --designs FILE [FILE ...] --held DIR --out DIR --seconds 530 --start 0 --end 0.4
    torchrun --nproc_per_node 2 train.py ... --start 0.4 --end 1 --resume DIR/state.pt

Each step renders two photographs of each of 2,048 marks and asks the mark network to find the pairs
(a symmetric contrastive loss with a learnt temperature). A quarter of each batch is near twins,
so that telling variants apart is part of every step. It is asked for little rotation only: a query
is turned twelve times when it is looked up. The pair network is asked, for some of the marks, which of
six references it is: the right one, its near twin and those that the mark network finds most alike.

Several processes, one a GPU, each draw their own batch and average their gradients.

`--from ../model` begins from the shipped networks instead, and `--teachers ../model` lets the mark network learn besides what
the shipped ones, whose cosines are averaged, find alike: half of the loss at first, none at the end (relations distilled, as in
Park et al., CVPR 2019, by the batch's similarities). `--bytes` goes on with the network computed in bytes (in_bytes.py).

`--start` and `--end` say which part of the whole schedule this run is: the learning rate follows one
cosine from 0 to 1, and severity grows during the first half. DIR/state.pt holds everything to go on
from; DIR/marks.pt holds the weights alone in half precision.
"""

import argparse
import math
import os
import time

import torch
import torch.distributed as dist
import torch.nn.functional as F

import measure
from designs import Marks, load, unpack
from in_bytes import Rounded, empty_in_bytes, in_bytes, watched
from mix import Mixture
from network import MarkNetwork, PairNetwork
from render import photograph, standardise
from stored import fuse, fused_from, pair_from, renormed

TWIN_SHARE = 0.25
WARM_UP = 200
PEAK = 2.5e-3
ANCHORS = 512
RIVALS = 5
WATCHED = 16


def parsed():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--designs", required=True, nargs="+", help="drawn by designs/main.mjs train")
    parser.add_argument("--held", help="folder with validation.bin.gz, test.bin.gz and their lookalikes, for the figures at the end")
    parser.add_argument("--out", required=True)
    parser.add_argument("--keep", help="folder for state.pt, if not --out")
    parser.add_argument("--seconds", type=float, required=True)
    parser.add_argument("--start", type=float, default=0.0)
    parser.add_argument("--end", type=float, default=1.0)
    parser.add_argument("--resume")
    parser.add_argument("--from", dest="source", help="folder of the shipped model, to begin from")
    parser.add_argument("--teachers", help="folder of the shipped model, to be taught by")
    parser.add_argument("--bytes", action="store_true", help="compute in bytes from here on")
    parser.add_argument("--peak", type=float, default=PEAK, help="highest learning rate")
    parser.add_argument("--hardest", type=float, default=1.0, help="severity that photographs grow to")
    parser.add_argument("--batch", type=int, default=2048, help="marks a step and process")
    parser.add_argument("--chunk", type=int, default=1024, help="photographs rendered at once")
    parser.add_argument("--rotation", type=float, default=0.7, help="radians, either way")
    parser.add_argument("--compile", default="", help="'render', 'network' or 'render,network': torch.compile these")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--steps", type=int, default=0, help="stop after so many steps (for checks)")
    return parser.parse_args()


class Teachers:
    """Shipped networks, whose cosines are averaged, and how sharply they tell marks apart, which is learnt."""

    def __init__(self, folder: str, device: str, compiled: bool):
        networks = [fused_from(os.path.join(folder, name)) for name in ("marks.onnx", "details.onnx")]
        networks = [n.to(device).to(memory_format=torch.channels_last).requires_grad_(False) for n in networks]
        self.networks = [torch.compile(n) if compiled else n for n in networks]
        self.scale = torch.nn.Parameter(torch.tensor(math.log(30.0), device=device))

    def shown(self, pictures, batch: int):
        with torch.no_grad():
            return [n(pictures)[0].float().split(batch) for n in self.networks]

    def loss(self, shown, own, same):
        """What the student's cosines lack of the teachers', and how well the teachers' own scale fits."""
        cosines = sum(za @ zb.t() for za, zb in shown) / len(shown)
        taught = (self.scale.exp() * cosines).masked_fill(same, -1e4)
        target = torch.arange(len(taught), device=taught.device)
        fitting = F.cross_entropy(taught, target)
        own = own.masked_fill(same, -1e4)
        likely = taught.detach()
        forth = -(likely.softmax(1) * own.log_softmax(1)).sum(1).mean()
        back = -(likely.softmax(0) * own.log_softmax(0)).sum(0).mean()
        return (forth + back) / 2, fitting


class Photographer:
    """Renders batches in chunks, with the renderer compiled if that was asked for."""

    def __init__(self, chunk: int, compiled: bool):
        self.chunk = chunk
        self.render = torch.compile(photograph, dynamic=False) if compiled else photograph

    def __call__(self, m, severity, rotation):
        parts = zip(m.split(self.chunk), severity.split(self.chunk), rotation.split(self.chunk))
        return torch.cat([standardise(self.render(*part)) for part in parts])


def views(shoot, one, other, hardest: float, rotation: float):
    """Two photographs of each mark: one turned and harsh, one nearly upright and half the time good."""
    n, device = len(one), one.device
    rand = lambda: torch.rand(n, 1, 1, 1, device=device)
    a = shoot(one, hardest * (0.5 + 0.5 * rand()), torch.full((n, 1, 1, 1), rotation, device=device))
    harsh = torch.where(rand() < 0.5, torch.full_like(rand(), 0.35), hardest * (0.5 + 0.5 * rand()))
    b = shoot(other, harsh, torch.full((n, 1, 1, 1), 0.25, device=device))
    return torch.cat([a, b])


def contrastive(za, zb, others, scale, same):
    """za, zb [n, 256] are pairs; others [m, 256] are more wrong answers; `same` [n, n] marks that show one mark."""
    logits = scale * za @ zb.t()
    logits = logits.masked_fill(same, -1e4)
    target = torch.arange(len(za), device=za.device)
    wrong = [scale * za @ others.t()] if others is not None else []
    forth = F.cross_entropy(torch.cat([logits, *wrong], 1), target)
    back = F.cross_entropy(logits.t(), target)
    return (forth + back) / 2, (logits.argmax(1) == target).float().mean()


def verdicts(pair, z, details, twin, same, anchors: int):
    """How well the pair network tells the right reference from rivals: the loss and the share told right."""
    (za, zb), (ta, tb) = z.detach().split(len(twin)), details.split(len(twin))
    n, device = len(twin), z.device
    paired = (twin >= 0).nonzero()[:, 0]
    some = torch.cat([paired[torch.randperm(len(paired), device=device)[: anchors // 3]], torch.randperm(n, device=device)])[:anchors]
    with torch.autocast(device.type, enabled=False):
        cosine = za[some] @ zb.t()
    near = cosine.masked_fill(same[some], -9)
    near.scatter_(1, some[:, None], -9)
    own = twin[some]
    near.scatter_add_(1, own.clamp_min(0)[:, None], torch.where(own >= 0, 9.0, 0.0)[:, None])
    order = near.topk(4 * RIVALS, 1).indices
    later = 1 + torch.rand(len(some), 4 * RIVALS - 1, device=device).topk(RIVALS - 1, 1).indices
    rivals = torch.cat([order[:, :1], order.gather(1, later)], 1)
    chosen = torch.cat([some[:, None], rivals], 1)
    k = chosen.shape[1]
    logits = pair(
        ta[some].repeat_interleave(k, 0), tb[chosen.flatten()], cosine.gather(1, chosen).flatten()
    ).view(-1, k)
    first = F.cross_entropy(logits, torch.zeros(len(some), dtype=torch.long, device=device))
    right = F.softplus(-logits[:, 0]).mean()
    wrong = F.softplus(logits[:, 1:]).mean()
    return first + 0.5 * (right + wrong), (logits.argmax(1) == 0).float().mean()


def averaged(parameters, world: int):
    """The processes' gradients, averaged in place."""
    grads = [p.grad for p in parameters if p.grad is not None]
    flat = torch.cat([g.flatten() for g in grads])
    dist.all_reduce(flat)
    flat /= world
    at = 0
    for g in grads:
        g.copy_(flat[at : at + g.numel()].view_as(g))
        at += g.numel()


def main() -> None:
    options = parsed()
    began = time.time()
    world, rank = int(os.environ.get("WORLD_SIZE", 1)), int(os.environ.get("RANK", 0))
    cuda = torch.cuda.is_available()
    device = f"cuda:{os.environ.get('LOCAL_RANK', 0)}" if cuda else "cpu"
    if cuda:
        torch.cuda.set_device(device)
    if world > 1:
        dist.init_process_group("nccl" if cuda else "gloo")
    torch.manual_seed(options.seed)
    torch.backends.cuda.matmul.allow_tf32 = True
    torch.backends.cudnn.allow_tf32 = True
    torch.backends.cudnn.benchmark = True

    marks = Marks(options.designs, device)
    compiled = "network" in options.compile
    shoot = Photographer(options.chunk, "render" in options.compile)

    def examples(severity: float):
        """Photographs of marks drawn at random."""
        one = unpack(marks.drawings[torch.randint(len(marks.drawings), (min(options.chunk, options.batch),), device=device)])
        wide = lambda value: torch.full((len(one), 1, 1, 1), value, device=device)
        with torch.no_grad():
            return shoot(one, wide(severity), wide(options.rotation))

    state = torch.load(options.resume, map_location=device) if options.resume else {}
    whole = lambda values: {k: v.float() if v.is_floating_point() else v for k, v in values.items()}
    network, pair = (empty_in_bytes() if state.get("bytes") else MarkNetwork()).to(device), PairNetwork().to(device)
    scale = torch.nn.Parameter(torch.tensor(math.log(20.0), device=device))
    step = resumed_at = 0
    if state:
        network.load_state_dict(whole(state["network"]))
        pair.load_state_dict(whole(state["pair"]))
        scale.data.fill_(float(state["scale"]))
    elif options.source:
        fused = fused_from(os.path.join(options.source, "details.onnx")).to(device)
        network = renormed(fused, examples(0.7))
        pair = pair_from(os.path.join(options.source, "pairs.onnx")).to(device)
        scale.data.fill_(math.log(30.0))
    if options.bytes and not state.get("bytes"):
        network = in_bytes(fuse(network.eval())).to(device)
        watched(network, [examples(min(1.0, 0.3 + 0.05 * k)) for k in range(WATCHED)])
        state = {}
    if world > 1:
        for value in [*network.state_dict().values(), *pair.state_dict().values()]:
            dist.broadcast(value, 0)
    network = network.to(memory_format=torch.channels_last)
    teachers = Teachers(options.teachers, device, compiled) if options.teachers else None
    bare = [scale, teachers.scale] if teachers else [scale]
    parameters = [*network.parameters(), *pair.parameters(), *bare]
    groups = [{"params": parameters[: -len(bare)]}, {"params": bare, "weight_decay": 0.0}]
    optimiser = torch.optim.AdamW(groups, lr=options.peak, weight_decay=0.02)
    if "optimiser" in state:
        optimiser.load_state_dict(state["optimiser"])
        step = resumed_at = state["step"]
        if teachers and "taught" in state:
            teachers.scale.data.fill_(float(state["taught"]))
    torch.manual_seed(options.seed + int(1000 * options.start) + 7919 * rank)
    forward = torch.compile(network) if compiled else network
    judge = torch.compile(pair) if compiled else pair
    if rank == 0:
        count = lambda n: f"{sum(p.numel() for p in n.parameters()) / 1e6:.2f} M"
        print(f"{len(marks.drawings)} drawings, {int(marks.mark.unique().numel())} marks, {count(network)} and {count(pair)} parameters, {world} x {device}", flush=True)

    network.train()
    pair.train()
    first, since, at = step, time.time(), step
    while True:
        elapsed = torch.tensor(time.time() - began, device=device)
        if world > 1:
            dist.broadcast(elapsed, 0)
        elapsed = float(elapsed)
        if elapsed > options.seconds or (options.steps and step - first >= options.steps):
            break
        part = options.start + (options.end - options.start) * elapsed / options.seconds
        warm = 1.0 if resumed_at else min(1.0, (step - first + 1) / WARM_UP)
        for group in optimiser.param_groups:
            group["lr"] = options.peak * warm * (0.5 + 0.5 * math.cos(math.pi * part)) + 1e-6
        index, pairs = marks.drawn(options.batch, TWIN_SHARE)
        again = marks.again(index)
        mark = marks.mark[index]
        same = mark[:, None] == mark[None]
        same.fill_diagonal_(False)
        twin = torch.full_like(index, -1)
        twin[: 2 * pairs] = torch.arange(2 * pairs, device=device) ^ 1
        with torch.no_grad():
            mixture = Mixture(options.batch, pairs, device)
            seen = [mixture(unpack(marks.drawings[i])) for i in (index, again)]
            if step % 2:  # the marks seen in a looking glass: other marks, for nothing
                seen = [m.flip(-1) for m in seen]
            pictures = views(shoot, *seen, options.hardest * min(1.0, 0.35 + 1.3 * part), options.rotation)
        pictures = pictures.contiguous(memory_format=torch.channels_last)
        with torch.autocast("cuda" if cuda else "cpu", torch.bfloat16, enabled=cuda):
            z, details = forward(pictures)
            za, zb = z.float().split(options.batch)
            others = None
            if world > 1:
                held = [torch.empty_like(zb) for _ in range(world)]
                dist.all_gather(held, zb.detach().contiguous())
                others = torch.cat([h for r, h in enumerate(held) if r != rank])
            with torch.autocast("cuda" if cuda else "cpu", enabled=False):
                loss, found = contrastive(za, zb, others, scale.exp().clamp(max=100), same)
            if teachers:
                shown = teachers.shown(pictures, options.batch)
                with torch.autocast("cuda" if cuda else "cpu", enabled=False):
                    taught, fitting = teachers.loss(shown, scale.exp().clamp(max=100) * za @ zb.t(), same)
                share = 0.5 * (1 - part)
                loss = (1 - share) * loss + share * taught + fitting
            judged, told = verdicts(judge, z.float(), details, twin, same, min(ANCHORS, options.batch))
        optimiser.zero_grad(set_to_none=True)
        (loss + 0.5 * judged).backward()
        if world > 1:
            averaged(parameters, world)
        torch.nn.utils.clip_grad_norm_(parameters, 1.0)
        optimiser.step()
        step += 1
        if rank == 0 and (step - at >= 100 or step - first in (1, 2, 5, 20)):
            rate = 2 * world * options.batch * (step - at) / (time.time() - since)
            print(f"{step} {elapsed:.0f} s loss {loss.item():.3f} found {found.item():.3f} pairs {judged.item():.3f} told {told.item():.3f} "
                  f"scale {scale.exp().item():.1f} {rate:.0f} photographs/s", flush=True)
            since, at = time.time(), step

    if rank == 0:
        bytewise = any(isinstance(m, Rounded) for m in network.modules())
        keep = options.keep or options.out
        os.makedirs(options.out, exist_ok=True)
        os.makedirs(keep, exist_ok=True)
        state = {"network": network.state_dict(), "pair": pair.state_dict(), "scale": scale.detach(), "optimiser": optimiser.state_dict(), "step": step, "bytes": bytewise}
        if teachers:
            state["taught"] = teachers.scale.detach()
        torch.save(state, os.path.join(keep, "state.pt"))
        half = lambda n: {k: v.half() if v.is_floating_point() else v for k, v in n.state_dict().items()}
        torch.save({"network": half(network), "pair": half(pair), "scale": scale.item(), "bytes": bytewise}, os.path.join(options.out, "marks.pt"))
        print(f"{step} steps in {time.time() - began:.0f} s", flush=True)
        if options.held:
            network.eval()
            pair.eval()
            for split in ("validation", "test"):
                at = lambda name: load(os.path.join(options.held, f"{name}.bin.gz"), device)
                twins = at("lookalikes-validation" if split == "validation" else "lookalikes")
                print(split, measure.figures(network, pair, at(split)), measure.told_apart(network, pair, twins), flush=True)
    if world > 1:
        dist.destroy_process_group()


if __name__ == "__main__":
    main()
