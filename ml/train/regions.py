"""Trains the small network that finds the mark in a photograph.

    python3 regions.py --designs DIR --out DIR --seconds 200 [--compile scenes,network]

Every step draws new scenes (scenes.py) and asks, for each of 48 x 48 places, whether the middle of a
mark is there and how far its box reaches from there. The score learns the overlap that the box predicted
there has with the true one, highest in the middle (as in Generalized Focal Loss, Li et al., NeurIPS 2020);
the box learns by generalised IoU (Rezatofighi et al., CVPR 2019). The mark that counts shall score higher
than a second one. The weights kept are a running mean of the last steps'.

Prints IoU on scenes of validation and test designs at the end and writes DIR/regions.pt, half precision.
Runs on a CPU too, for checks: --batch 8 --steps 6 --scenes 64. Every scene is learnt from twice, the second time turned by a
quarter or mirrored, since drawing it takes longest.
"""

import argparse
import copy
import math
import os
import time

import torch
import torch.nn as nn
import torch.nn.functional as F

from designs import load
from scenes import SIDE, scenes

CELL = 4
GRID = SIDE // CELL
WARM_UP = 150
PEAK = 2e-3
SOFTENING = 0.02
# A second mark's score aims at this part of what it would as the only one.
SECOND = 0.6


class Step(nn.Module):
    """Two 3 x 3 convolutions and a short cut; the first may halve the map."""

    def __init__(self, inputs: int, outputs: int, stride: int):
        super().__init__()
        self.conv1 = nn.Conv2d(inputs, outputs, 3, stride, 1, bias=False)
        self.norm1 = nn.BatchNorm2d(outputs)
        self.conv2 = nn.Conv2d(outputs, outputs, 3, 1, 1, bias=False)
        self.norm2 = nn.BatchNorm2d(outputs)
        self.short = None
        if stride > 1 or inputs != outputs:
            self.short = nn.Sequential(
                nn.AvgPool2d(stride, stride), nn.Conv2d(inputs, outputs, 1, bias=False), nn.BatchNorm2d(outputs)
            )

    def forward(self, x):
        y = self.norm2(self.conv2(F.relu(self.norm1(self.conv1(x)))))
        return F.relu(y + (x if self.short is None else self.short(x)))


def smoothed(inputs: int, outputs: int):
    return nn.Sequential(nn.Conv2d(inputs, outputs, 3, 1, 1, bias=False), nn.BatchNorm2d(outputs), nn.ReLU())


class RegionNetwork(nn.Module):
    """float [n, 1, 192, 192], standardised -> float [n, 5, 48, 48]: score before the logistic curve, and the
    natural logarithms of the distances from the cell's middle to the box's left, top, right and bottom,
    in units of 24 pixels."""

    def __init__(self, widths=(32, 48, 72, 96), side: int = 48):
        super().__init__()
        first, second, third, fourth = widths
        self.stem = nn.Sequential(
            nn.Conv2d(1, 16, 5, 2, 2, bias=False), nn.BatchNorm2d(16), nn.ReLU(),
            nn.Conv2d(16, first, 3, 2, 1, bias=False), nn.BatchNorm2d(first), nn.ReLU(),
        )
        self.at4 = Step(first, first, 1)
        self.at8 = nn.Sequential(Step(first, second, 2), Step(second, second, 1))
        self.at16 = nn.Sequential(Step(second, third, 2), Step(third, third, 1))
        self.at32 = nn.Sequential(Step(third, fourth, 2), Step(fourth, fourth, 1))
        self.whole = nn.Conv2d(fourth, fourth, 1)
        self.in32 = nn.Conv2d(fourth, side, 1)
        self.in16 = nn.Conv2d(third, side, 1)
        self.in8 = nn.Conv2d(second, side, 1)
        self.in4 = nn.Conv2d(first, side, 1)
        self.smooth16, self.smooth8, self.smooth4 = (smoothed(side, side) for _ in range(3))
        self.head = smoothed(side, side)
        self.out = nn.Conv2d(side, 5, 1)
        nn.init.zeros_(self.out.weight)
        nn.init.constant_(self.out.bias, 0.0)
        with torch.no_grad():
            self.out.bias[0] = -4.0

    def forward(self, x):
        a = self.at4(self.stem(x))
        b = self.at8(a)
        c = self.at16(b)
        d = self.at32(c)
        d = d + self.whole(F.adaptive_avg_pool2d(d, 1))
        up = lambda y: F.interpolate(y, scale_factor=2.0, mode="nearest")
        y = self.smooth16(self.in16(c) + up(self.in32(d)))
        y = self.smooth8(self.in8(b) + up(y))
        y = self.smooth4(self.in4(a) + up(y))
        return self.out(self.head(y))


def load_regions(path: str) -> RegionNetwork:
    """The network with a checkpoint's weights, in single precision, ready to infer."""
    state = torch.load(path, map_location="cpu")
    network = RegionNetwork()
    network.load_state_dict({k: v.float() if v.is_floating_point() else v for k, v in state["network"].items()})
    return network.eval()


def standardised(pictures, visible):
    """(x - mean) / (deviation + 0.02) over the photograph; 0 round it."""
    count = visible.sum((1, 2, 3), keepdim=True)
    mean = (pictures * visible).sum((1, 2, 3), keepdim=True) / count
    off = (pictures - mean) * visible
    deviation = ((off**2).sum((1, 2, 3), keepdim=True) / count).sqrt()
    return off / (deviation + SOFTENING)


def cell_middles(device):
    """x and y of the middle of every cell, [48, 48] each, in pixels."""
    line = (torch.arange(GRID, device=device, dtype=torch.float32) + 0.5) * CELL
    return line[None, :].expand(GRID, GRID), line[:, None].expand(GRID, GRID)


def boxes_of(answer):
    """The network's answer -> boxes [n, 48, 48, 4] as left, top, right, bottom in pixels."""
    x, y = cell_middles(answer.device)
    left, top, right, bottom = (answer[:, 1:].float().clamp(-5, 2.2).exp() * 24).unbind(1)
    return torch.stack([x - left, y - top, x + right, y + bottom], -1)


def overlap(a, b):
    """IoU, and the generalised IoU, of boxes [..., 4]."""
    wide = (torch.minimum(a[..., 2:], b[..., 2:]) - torch.maximum(a[..., :2], b[..., :2])).clamp_min(0)
    both = wide.prod(-1)
    area = lambda box: (box[..., 2:] - box[..., :2]).clamp_min(0).prod(-1)
    either = (area(a) + area(b) - both).clamp_min(1e-6)
    hull = (torch.maximum(a[..., 2:], b[..., 2:]) - torch.minimum(a[..., :2], b[..., :2])).prod(-1).clamp_min(1e-6)
    iou = both / either
    return iou, iou - (hull - either) / hull


def loss_of(answer, boxes, shown):
    """The loss of the scores and of the boxes, each per mark."""
    x, y = cell_middles(answer.device)
    predicted = boxes_of(answer)
    score = answer[:, 0].float()
    target = torch.zeros_like(score)
    of_boxes = score.new_zeros(())
    for k in range(boxes.shape[1]):
        box, there = boxes[:, k], shown[:, k].view(-1, 1, 1)
        middle, size = (box[:, :2] + box[:, 2:]) / 2, box[:, 2:] - box[:, :2]
        spread = (0.16 * size).clamp_min(CELL * 0.7)
        dx = (x - middle[:, 0].view(-1, 1, 1)) / spread[:, 0].view(-1, 1, 1)
        dy = (y - middle[:, 1].view(-1, 1, 1)) / spread[:, 1].view(-1, 1, 1)
        near = torch.exp(-(dx**2 + dy**2) / 2) * there
        iou, generalised = overlap(predicted, box[:, None, None])
        weight = near * (near > 0.3)
        each = ((1 - generalised) * weight).sum((1, 2)) / weight.sum((1, 2)).clamp_min(1e-6)
        of_boxes = of_boxes + each.sum() * (1.0 if k == 0 else 0.5)
        part = near * iou.detach().clamp(0, 1) * (1.0 if k == 0 else SECOND)
        target = torch.maximum(target, part)
    off = (target - score.sigmoid()).abs() ** 2
    of_scores = (off * F.binary_cross_entropy_with_logits(score, target, reduction="none")).sum()
    marks = shown.sum().clamp_min(1)
    return of_scores / marks, of_boxes / marks


def best(answer):
    """The box of the place that scores highest, [n, 4], and its score 0..1, [n].

    The box is the mean over the 5 x 5 places round it, weighted by the squares of their scores."""
    scores = answer[:, 0].float().sigmoid()
    score, at = scores.flatten(1).max(1)
    weights = scores[..., None] ** 2
    near = lambda values: F.avg_pool2d(values.permute(0, 3, 1, 2), 5, 1, 2).permute(0, 2, 3, 1)
    boxes = (near(boxes_of(answer) * weights) / near(weights).clamp_min(1e-12)).flatten(1, 2)
    return boxes[torch.arange(len(boxes), device=boxes.device), at].clamp(0, SIDE), score


def drawn(packed):
    with torch.no_grad():
        made = scenes(packed)
        return standardised(made.pictures, made.visible), made.boxes, made.shown


def figures(network, packed, count: int) -> str:
    """IoU of the best proposal with the mark that counts, and how well the score tells scenes with a mark."""
    torch.manual_seed(99)
    network.eval()
    ious, sizes, scores, empty = [], [], [], []
    with torch.no_grad():
        for part in packed[:count].split(100):
            pictures, boxes, shown = drawn(part)
            box, score = best(network(pictures))
            iou, _ = overlap(box, boxes[:, 0])
            there = shown[:, 0] > 0
            ious.append(iou[there])
            scores.append(score[there])
            empty.append(score[~there])
            sizes.append((boxes[:, 0, 2:] - boxes[:, 0, :2]).amax(1)[there] / SIDE)
    iou, size, score, empty = (torch.cat(v).cpu() for v in (ious, sizes, scores, empty))
    parts = [(low, high, iou[(size >= low) & (size < high)]) for low, high in ((0, 0.25), (0.25, 0.5), (0.5, 1.01))]
    by_size = ", ".join(f"{low}-{high}: {part.mean():.3f}" for low, high, part in parts if len(part))
    above = (score[:, None] > empty[None]).float().mean() if len(empty) else math.nan
    return (
        f"{len(iou)} marks, mean IoU {iou.mean():.3f}, above 0.5 {(iou > 0.5).float().mean():.3f}, "
        f"above 0.75 {(iou > 0.75).float().mean():.3f}, by size {by_size}, "
        f"mark against none: area under ROC {above:.3f}"
    )


def turned_over(pictures, boxes):
    """The same scenes turned by a quarter and mirrored: other photographs, for nothing."""
    left, top, right, bottom = boxes.unbind(-1)
    way = torch.rand(3).tolist()
    if way[0] < 0.75:
        pictures = pictures.transpose(2, 3)
        left, top, right, bottom = top, left, bottom, right
    if way[1] < 0.5:
        pictures = pictures.flip(3)
        left, right = SIDE - right, SIDE - left
    if way[2] < 0.5:
        pictures = pictures.flip(2)
        top, bottom = SIDE - bottom, SIDE - top
    return pictures, torch.stack([left, top, right, bottom], -1)


def parsed():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--designs", required=True)
    parser.add_argument("--out", required=True)
    parser.add_argument("--seconds", type=float, default=200)
    parser.add_argument("--batch", type=int, default=256)
    parser.add_argument("--compile", default="", help="'scenes', 'network' or 'scenes,network': torch.compile these")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--steps", type=int, default=0, help="stop after so many steps (for checks)")
    parser.add_argument("--scenes", type=int, default=2000, help="how many scenes to measure on")
    parser.add_argument("--resume", help="a regions.pt to begin from")
    parser.add_argument("--peak", type=float, default=PEAK, help="highest learning rate; lower to go on from a regions.pt")
    return parser.parse_args()


def compiled(function, name: str, wanted: str):
    """The function compiled, if that was asked for; as it is where compiling fails."""
    if name not in wanted.split(","):
        return function
    quick, broken = torch.compile(function, dynamic=False), []

    def call(*values):
        if not broken:
            try:
                return quick(*values)
            except Exception as error:  # whatever a compiler throws; the plain function gives the same numbers
                print(f"{name} is not compiled: {type(error).__name__}: {str(error)[:200]}", flush=True)
                broken.append(error)
        return function(*values)

    return call


def main() -> None:
    options = parsed()
    began = time.time()
    device = "cuda" if torch.cuda.is_available() else "cpu"
    torch.manual_seed(options.seed)
    torch.backends.cuda.matmul.allow_tf32 = True
    torch.backends.cudnn.allow_tf32 = True
    torch.backends.cudnn.benchmark = True
    designs = load(os.path.join(options.designs, "train.bin.gz"), device)
    network = RegionNetwork().to(device).to(memory_format=torch.channels_last)
    if options.resume:
        state = torch.load(options.resume, map_location=device)
        network.load_state_dict({k: v.float() for k, v in state["network"].items()})
    kept = copy.deepcopy(network).eval()
    optimiser = torch.optim.AdamW(network.parameters(), lr=options.peak, weight_decay=0.02)
    draw = compiled(drawn, "scenes", options.compile)
    forward = compiled(network, "network", options.compile)
    print(f"{len(designs)} designs, {sum(p.numel() for p in network.parameters()) / 1e6:.3f} M parameters, {device}", flush=True)

    network.train()
    step, since, at = 0, time.time(), 0
    while True:
        elapsed = time.time() - began
        if elapsed > options.seconds or (options.steps and step >= options.steps):
            break
        for group in optimiser.param_groups:
            warm = min(1.0, (step + 1) / WARM_UP)
            group["lr"] = options.peak * warm * (0.5 + 0.5 * math.cos(math.pi * min(1, elapsed / options.seconds))) + 1e-6
        packed = designs[torch.randint(len(designs), (options.batch,), device=device)]
        pictures, boxes, shown = draw(packed)
        again, boxes_again = turned_over(pictures, boxes)
        pictures, boxes, shown = torch.cat([pictures, again]), torch.cat([boxes, boxes_again]), shown.repeat(2, 1)
        with torch.autocast(device, torch.bfloat16, enabled=device == "cuda"):
            answer = forward(pictures.contiguous(memory_format=torch.channels_last))
        of_scores, of_boxes = loss_of(answer, boxes, shown)
        loss = of_scores + of_boxes
        optimiser.zero_grad(set_to_none=True)
        loss.backward()
        torch.nn.utils.clip_grad_norm_(network.parameters(), 2.0)
        optimiser.step()
        step += 1
        with torch.no_grad():
            share = min(0.998, step / (step + 20))
            for mean, now in zip(kept.state_dict().values(), network.state_dict().values()):
                if mean.is_floating_point():
                    mean.mul_(share).add_(now, alpha=1 - share)
                else:
                    mean.copy_(now)
        if step - at >= 100 or step in (1, 2, 5, 10, 20, 50):
            rate = options.batch * (step - at) / (time.time() - since)
            print(f"{step} {elapsed:.0f} s scores {of_scores.item():.3f} boxes {of_boxes.item():.3f} {rate:.0f} scenes/s", flush=True)
            since, at = time.time(), step

    os.makedirs(options.out, exist_ok=True)
    half = {k: v.half() if v.is_floating_point() else v for k, v in kept.state_dict().items()}
    torch.save({"network": half}, os.path.join(options.out, "regions.pt"))
    print(f"{step} steps in {time.time() - began:.0f} s", flush=True)
    for split in ("validation", "test"):
        packed = load(os.path.join(options.designs, f"{split}.bin.gz"), device)
        print(split, figures(kept, packed, options.scenes), flush=True)


if __name__ == "__main__":
    main()
