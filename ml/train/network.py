"""The networks: a photograph of a mark to numbers that are compared, and two photographs' details to a verdict.

MarkNetwork: a grey photograph of a mark, 160 x 160, to 256 numbers of unit length, and to 10 x 10 details of
64 numbers each. A small residual network with squeeze-and-excitation. Its last layer sees three summaries of
the final 5 x 5 map: a generalised mean (what is there, weighted to what is strong), a maximum
(what is there at all) and a narrow copy of the map itself (where it is), because two marks
often hold the same parts in another order.

PairNetwork: the details of a query and of a reference to the log-odds that both show one mark.
"""

import torch
import torch.nn as nn
import torch.nn.functional as F

SIDE = 160
DIMENSION = 256
CELLS = 10
DETAIL = 64


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
    """float [n, 1, 160, 160], standardised -> float [n, 256], unit length; float [n, 64, 10, 10], unit length in each cell."""

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
            blocks.append(nn.Sequential(Block(inputs, outputs, 1 if stage == 0 else 2), Block(outputs, outputs, 1)))
            inputs = outputs
        self.fine = nn.Sequential(*blocks[:-1])
        self.coarse = blocks[-1]
        self.power = nn.Parameter(torch.tensor(3.0))
        self.layout = nn.Conv2d(inputs, cells, 1)
        self.project = nn.Linear(inputs * 2 + cells * (SIDE // 32) ** 2, dimension)
        self.near = nn.Conv2d(widths[-2], DETAIL, 1)
        self.far = nn.Conv2d(inputs, DETAIL, 1)

    def forward(self, x):
        g = self.fine(self.stem(x))
        f = self.coarse(g)
        details = self.near(g) + F.interpolate(self.far(f), scale_factor=2.0, mode="nearest")
        f = f.float()
        mean = f.clamp_min(1e-5).pow(self.power).mean((2, 3)).pow(1 / self.power)
        most = F.adaptive_max_pool2d(f, 1).flatten(1)
        where = self.layout(f).float().flatten(1) / 5
        z = self.project(torch.cat([mean, most, where], 1)).float()
        return F.normalize(z, dim=1), F.normalize(details.float(), dim=1)


class PairNetwork(nn.Module):
    """Details of queries and of references, each float [n, 64, 10, 10], and their cosine [n] -> log-odds [n] that they show one mark.

    Each cell of one looks for its like in the other, near by rather than far off; what it finds, how far off and how
    surely is laid beside it, and a few convolutions judge whether the whole agrees. Both ways round.
    """

    def __init__(self, width: int = 96):
        super().__init__()
        self.ask = nn.Conv2d(DETAIL, DETAIL, 1)
        self.offer = nn.Conv2d(DETAIL, DETAIL, 1)
        self.sharp = nn.Parameter(torch.tensor(2.0))
        line = torch.arange(CELLS).float()
        y, x = torch.meshgrid(line, line, indexing="ij")
        places = torch.stack([x.flatten(), y.flatten()], 1)
        self.register_buffer("places", places)
        apart = places[:, None] - places[None]
        steps = (apart + CELLS - 1).long()
        self.register_buffer("steps", steps[..., 1] * (2 * CELLS - 1) + steps[..., 0])
        span = torch.arange(2 * CELLS - 1).float() - (CELLS - 1)
        self.nearness = nn.Parameter(-(span[:, None] ** 2 + span[None] ** 2).flatten() / 18)
        self.judge = nn.Sequential(
            nn.Conv2d(3 * DETAIL + 4, width, 1),
            nn.ReLU(),
            nn.Conv2d(width, width, 3, 1, 1),
            nn.ReLU(),
            nn.Conv2d(width, width, 3, 1, 1),
            nn.ReLU(),
            nn.Conv2d(width, width, 3, 2, 1),
            nn.ReLU(),
        )
        self.verdict = nn.Sequential(nn.Linear(4 * width + 1, width), nn.ReLU(), nn.Linear(width, 1))

    def looked_for(self, a, b, likeness):
        """a, b [n, 64, 100], likeness [n, 100 of a, 100 of b] -> what `judge` makes of a's cells, [n, 2 x width]."""
        share = likeness.softmax(2)
        found = b @ share.transpose(1, 2)
        moved = ((share @ self.places) - self.places).transpose(1, 2) / CELLS
        peak = share.amax(2)[:, None]
        level = (a * found).sum(1, keepdim=True)
        laid = torch.cat([a * 4, found * 4, a * found * 16, moved, peak, level], 1)
        j = self.judge(laid.view(-1, 3 * DETAIL + 4, CELLS, CELLS))
        return torch.cat([j.mean((2, 3)), j.amax((2, 3))], 1)

    def forward(self, query, reference, cosine):
        asked, offered = self.ask(query).flatten(2), self.offer(reference).flatten(2)
        likeness = asked.transpose(1, 2) @ offered * self.sharp.exp() + self.nearness[self.steps]
        q, r = query.flatten(2), reference.flatten(2)
        there = self.looked_for(q, r, likeness)
        back = self.looked_for(r, q, likeness.transpose(1, 2))
        return self.verdict(torch.cat([there, back, cosine[:, None] * 4], 1))[:, 0].float()
