"""Reads the packed designs that designs/main.mjs draws."""

import gzip
import json

import numpy as np
import torch

PIXELS = 128
PACKED = PIXELS * PIXELS // 8
WEIGHTS = (128, 64, 32, 16, 8, 4, 2, 1)


def load(path: str, device) -> torch.Tensor:
    """uint8 [n, 2048] on the device."""
    with gzip.open(path) as file:
        data = np.frombuffer(file.read(), dtype=np.uint8)
    if data.size == 0 or data.size % PACKED:
        raise ValueError(f"{path}: designs are {PACKED} bytes each. Received {data.size} bytes")
    return torch.from_numpy(data.reshape(-1, PACKED).copy()).to(device)


def unpack(packed: torch.Tensor) -> torch.Tensor:
    """uint8 [n, 2048] -> float [n, 1, 128, 128], 1 where there is ink."""
    bits = torch.tensor(WEIGHTS, device=packed.device, dtype=torch.uint8)
    return ((packed[:, :, None] & bits) > 0).float().view(-1, 1, PIXELS, PIXELS)


class Marks:
    """Training drawings and which mark each shows; several drawings of one mark stand side by side.

    drawings uint8 [n, 2048]; first, count int64 [n]: where the drawings of the same mark begin, and how
    many they are; twin int64 [n]: a drawing of the near twin, or -1.
    """

    def __init__(self, paths: list, device):
        drawings, marks, twins, base = [], [], [], 0
        for path in paths:
            part = load(path, device)
            with open(f"{path}.json") as file:
                names = json.load(file)
            if len(names["marks"]) != len(part):
                raise ValueError(f"{path}.json: one mark for each of {len(part)} drawings. Received {len(names['marks'])}")
            at = lambda name: torch.tensor(names[name], device=device)
            marks.append(at("marks") + base)
            twins.append(torch.where(at("twins") < 0, -1, at("twins") + base))
            drawings.append(part)
            base += len(part)
        self.drawings = torch.cat(drawings)
        self.mark, self.twin = torch.cat(marks), torch.cat(twins)
        _, inverse, counts = torch.unique_consecutive(self.mark, return_inverse=True, return_counts=True)
        self.first = (torch.cumsum(counts, 0) - counts)[inverse]
        self.count = counts[inverse]
        self.twinned = (self.twin >= 0).nonzero()[:, 0]

    def drawn(self, batch: int, twin_share: float):
        """Drawings of a batch, int64 [batch]: a share in near-twin pairs side by side, the rest from anywhere."""
        device = self.drawings.device
        pairs = int(batch * twin_share) // 2 if len(self.twinned) else 0
        one = self.twinned[torch.randint(len(self.twinned), (pairs,), device=device)] if pairs else torch.empty(0, dtype=torch.long, device=device)
        rest = torch.randint(len(self.drawings), (batch - 2 * pairs,), device=device)
        return torch.cat([torch.stack([one, self.twin[one]], 1).flatten(), rest]), pairs

    def again(self, index):
        """For each drawing one of its mark's drawings, perhaps itself."""
        return self.first[index] + (torch.rand(len(index), device=index.device) * self.count[index]).long()
