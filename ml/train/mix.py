"""New marks out of drawn ones, on the GPU: turned by a quarter, set beside or above another, ringed by another, halved.

Both drawings of a mark are mixed alike, and so are near twins, so that what was one mark stays one and what
differed in one thing still does.
"""

import math

import torch
import torch.nn.functional as F

QUARTER, BESIDE, ABOVE, RINGED, HALVED = range(1, 6)
SHARES = (0.5, 0.1, 0.1, 0.08, 0.12, 0.1)


def placed(m, scale, x, y, turn):
    """The drawings shrunk to `scale`, moved to (x, y) in -1..1 and turned; each [n]."""
    c, s = torch.cos(turn) / scale, torch.sin(turn) / scale
    rows = torch.stack([torch.stack([c, -s, -(c * x - s * y)], 1), torch.stack([s, c, -(s * x + c * y)], 1)], 1)
    grid = F.affine_grid(rows, list(m.shape), align_corners=False)
    return F.grid_sample(m, grid, mode="bilinear", padding_mode="zeros", align_corners=False)


class Mixture:
    """How n marks are mixed; drawn once, applied to every drawing of them. The first 2 x `pairs` are near twins."""

    def __init__(self, n: int, pairs: int, device):
        slots = n - pairs
        unit = lambda: torch.rand(slots, device=device)
        spread = torch.cat([torch.arange(pairs, device=device).repeat_interleave(2), torch.arange(pairs, slots, device=device)])
        at = lambda values: values[spread]
        chosen = torch.multinomial(torch.tensor(SHARES, device=device), slots, replacement=True)
        self.kind = at(chosen)
        self.partner = at(2 * pairs + torch.randint(max(1, n - 2 * pairs), (slots,), device=device)) if n > 2 * pairs else torch.arange(n, device=device)
        self.quarter = at(torch.floor(unit() * 3) + 1) * (math.pi / 2)
        self.first = at(0.42 + 0.12 * unit())
        self.heart = at(0.45 + 0.13 * unit())
        self.around = at(unit() * 2 * math.pi)
        self.offset = at(unit() * 0.4 - 0.2)
        self.swapped = at(unit() < 0.5)

    def __call__(self, m):
        """float [n, 1, 128, 128] -> the same, mixed."""
        n, k, device = len(m), self.kind, m.device
        one, none = torch.ones(n, device=device), torch.zeros(n, device=device)
        beside, above, ringed, halved = (k == v for v in (BESIDE, ABOVE, RINGED, HALVED))
        side = torch.where(self.swapped, -1.0, 1.0)
        where = lambda choices, other: sum((torch.where(c, v, none) for c, v in choices), none) + torch.where(
            torch.stack([c for c, _ in choices]).any(0), none, other)
        scale = where([(beside, self.first), (above, self.first), (ringed, self.heart)], one)
        x = where([(beside, -side * 0.5)], none)
        y = where([(above, -side * 0.5)], none)
        own = placed(m, scale, x, y, torch.where(k == QUARTER, self.quarter, none))
        second = where([(beside, 1.0 - self.first), (above, 1.0 - self.first)], one)
        other = placed(m[self.partner], second, -x, -y, none)
        line = (torch.arange(m.shape[-1], device=device) + 0.5) / m.shape[-1] * 2 - 1
        gx, gy = line[None, None, None, :], line[None, None, :, None]
        outer = (gx**2 + gy**2 > 0.36).float()
        v = lambda t: t.view(-1, 1, 1, 1)
        half = (gx * torch.cos(v(self.around)) + gy * torch.sin(v(self.around)) > v(self.offset)).float()
        added = v((beside | above).float()) + v(ringed.float()) * outer + v(halved.float()) * half
        return torch.maximum(own * (1 - v(halved.float()) * half), other * added)
