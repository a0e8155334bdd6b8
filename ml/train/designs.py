"""Reads the packed designs that designs/main.mjs draws."""

import gzip

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
