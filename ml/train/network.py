"""The network: a grey photograph of a mark, 160 x 160, to 256 numbers of unit length.

A small residual network with squeeze-and-excitation. Its last layer sees three summaries of
the final 5 x 5 map: a generalised mean (what is there, weighted to what is strong), a maximum
(what is there at all) and a narrow copy of the map itself (where it is), because two marks
often hold the same parts in another order.
"""

import torch
import torch.nn as nn
import torch.nn.functional as F

SIDE = 160
DIMENSION = 256


class Block(nn.Module):
    """Two 3 x 3 convolutions, a per-channel gate, and a short cut round them."""

    def __init__(self, inputs: int, outputs: int, stride: int):
        super().__init__()
        self.conv1 = nn.Conv2d(inputs, outputs, 3, stride, 1, bias=False)
        self.norm1 = nn.BatchNorm2d(outputs)
        self.conv2 = nn.Conv2d(outputs, outputs, 3, 1, 1, bias=False)
        self.norm2 = nn.BatchNorm2d(outputs)
        self.gate = nn.Sequential(
            nn.AdaptiveAvgPool2d(1),
            nn.Conv2d(outputs, outputs // 8, 1),
            nn.ReLU(),
            nn.Conv2d(outputs // 8, outputs, 1),
            nn.Sigmoid(),
        )
        self.short = None
        if inputs != outputs or stride > 1:
            pool = nn.AvgPool2d(stride, stride) if stride > 1 else nn.Identity()
            self.short = nn.Sequential(
                pool, nn.Conv2d(inputs, outputs, 1, bias=False), nn.BatchNorm2d(outputs)
            )

    def forward(self, x):
        y = F.relu(self.norm1(self.conv1(x)))
        y = self.norm2(self.conv2(y))
        y = y * self.gate(y)
        return F.relu(y + (x if self.short is None else self.short(x)))


class MarkNetwork(nn.Module):
    """float [n, 1, 160, 160], standardised -> float [n, 256], unit length."""

    def __init__(self, widths=(48, 96, 192, 320), dimension: int = DIMENSION, cells: int = 32):
        super().__init__()
        self.stem = nn.Sequential(
            nn.Conv2d(1, 32, 5, 2, 2, bias=False),
            nn.BatchNorm2d(32),
            nn.ReLU(),
            nn.Conv2d(32, widths[0], 3, 2, 1, bias=False),
            nn.BatchNorm2d(widths[0]),
            nn.ReLU(),
        )
        blocks, inputs = [], widths[0]
        for stage, outputs in enumerate(widths):
            blocks += [Block(inputs, outputs, 1 if stage == 0 else 2), Block(outputs, outputs, 1)]
            inputs = outputs
        self.body = nn.Sequential(*blocks)
        self.power = nn.Parameter(torch.tensor(3.0))
        self.layout = nn.Conv2d(inputs, cells, 1)
        self.project = nn.Linear(inputs * 2 + cells * (SIDE // 32) ** 2, dimension)

    def forward(self, x):
        f = self.body(self.stem(x)).float()
        mean = f.clamp_min(1e-5).pow(self.power).mean((2, 3)).pow(1 / self.power)
        most = F.adaptive_max_pool2d(f, 1).flatten(1)
        where = self.layout(f).float().flatten(1) / 5
        z = self.project(torch.cat([mean, most, where], 1)).float()
        return F.normalize(z, dim=1)


def load_network(path: str) -> MarkNetwork:
    """The network with a checkpoint's weights, in single precision, ready to infer."""
    state = torch.load(path, map_location="cpu")
    network = MarkNetwork()
    network.load_state_dict({k: v.float() for k, v in state["network"].items()})
    return network.eval()
